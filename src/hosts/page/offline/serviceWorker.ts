/**
 * Keeps the page's files on the device, so that it opens without a network. One version's files belong
 * together: a page never gets some of the old and some of the new. The next version is fetched in the
 * background, and waits until the page says that it may take over.
 */

/** What the build writes in here: this version's name and files. */
declare const VERSION: string;
declare const FILES: readonly string[];

/** What a service worker has that the types for pages lack. */
interface Worker {
  readonly registration: { readonly scope: string };
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(type: string, listener: (event: WorkerEvent) => void): void;
}

interface WorkerEvent {
  readonly data?: unknown;
  readonly request: Request;
  waitUntil(work: Promise<unknown>): void;
  respondWith(response: Promise<Response>): void;
}

const worker = self as unknown as Worker;
const FAMILY = "reps-to-spare ";
const CACHE_NAME = FAMILY + VERSION;

worker.addEventListener("install", (event) => {
  event.waitUntil(
    caches.open(CACHE_NAME).then((cache) =>
      // Past the browser's own cache, which may hold files of the version before.
      cache.addAll(FILES.map((file) => new Request(file, { cache: "no-cache" }))),
    ),
  );
});

worker.addEventListener("activate", (event) => {
  const tidied = caches.keys().then((names) => {
    const former = names.filter((name) => name.startsWith(FAMILY) && name !== CACHE_NAME);
    return Promise.all(former.map((name) => caches.delete(name)));
  });
  event.waitUntil(tidied.then(() => worker.clients.claim()));
});

worker.addEventListener("message", ({ data }) => {
  if (data === "take over") void worker.skipWaiting();
});

worker.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || !request.url.startsWith(worker.registration.scope)) return;
  event.respondWith(answer(request));
});

async function answer(request: Request): Promise<Response> {
  const cache = await caches.open(CACHE_NAME);
  const kept = await cache.match(request, { ignoreSearch: true });
  return kept ?? fetch(request);
}
