/**
 * @file The service worker: keeps one build of the page, whole, so that it
 * opens without a signal. `cargo xtask build` puts the three values in.
 *
 * - Everything a build is made of goes into one cache, all of it or nothing.
 * - A new build waits until every open page has agreed to it.
 * - Nothing else is ever kept, and nothing is fetched from elsewhere.
 */
// @ts-check
/// <reference lib="webworker" />

/** @typedef {{url: string, integrity: string, hashed: boolean}} Kept */

const worker = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));

/** Other pages of this origin share the same storage, so a cache's name says whose it is. */
const OWN = `${__CACHE__} ${worker.registration.scope} `;
const CACHE = OWN + __VERSION__;

/** @type {Kept[]} */
const FILES = __FILES__;

worker.addEventListener("install", (event) => {
  event.waitUntil(keep());
});

/** Keeps every file of this build, or none. */
async function keep() {
  const answers = await Promise.all(FILES.map(get));
  const cache = await caches.open(CACHE);
  try {
    await Promise.all(answers.map(([address, answer]) => cache.put(address, answer)));
  } catch (cause) {
    await caches.delete(CACHE);
    throw cause;
  }
}

/**
 * A file of exactly this build: other bytes than the build's are refused. A
 * name with a hash in it never changes, so what the page has just loaded may
 * be used again; but an upload that was cut off and then mended has left a
 * wrong file under the right name, so if that fails the host itself is asked.
 * @param {Kept} file
 * @returns {Promise<[URL, Response]>}
 */
async function get({ url, integrity, hashed }) {
  const address = new URL(url, worker.registration.scope);
  const anew = () => fetch(address, { integrity, cache: "reload" });
  const answer = hashed ? await fetch(address, { integrity }).catch(anew) : await anew();
  if (!answer.ok) throw new Error(`${address} was answered with ${answer.status}`);
  return [address, answer];
}

worker.addEventListener("activate", (event) => {
  event.waitUntil(retireOthers());
});

/** Deletes the caches of other builds. The very first worker takes the open page on. */
async function retireOthers() {
  const names = await caches.keys();
  const others = names.filter((name) => name.startsWith(OWN) && name !== CACHE);
  await Promise.all(others.map((name) => caches.delete(name)));
  if (others.length === 0) await worker.clients.claim();
}

worker.addEventListener("message", (event) => {
  if (event.data?.kind === "take-over") worker.skipWaiting();
});

worker.addEventListener("fetch", (event) => {
  const { request } = event;
  const ours = request.url.startsWith(worker.registration.scope);
  if (request.method === "GET" && ours) event.respondWith(answer(request));
});

/**
 * From the cache when the build has it; the page itself for any other address
 * a person goes to; else from the network, and not kept.
 * @param {Request} request
 */
async function answer(request) {
  const cache = await caches.open(CACHE);
  const named = await cache.match(request, { ignoreVary: true });
  if (named) return named;
  if (request.mode === "navigate") {
    const page = await cache.match(worker.registration.scope, { ignoreVary: true });
    if (page) return page;
  }
  return fetch(request);
}
