/** Asks the browser to keep the hosted page, so that it opens without a network. A file needs no such thing. */
export function keepAtHand(): void {
  if (!location.protocol.startsWith("http") || !("serviceWorker" in navigator)) return;
  if (document.getElementById("card")?.textContent !== "") return;
  navigator.serviceWorker.register("worker.js").catch(() => undefined);
}
