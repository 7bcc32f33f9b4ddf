import "./colors.css";
import "./pane.css";
import type { Findable } from "./search/findable";
import type { PaneContext, Show, View } from "./view/context";
import { element } from "../elements/element";
import { newId } from "./view/elements";
import { cardsView } from "./view/cards";
import { cautionsView } from "./view/cautions";
import { findView } from "./view/find";
import { picturesView } from "./view/pictures";
import { sheetsView } from "./view/sheets";

const views: readonly View[] = [findView, sheetsView, picturesView, cardsView, cautionsView];

/** Builds the pane inside an element: its views as tabs, the first one open. */
export function mountPane(root: HTMLElement, context: PaneContext): void {
  root.classList.add("spare-pane");
  const tabs = views.map((view) => makeTab(view, context, show));
  const select = (index: number) => {
    tabs.forEach(({ tab, panel }, at) => {
      tab.setAttribute("aria-selected", String(at === index));
      tab.tabIndex = at === index ? 0 : -1;
      panel.hidden = at !== index;
    });
  };
  tabs.forEach(({ tab }, index) => {
    tab.addEventListener("click", () => select(index));
    tab.addEventListener("keydown", (event) => {
      const to = tabReached(event.key, index, tabs.length);
      if (to === undefined) return;
      event.preventDefault();
      select(to);
      tabs[to]?.tab.focus();
    });
  });
  function show({ kind, id }: Findable): void {
    const index = views.findIndex(({ holds }) => holds === kind);
    const panel = tabs[index]?.panel;
    if (!panel) return;
    select(index);
    views[index]?.reveal?.(panel, id);
  }
  select(0);
  root.replaceChildren(
    element(
      "div",
      { className: "tabs", role: "tablist", "aria-label": "Reps to Spare" },
      ...tabs.map(({ tab }) => tab),
    ),
    ...tabs.map(({ panel }) => panel),
  );
}

function makeTab({ name, build }: View, context: PaneContext, show: Show) {
  const tabId = newId("tab");
  const panelId = newId("view");
  const tab = element(
    "button",
    { type: "button", role: "tab", id: tabId, "aria-controls": panelId },
    name,
  );
  const panel = element(
    "section",
    { role: "tabpanel", id: panelId, "aria-labelledby": tabId },
    build(context, show),
  );
  return { tab, panel };
}

/** Where an arrow key leads among tabs, round and round. */
function tabReached(key: string, from: number, count: number): number | undefined {
  switch (key) {
    case "ArrowRight":
      return (from + 1) % count;
    case "ArrowLeft":
      return (from + count - 1) % count;
    case "Home":
      return 0;
    case "End":
      return count - 1;
    default:
      return undefined;
  }
}
