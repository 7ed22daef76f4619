/**
 * @file What happens around the start of the app: says so plainly if it
 * cannot start, and has the build kept for opening without a signal.
 *
 * Plain old syntax throughout: this has to run where the app cannot.
 */
// @ts-check
(function () {
  "use strict";

  /** Set once the app has failed to start. */
  var failed = false;

  addEventListener("cannot-start", function (event) {
    cannotStart(/** @type {CustomEvent} */ (event).detail);
  });
  if (!("noModule" in HTMLScriptElement.prototype)) cannotStart("no script modules");
  if (!("WebAssembly" in window)) cannotStart("no WebAssembly");

  // Service workers exist only on https and on the device itself.
  if ("serviceWorker" in navigator) {
    navigator.serviceWorker.register("./sw.js", { updateViaCache: "none" }).then(kept, function () {
      // Without a worker the page still works while its host can be reached.
    });
  }

  /**
   * @param {unknown} cause what the browser says
   */
  function cannotStart(cause) {
    failed = true;
    var words = document.getElementById("before-start-words");
    if (!words) return;
    words.textContent =
      "Thoubook could not start in this browser. Nothing that was written down is lost. " +
      "Load the page again; if that does not help, use a newer browser or switch off what blocks WebAssembly. " +
      "The browser says: " + cause;
    words.setAttribute("role", "alert");
  }

  /**
   * A build that cannot start can't ask the person about the next one, so the
   * next one takes over at once: that is how a mended build gets through.
   * @param {ServiceWorkerRegistration} registration
   */
  function kept(registration) {
    offer(registration.waiting);
    registration.addEventListener("updatefound", function () {
      var coming = registration.installing;
      if (!coming) return;
      coming.addEventListener("statechange", function () {
        offer(registration.waiting);
      });
    });
  }

  /** @param {ServiceWorker | null} waiting */
  function offer(waiting) {
    if (!failed || !waiting) return;
    navigator.serviceWorker.addEventListener("controllerchange", function () {
      location.reload();
    });
    waiting.postMessage({ kind: "take-over" });
  }
})();
