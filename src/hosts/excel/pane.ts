/** The pane's page inside Excel. */
import { implementations } from "../../functions/implementations";
import { PANE_DATA, type PaneData } from "../../pane/data";
import { mountPane } from "../../pane/pane";
import type { ExcelApi, OfficeApi } from "./paneOffice";
import { excelPort } from "./panePort";

declare const Office: OfficeApi | undefined;
declare const Excel: ExcelApi;

async function start(root: HTMLElement): Promise<void> {
  if (typeof Office === "undefined") throw new Error("Excel's own script did not load");
  const [response, { host }] = await Promise.all([fetch(PANE_DATA), Office.onReady()]);
  if (host !== Office.HostType.Excel) throw new Error("it is not open inside Excel");
  if (!response.ok) throw new Error(`${PANE_DATA}: ${response.status} ${response.statusText}`);
  const data = (await response.json()) as PaneData;
  mountPane(root, {
    data,
    port: excelPort(Excel),
    implementations,
    helpPage: "help.html",
    home: document.baseURI,
  });
}

const root = document.querySelector<HTMLElement>("#pane")!;
start(root).catch((error: unknown) => {
  const reason = error instanceof Error ? error.message : String(error);
  root.textContent = `The Toolbox cannot open: ${reason}.`;
});
