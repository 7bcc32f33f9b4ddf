import "./updates.css";
import { element } from "../../../elements/element";

/**
 * Lets the page open without a network from the second visit on. When a newer version has arrived it
 * says so, and takes it when it is told to: nothing changes in the middle of work. `settle` puts
 * away what is open before the page is loaded anew.
 */
export async function keepOffline(header: Element, settle: () => Promise<void>): Promise<void> {
  const workers = navigator.serviceWorker as ServiceWorkerContainer | undefined;
  if (!workers || !window.isSecureContext) return;
  // On the first visit nothing was in charge of the page before, and there is no news.
  const registration = await workers.register("service-worker.js").catch(() => undefined);
  if (!registration) return;

  let taking = false;
  workers.addEventListener("controllerchange", () => {
    if (taking) window.location.reload();
  });

  const offer = (waiting: ServiceWorker) => {
    header.querySelector(".update")?.remove();
    const button = element(
      "button",
      { type: "button", className: "update" },
      "Take the new version",
    );
    button.title = "A newer version of this page is here. Your workbooks stay.";
    button.addEventListener("click", () => {
      taking = true;
      void settle().then(() => waiting.postMessage("take over"));
    });
    header.append(button);
  };

  const watch = (installing: ServiceWorker | null) => {
    installing?.addEventListener("statechange", () => {
      if (installing.state === "installed" && workers.controller) offer(installing);
    });
  };
  if (registration.waiting && workers.controller) offer(registration.waiting);
  watch(registration.installing);
  registration.addEventListener("updatefound", () => watch(registration.installing));
}
