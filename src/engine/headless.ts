import type { IRange, IWorkbookData } from "@univerjs/core";
import type { WorkbookModel } from "../xlsx/model";
import type { Calculation } from "./data/calculationData";
import type { Contents } from "./data/contentsData";
import type { CellContent } from "./inspect";
import type { FunctionsMetadata, Implementations } from "./metadata";
import { prepareNode } from "./node";

/** An open workbook without a screen, all of its formulas computed. */
export interface HeadlessWorkbook {
  /** What a cell holds: `read("Test day", "F7")`. A blank cell is `null`, an error its code. */
  read(sheet: string, address: string): CellContent;
  /** What our function says about the error in a cell, if it is one of ours. */
  message(sheet: string, address: string): string | undefined;
  /** The cells that the formula in a cell spills over, its own among them; nothing if it does not. */
  spill(sheet: string, address: string): IRange | undefined;
  /** Types a value or a formula into a cell (`null` empties it) and waits for the sheet to settle. */
  write(sheet: string, address: string, content: number | string | null): Promise<void>;
  /** Whether some of its cells read each other in a circle. */
  hasCircle(): boolean;
  /** The workbook with its computed values. */
  save(): IWorkbookData;
  /** Lets go of everything the engine holds. */
  close(): void;
}

/** Hears how many of a workbook's formulas are computed. */
export type OnProgress = (done: number, of: number) => void;

/** Opens a file's values and those of its formulas that are live, and computes them. Whoever opens it closes it. */
export async function openCalculation(
  book: WorkbookModel,
  calculation: Calculation,
  metadata: FunctionsMetadata,
  implementations: Implementations,
  onProgress?: OnProgress,
): Promise<HeadlessWorkbook> {
  const { calculationData } = await import("./data/calculationData");
  return openWorkbook(calculationData(book, calculation), metadata, implementations, onProgress);
}

/** Opens sheets of plain contents and computes them. Whoever opens them closes them. */
export async function openContents(
  sheets: Contents,
  names: Readonly<Record<string, string>>,
  metadata: FunctionsMetadata,
  implementations: Implementations,
): Promise<HeadlessWorkbook> {
  const { contentsData } = await import("./data/contentsData");
  return openWorkbook(contentsData(sheets, names), metadata, implementations);
}

/** Opens a workbook in Node and computes it. Whoever opens it closes it. */
export async function openWorkbook(
  data: IWorkbookData,
  metadata: FunctionsMetadata,
  implementations: Implementations,
  onProgress?: OnProgress,
): Promise<HeadlessWorkbook> {
  prepareNode();
  const { openInEngine } = await import("./engine");
  return openInEngine(data, metadata, implementations, onProgress);
}
