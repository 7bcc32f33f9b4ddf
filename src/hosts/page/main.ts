import "@univerjs/preset-sheets-core/lib/index.css";
import "@univerjs/preset-sheets-drawing/lib/index.css";
import "@univerjs/preset-sheets-filter/lib/index.css";
import "@univerjs/preset-sheets-find-replace/lib/index.css";
import "@univerjs/preset-sheets-sort/lib/index.css";
import "../../pane/colors.css";
import "./workbook.css";
import type { IWorkbookData } from "@univerjs/core";
import { implementations } from "../../functions/implementations";
import type { FunctionsMetadata } from "../../engine/metadata";
import { element } from "../../elements/element";
import { fileActions, fileButtons } from "./files/fileActions";
import { followDarkness } from "./darkness";
import { openFinder } from "./finder";
import { createMessageStrip } from "./messageStrip";
import { nameControls } from "./names/nameControls";
import { keepOffline } from "./offline/updates";
import { keepPlaceForPane } from "./paneSide";
import { printOnRequest } from "./print/printSheet";
import { listenForShortcuts } from "./shortcuts";
import type { PageWorkbook } from "./spreadsheet";
import { openSpreadsheet } from "./spreadsheet";
import { createLibrary } from "./storage/library";
import { libraryButton } from "./storage/libraryDialog";
import { replay } from "./storage/replay";
import { beginning, begun } from "./storage/resume";
import { openShelf } from "./storage/shelf";
import { scrollBySwiping } from "./touch/swipe";
import { typeInCellsOfPressedTab } from "./typeInCells";

declare global {
  interface Window {
    /** The open workbook, for whoever wants to read it from the browser's console. */
    spare?: PageWorkbook;
  }
}

async function load<T>(file: string): Promise<T> {
  const response = await fetch(file);
  if (!response.ok) throw new Error(`${file}: ${response.status} ${response.statusText}`);
  return (await response.json()) as T;
}

const demo = () => load<IWorkbookData>("demo.json");

/** What the first look at the cells can do without comes in a bundle of its own. */
const loadPane = () => import(/* webpackMode: "lazy", webpackChunkName: "beside" */ "./pane");

async function start(): Promise<void> {
  const header = document.querySelector("body > header")!;
  const place = document.querySelector<HTMLElement>("#workbook")!;
  const side = keepPlaceForPane();
  const strip = createMessageStrip(document.querySelector<HTMLElement>("#message")!);

  const metadata = load<FunctionsMetadata>("catalogue.json");
  const shelf = await openShelf();
  const first = await beginning(shelf, demo);
  const workbook = openSpreadsheet("workbook", first.data, await metadata, implementations);
  replay(workbook.univer, first.changes);
  const library = createLibrary(workbook, shelf, demo, strip, first);
  const files = fileActions(workbook, library, strip);

  strip.follow(workbook);
  if (first.trouble) strip.say(first.trouble, "trouble");
  const actions = element(
    "div",
    { className: "file-actions", role: "group", "aria-label": "Workbook file" },
    libraryButton(library, strip),
    ...fileButtons(files),
  );
  header.querySelector("h1")!.after(actions);
  printOnRequest(workbook);
  nameControls(place);
  followDarkness(workbook);
  typeInCellsOfPressedTab(workbook.univer, place);
  scrollBySwiping(place);
  listenForShortcuts({
    s: () => void files.save(),
    o: () => void files.open(),
    p: () => void files.print(),
    f: () => void openFinder(workbook, "find"),
    h: () => void openFinder(workbook, "replace"),
  });
  // All else is kept on the device as it is made.
  window.addEventListener("beforeunload", (event) => {
    if (library.behind) event.preventDefault();
  });
  window.spare = workbook;
  try {
    const { mountPaneBeside } = await loadPane();
    await mountPaneBeside(side, workbook, implementations);
  } catch (error) {
    // Nothing comes into the place that was kept for it.
    side.remove();
    throw error;
  }
  begun();
  await keepOffline(header, () => library.settle());
}

void start();
