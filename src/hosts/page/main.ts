import "@univerjs/preset-sheets-core/lib/index.css";
import "@univerjs/preset-sheets-drawing/lib/index.css";
import "./workbook.css";
import type { IWorkbookData } from "@univerjs/core";
import { implementations } from "../../functions/implementations";
import type { FunctionsMetadata } from "../../engine/metadata";
import { addFileActions } from "./files/fileActions";
import { showMessages } from "./messageStrip";
import { mountPaneBeside } from "./pane";
import type { PageWorkbook } from "./spreadsheet";
import { openSpreadsheet } from "./spreadsheet";

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

async function start(): Promise<void> {
  const strip = document.querySelector<HTMLElement>("#message")!;
  const [data, metadata] = await Promise.all([
    load<IWorkbookData>("demo.json"),
    load<FunctionsMetadata>("catalogue.json"),
  ]);
  const workbook = openSpreadsheet("workbook", data, metadata, implementations);
  window.spare = workbook;
  showMessages(workbook, strip);
  addFileActions(workbook, document.querySelector("body > header")!, strip);
  await mountPaneBeside(workbook, implementations);
}

void start();
