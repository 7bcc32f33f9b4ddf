import type { View } from "./context";
import { element } from "../../elements/element";

/** What everybody should have read before a number goes on a bar. */
export const cautionsView: View = {
  name: "Cautions",
  build: ({ data, helpPage }) =>
    element(
      "div",
      {},
      element("h2", {}, "Before anybody lifts"),
      element("ul", {}, ...data.cautions.map((text) => element("li", {}, text))),
      element(
        "p",
        {},
        element("a", { href: helpPage, target: "_blank", rel: "noopener" }, "All of the help"),
      ),
    ),
};
