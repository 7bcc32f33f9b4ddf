import { columnsOfSeveral, isSameName } from "../formula/mixed";
import { NO_CHART, nativeChartOf } from "../nativeChart";
import { isProblem, pictures, svgToPng, type Picture } from "../pictures";
import { EXAMPLES } from "../pictures/examples";
import { trendSettings, type FoundSettings } from "../pictures/settings";
import type { Selection } from "../port";
import type { PaneContext, View } from "./context";
import { element } from "../../elements/element";
import { liveLine, newId, tell } from "./elements";
import { mixedQuestion, type Answer } from "./mixedQuestion";
import { pictureOffers } from "./pictureOffers";

/** Pictures of the selected cells, in the pane first and from there into the sheet. */
export const picturesView: View = {
  name: "Pictures",
  build: (context) => {
    const { port } = context;
    const selectId = newId("picture");
    const select = element(
      "select",
      { id: selectId },
      ...pictures.map(({ id, title }) => element("option", { value: id }, title)),
    );
    const unitId = newId("unit");
    const unit = element("input", { id: unitId, type: "text", autocomplete: "off" });
    const needs = element("p", { className: "quiet" });
    const draw = element(
      "button",
      { type: "button", className: "main" },
      "Draw the selected cells",
    );
    const shown = element("div", { className: "picture" });
    const said = liveLine("said");

    let selected: { selection: Selection; found: FoundSettings | undefined } | undefined;
    const whose = mixedQuestion(undefined, undefined, () => selected && show(chosen(), selected));

    const chosen = () => pictures.find(({ id }) => id === select.value)!;
    const explain = () => {
      needs.textContent = `Select: ${chosen().describe}`;
      shown.replaceChildren(...exampleOf(chosen(), isDark(shown)));
      whose.ask([]);
      said.textContent = "";
    };
    select.addEventListener("change", explain);
    explain();
    // Only on its page does the pane know whether it is dark.
    requestAnimationFrame(explain);

    const drawSelected = () => {
      void port.readSelection().then(
        async (selection) => {
          const telling = chosen().isOfOne?.(selection.values) ?? [];
          const found =
            chosen().hasSettings && telling.length > 0
              ? await trendSettings(selection.sheet, context.data.catalogue, port)
              : undefined;
          selected = { selection, found };
          whose.ask(columnsOfSeveral(selection, context.data.headings, telling));
          show(chosen(), selected);
        },
        (error: unknown) => tell(said, reasonOf(error), "failed"),
      );
    };
    draw.addEventListener("click", drawSelected);
    const offers = pictureOffers(
      context,
      () => isDark(shown),
      (picture) => {
        select.value = picture.id;
        explain();
        drawSelected();
      },
    );

    function show(
      picture: Picture,
      { selection: whole, found }: NonNullable<typeof selected>,
    ): void {
      shown.replaceChildren();
      if (whose.isOpen()) {
        tell(said, "Choose whose rows are to be drawn.", "failed");
        return;
      }
      const selection = { ...whole, values: rowsOf(whole.values, whose.answers()) };
      const data = picture.read(selection.values, found?.settings);
      if (isProblem(data)) {
        tell(said, `Nothing to draw: ${data.problem}.`, "failed");
        return;
      }
      const units = unit.value.trim();
      const drawn = (width: number, dark: boolean) =>
        picture.draw(data, { width, dark, document, ...(units !== "" && { units }) });
      tell(
        said,
        `Drawn: ${picture.title}${found ? `, with the settings of ${found.address}` : ""}.`,
      );
      const svg = drawn(PANE_WIDTH, isDark(shown));
      // The drawing is one image with one description; labels on its groups of lines are not read.
      svg.querySelectorAll("g[aria-label]").forEach((group) => group.removeAttribute("aria-label"));
      shown.replaceChildren(
        svg,
        actions(picture, selection, context, () => drawn(SHEET_WIDTH, false), said),
      );
    }

    return element(
      "div",
      {},
      element("h2", {}, "Pictures"),
      offers,
      element("label", { htmlFor: selectId }, "Show"),
      select,
      needs,
      element("label", { htmlFor: unitId }, "Unit, where no heading says it"),
      unit,
      element("p", {}, draw),
      whose.element,
      said,
      shown,
    );
  },
  holds: "picture",
  reveal: (panel, id) => {
    const select = panel.querySelector("select");
    if (!select) return;
    select.value = id;
    select.dispatchEvent(new Event("change"));
    select.focus();
  },
};

/** The heading and the chosen lifter's rows. */
const rowsOf = (values: Selection["values"], answers: readonly Answer[]) =>
  values.filter(
    (row, index) => index === 0 || answers.every(({ column, is }) => isSameName(row[column], is)),
  );

/** What a picture looks like, before anything is selected. */
function exampleOf(picture: Picture, dark: boolean): HTMLElement[] {
  const data = picture.read(EXAMPLES[picture.id] ?? []);
  if (isProblem(data)) return [];
  const svg = picture.draw(data, { width: PANE_WIDTH, dark, document });
  svg.setAttribute("aria-label", `An example: ${picture.title}`);
  svg.querySelectorAll("g[aria-label]").forEach((group) => group.removeAttribute("aria-label"));
  const caption = element("p", { className: "quiet" }, "An example, with invented numbers:");
  const frame = element("div", { className: "example" });
  frame.append(svg);
  return [caption, frame];
}

/** What a pane of 320 pixels has room for. */
const PANE_WIDTH = 296;
const SHEET_WIDTH = 720;

/** Twice the pixels, so that it stays sharp in print. */
const SHARP = 2;

/** Whether the pane has the colours of a dark page. */
const isDark = (within: HTMLElement) => getComputedStyle(within).colorScheme === "dark";

function actions(
  picture: Picture,
  selection: Selection,
  { port }: PaneContext,
  drawWide: () => SVGSVGElement,
  said: HTMLElement,
): HTMLElement {
  const { addChart } = port;
  const chart = nativeChartOf(picture.id, selection);
  const why = NO_CHART[picture.id];
  const action = (text: string, act: () => Promise<string>) => {
    const button = element("button", { type: "button" }, text);
    button.addEventListener("click", () => {
      act().then(
        (done) => tell(said, done),
        (error: unknown) => tell(said, reasonOf(error), "failed"),
      );
    });
    return button;
  };
  return element(
    "div",
    { className: "row actions" },
    action("Put it in the sheet", async () => {
      const svg = drawWide();
      const url = await pngAddress(svg);
      await port.addImage({
        png: url.slice(url.indexOf(",") + 1),
        width: Number(svg.getAttribute("width")),
        height: Number(svg.getAttribute("height")),
        description: svg.getAttribute("aria-label") ?? picture.title,
      });
      return "It lies in the sheet, by the selected cells.";
    }),
    addChart &&
      chart &&
      action("Add it as a chart", async () => {
        await addChart(chart);
        return "The chart lies by the selected cells, and follows its numbers.";
      }),
    addChart &&
      why !== undefined &&
      element("p", { className: "quiet" }, `${why}, so this is a picture.`),
    action("Save as an image", async () => {
      const href = await pngAddress(drawWide());
      element("a", { href, download: `${picture.id}.png` }).click();
      return "Saved.";
    }),
  );
}

/** The drawing as a data address of a PNG. */
async function pngAddress(svg: SVGSVGElement): Promise<string> {
  const blob = await svgToPng(svg, SHARP);
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result));
    reader.onerror = () => reject(new Error("the browser could not read its own image"));
    reader.readAsDataURL(blob);
  });
}

const reasonOf = (error: unknown) => (error instanceof Error ? error.message : String(error));
