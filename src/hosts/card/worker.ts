/// <reference lib="webworker" />
/**
 * Keeps the card page at hand: it answers from its store at once and looks for a newer page behind it, so that a card
 * opens in the weights room's cellar. A card itself stands in the link's fragment, which never comes by here.
 */
declare const self: ServiceWorkerGlobalScope;

const STORE = "card page";
const PAGE = "./";

self.addEventListener("install", (event) => {
  event.waitUntil(caches.open(STORE).then((store) => store.add(PAGE)));
  void self.skipWaiting();
});

self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));

self.addEventListener("fetch", (event) => {
  const { mode, url } = event.request;
  if (mode !== "navigate" || new URL(url).origin !== self.location.origin) return;
  event.respondWith(answer(event));
});

async function answer(event: FetchEvent): Promise<Response> {
  const store = await caches.open(STORE);
  const kept = await store.match(PAGE);
  const fresh = fetch(PAGE).then(async (response) => {
    if (response.ok) await store.put(PAGE, response.clone());
    return response;
  });
  if (!kept) return fresh;
  event.waitUntil(fresh.catch(() => undefined));
  return kept;
}
export {};
