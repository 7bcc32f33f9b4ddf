/** The part of Office.js that the pane uses, named as Microsoft names it. */
export interface ExcelApi {
  run<T>(batch: (context: RequestContext) => Promise<T>): Promise<T>;
}

export interface RequestContext {
  readonly workbook: Workbook;
  sync(): Promise<void>;
}

export interface Workbook {
  getSelectedRange(): Range;
  getActiveCell(): Range;
  readonly worksheets: Worksheets;
  readonly onSelectionChanged: { add(handler: () => Promise<void>): unknown };
}

interface Loadable {
  load(properties: string): unknown;
}

export interface Worksheets extends Loadable {
  readonly items: readonly Worksheet[];
  add(name: string): Worksheet;
  getItem(name: string): Worksheet;
  getActiveWorksheet(): Worksheet;
}

export interface Worksheet extends Loadable {
  readonly name: string;
  tabColor: string;
  showGridlines: boolean;
  activate(): void;
  getRange(address: string): Range;
  readonly freezePanes: { freezeAt(range: string): void };
  readonly shapes: { addImage(base64: string): Shape };
  readonly charts: { add(type: string, source: Range, seriesBy: string): Chart };
}

export interface Range extends Loadable {
  readonly address: string;
  readonly cellCount: number;
  readonly left: number;
  readonly width: number;
  readonly top: number;
  readonly isNullObject: boolean;
  values: unknown[][];
  formulas: unknown[][];
  numberFormat: string[][] | string;
  readonly worksheet: Worksheet;
  readonly format: RangeFormat;
  merge(): void;
  select(): void;
  getUsedRangeOrNullObject(valuesOnly: boolean): Range;
  getTables(fullyContained: boolean): { getCount(): { readonly value: number } };
}

export interface RangeFormat extends Loadable {
  columnWidth: number;
  rowHeight: number;
  wrapText: boolean;
  horizontalAlignment: string;
  verticalAlignment: string;
  readonly fill: { color: string };
  readonly font: { name: string; size: number; bold: boolean; italic: boolean; color: string };
  readonly borders: { getItem(edge: string): { style: string; color: string } };
}

export interface Shape {
  left: number;
  top: number;
  width: number;
  height: number;
  altTextDescription: string;
}

export interface Chart {
  left: number;
  top: number;
  readonly title: { text: string };
  readonly series: {
    getItemAt(index: number): Series;
    add(name: string, index: number): Series;
  };
  readonly axes: {
    readonly categoryAxis: { readonly title: { text: string } };
    readonly valueAxis: { readonly title: { text: string } };
  };
}

export interface Series {
  name: string;
  setValues(source: Range): void;
  setXAxisValues(source: Range): void;
}

/** What tells whether the page runs inside Excel. */
export interface OfficeApi {
  onReady(): Promise<{ readonly host: unknown }>;
  readonly HostType: { readonly Excel: unknown };
}
