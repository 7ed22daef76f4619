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

  /** @type {ServiceWorkerRegistration | undefined} */
  var registration;

  addEventListener("cannot-start", function (event) {
    cannotStart(/** @type {CustomEvent} */ (event).detail);
  });
  if (!("noModule" in HTMLScriptElement.prototype)) cannotStart("no script modules");
  if (!("WebAssembly" in window)) cannotStart("no WebAssembly");

  // The first look into the storage waits for another process. It may as well
  // be had while the app is on its way, which looks there first of all.
  try {
    void localStorage.length;
  } catch (blocked) {
    // The app says so, in words, once it stands.
  }

  // Service workers exist only on https and on the device itself.
  if ("serviceWorker" in navigator) {
    navigator.serviceWorker.register("./sw.js", { updateViaCache: "none" }).then(watch, function () {
      // Without a worker the page still works while its host can be reached.
    });
  }

  /**
   * @param {unknown} cause what the browser says
   */
  function cannotStart(cause) {
    failed = true;
    offer();
    var words = document.getElementById("before-start-words");
    if (!words) return;
    words.textContent =
      "Thoubook could not start in this browser. Nothing that was written down is lost. " +
      "Load the page again; if that does not help, use a newer browser or switch off what blocks WebAssembly. " +
      "The browser says: " + cause;
    words.setAttribute("role", "alert");
  }

  /** @param {ServiceWorkerRegistration} found */
  function watch(found) {
    registration = found;
    offer();
    found.addEventListener("updatefound", function () {
      if (found.installing) found.installing.addEventListener("statechange", offer);
    });
  }

  /**
   * A build that cannot start can't ask the person about the next one, so the
   * next one takes over at once: that is how a mended build gets through.
   */
  function offer() {
    if (!failed || !registration || !registration.waiting) return;
    navigator.serviceWorker.addEventListener("controllerchange", function () {
      location.reload();
    });
    registration.waiting.postMessage({ kind: "take-over" });
  }
})();
