import { columnsOfSeveral } from "../formula/mixed";
import { isProblem, pictures, type Picture } from "../pictures";
import type { Selection } from "../port";
import type { PaneContext } from "./context";
import { element } from "../../elements/element";

/** How many pixels a small picture has from left to right; it is drawn for a pane and shown smaller. */
const DRAWN = 296;

/** A selection of more cells is not drawn before anybody asks for it. */
const MOST_CELLS = 20_000;

/** How long, in milliseconds, a selection has to rest. */
const PAUSE = 250;

/** The pictures that the selected cells can be drawn as, each small: a press draws it. */
export function pictureOffers(
  { port, data }: PaneContext,
  isDark: () => boolean,
  choose: (picture: Picture) => void,
): HTMLElement {
  const offers = element("div", { className: "fitting" });
  let turn = 0;
  const update = async () => {
    const mine = ++turn;
    await new Promise((resolve) => setTimeout(resolve, PAUSE));
    // Nobody sees them while another view is open.
    if (mine !== turn || offers.offsetParent === null) return;
    const selection = await port.readSelection().catch(() => undefined);
    if (mine !== turn || selection === undefined) return;
    const fitting = fittingPictures(selection);
    const shown = fitting.map(({ picture, read }) => {
      const telling = picture.isOfOne?.(selection.values) ?? [];
      const isMixed = columnsOfSeveral(selection, data.headings, telling).length > 0;
      return offer(picture, isMixed ? undefined : read, isDark(), () => choose(picture));
    });
    offers.replaceChildren(
      ...(shown.length > 0
        ? [element("p", { className: "quiet" }, "The selected cells can be drawn as:"), ...shown]
        : []),
    );
  };
  port.onSelectionChange(() => void update());
  // Opening the view is no change of the selection, but it shows what the selection can be.
  new IntersectionObserver(([entry]) => {
    if (entry?.isIntersecting) void update();
  }).observe(offers);
  return offers;
}

/** Every picture that reads these cells, with what it reads. */
export function fittingPictures({ values }: Pick<Selection, "values">) {
  const count = values.length * (values[0]?.length ?? 0);
  if (count < 2 || count > MOST_CELLS) return [];
  return pictures.flatMap((picture) => {
    const read = picture.read(values);
    return isProblem(read) ? [] : [{ picture, read }];
  });
}

/** A press draws the picture; several lifters' sets are not drawn as one before it is said whose. */
function offer(picture: Picture, read: unknown, dark: boolean, draw: () => void): HTMLElement {
  const button = element("button", { type: "button", className: "entry" }, picture.title);
  button.addEventListener("click", draw);
  if (read === undefined) return button;
  const svg = picture.draw(read, { width: DRAWN, dark, document });
  svg.removeAttribute("role");
  svg.setAttribute("aria-hidden", "true");
  svg.querySelectorAll("[aria-label]").forEach((part) => part.removeAttribute("aria-label"));
  button.append(svg);
  return button;
}
