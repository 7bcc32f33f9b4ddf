import "./paneSide.css";
import { element } from "../../elements/element";

/**
 * The place of the pane beside the workbook. The pane comes after the cells; where there is room its place is kept free
 * for it, or the cells would be laid out and drawn a second time when it comes.
 */
export function keepPlaceForPane(): HTMLElement {
  const side = element("aside", { id: "pane", "aria-label": "Toolbox" });
  // On a narrow screen the workbook needs all of it until the pane is asked for.
  side.hidden = !window.matchMedia("(min-width: 900px)").matches;
  document.querySelector("body > main")!.after(side);
  return side;
}
