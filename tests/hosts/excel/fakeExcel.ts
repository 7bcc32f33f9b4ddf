import type {
  ExcelApi,
  OfficeApi,
  Range,
  RequestContext,
} from "../../../src/hosts/excel/paneOffice";
import { partsOf } from "../../../src/pane/formula/reference";
import { areaAddress, columnNumber, type Area } from "../../../src/formula/address";

/** What a test can see of the workbook that the stand-in keeps. */
export interface FakeExcel {
  readonly excel: ExcelApi;
  readonly office: OfficeApi;
  readonly sheets: FakeSheet[];
  /** The sheet that is there from the start, "Log". */
  readonly log: FakeSheet;
  /** Selects a range; its first cell is the active one. */
  select(reference: string): void;
  content(reference: string): unknown;
}

export interface FakeSheet {
  name: string;
  readonly cells: Map<string, unknown>;
  /** Every property that was set on a range, by its address. */
  readonly looks: Map<string, Record<string, unknown>>;
  readonly merged: string[];
  readonly images: Record<string, unknown>[];
  readonly charts: Record<string, unknown>[];
  readonly tables: string[];
  frozen?: string;
  showGridlines?: boolean;
  tabColor?: string;
}

/**
 * A stand-in for Excel as Office.js shows it, strict where a real one is: what was not loaded and
 * synced cannot be read, formulas must have their range's shape, and a name is taken once.
 */
export function fakeExcel(): FakeExcel {
  const log = newSheet("Log");
  const sheets = [log];
  let active = log;
  let selected = "A1";
  const listeners: (() => Promise<void>)[] = [];

  function context(): RequestContext {
    const waiting: (() => void)[] = [];

    function range(sheet: FakeSheet, address: string): Range {
      const area = parse(address);
      const readable = new Set<string>();
      const look: Record<string, unknown> = sheet.looks.get(address) ?? {};
      const properties: Record<string, () => unknown> = {
        address: () => `${/\W/.test(sheet.name) ? `'${sheet.name}'` : sheet.name}!${address}`,
        cellCount: () =>
          (area.endRow - area.startRow + 1) * (area.endColumn - area.startColumn + 1),
        left: () => area.startColumn * 48,
        top: () => area.startRow * 15,
        width: () => (area.endColumn - area.startColumn + 1) * 48,
        isNullObject: () => false,
        values: () => grid(area, (key) => sheet.cells.get(key) ?? ""),
        formulas: () => grid(area, (key) => sheet.cells.get(key) ?? ""),
      };
      const methods: Record<string | symbol, unknown> = {
        load(names: string) {
          waiting.push(() => names.split(/,\s*/).forEach((name) => readable.add(name)));
        },
        merge: () => sheet.merged.push(address),
        select: () => {
          active = sheet;
          selected = address;
        },
        getUsedRangeOrNullObject() {
          const used = usedWithin(sheet, area);
          if (used) return range(sheet, areaAddress(used));
          return { isNullObject: true, load: () => undefined };
        },
        getTables: () => ({
          getCount: () => ({
            value: sheet.tables.some((table) => overlap(parse(table), area)) ? 1 : 0,
          }),
        }),
        worksheet: worksheet(sheet),
        format: Object.assign(recorder(sheet, address, look, "", { columnWidth: 48 }), {
          load: () => undefined,
          fill: recorder(sheet, address, look, "fill."),
          font: recorder(sheet, address, look, "font."),
          borders: { getItem: (edge: string) => recorder(sheet, address, look, `${edge}.`) },
        }),
      };
      methods[ADDRESS] = address;
      return new Proxy(methods, {
        get(target, name: string | typeof ADDRESS) {
          // A promise asks every object it is given whether it is one too.
          if (name in target || name === "then" || name === ADDRESS) return target[name];
          const property = properties[name];
          if (property === undefined) throw new Error(`a range has no ${name}`);
          if (!readable.has(name) && name !== "isNullObject") {
            throw new Error(`the property '${name}' is not available: load it and sync`);
          }
          return property();
        },
        set(_target, name: string, value: unknown) {
          if (name === "formulas") writeFormulas(sheet, area, value as unknown[][]);
          else if (name === "numberFormat") Object.assign(look, { [name]: value });
          else throw new Error(`a range's ${name} is not set here`);
          sheet.looks.set(address, look);
          return true;
        },
      }) as unknown as Range;
    }

    function worksheet(sheet: FakeSheet) {
      const parts = {
        load: () => undefined,
        activate: () => {
          active = sheet;
          selected = "A1";
        },
        getRange: (address: string) => range(sheet, address),
        freezePanes: { freezeAt: (address: string) => (sheet.frozen = address) },
        shapes: {
          addImage(base64: string) {
            const image = { base64 };
            sheet.images.push(image);
            return image;
          },
        },
        charts: {
          add(type: string, source: Range, seriesBy: string) {
            const axis = () => ({ title: { text: "" } });
            const list: Record<string, unknown>[] = [];
            const add = (name: string, values?: Range) => {
              const series = {
                name,
                values: values && addressOf(values),
                setValues: (cells: Range) => (series.values = addressOf(cells)),
                across: "",
                setXAxisValues: (cells: Range) => (series.across = addressOf(cells)),
              };
              list.push(series);
              return series;
            };
            add("Series1", source);
            const chart = {
              type,
              seriesBy,
              list,
              series: {
                getItemAt: (index: number) => list[index],
                add: (name: string) => add(name),
              },
              title: { text: "" },
              axes: { categoryAxis: axis(), valueAxis: axis() },
            };
            sheet.charts.push(chart);
            return chart;
          },
        },
      };
      return new Proxy(parts, {
        get: (target, name) => Reflect.get(name in target ? target : sheet, name) as unknown,
        set: (_target, name, value) => Reflect.set(sheet, name, value),
      });
    }

    const named = (name: string) => {
      const found = sheets.find((sheet) => sheet.name === name);
      if (!found) throw new Error(`ItemNotFound: ${name}`);
      return found;
    };
    return {
      workbook: {
        getSelectedRange: () => range(active, selected),
        getActiveCell: () => range(active, cornersOf(selected)[0]),
        worksheets: {
          items: sheets.map(worksheet),
          load: () => undefined,
          add(name: string) {
            if (sheets.some((sheet) => sheet.name === name)) throw new Error("ItemAlreadyExists");
            sheets.push(newSheet(name));
            return worksheet(sheets.at(-1)!);
          },
          getItem: (name: string) => worksheet(named(name)),
          getActiveWorksheet: () => worksheet(active),
        },
        onSelectionChanged: { add: (listener: () => Promise<void>) => listeners.push(listener) },
      },
      sync() {
        waiting.splice(0).forEach((act) => act());
        return Promise.resolve();
      },
    } as unknown as RequestContext;
  }

  return {
    excel: { run: async (batch) => batch(context()) },
    office: { onReady: () => Promise.resolve({ host: "Excel" }), HostType: { Excel: "Excel" } },
    sheets,
    log,
    select(reference) {
      const { sheet, address } = partsOf(reference);
      if (sheet !== undefined) active = sheets.find(({ name }) => name === sheet)!;
      selected = address;
      for (const listener of listeners) void listener();
    },
    content(reference) {
      const { sheet, address } = partsOf(reference);
      return sheets.find(({ name }) => name === sheet)?.cells.get(address);
    },
  };
}

function newSheet(name: string): FakeSheet {
  return {
    name,
    cells: new Map(),
    looks: new Map(),
    merged: [],
    images: [],
    charts: [],
    tables: [],
  };
}

/** Where a range keeps what it is, for the stand-in itself: a chart does not have to load it. */
const ADDRESS = Symbol("address");

const addressOf = (range: Range) => String((range as unknown as Record<symbol, unknown>)[ADDRESS]);

const LAST_ROW = 1_048_575;
const LAST_COLUMN = 16_383;

/** The first cell of a range and its last. */
function cornersOf(address: string): [first: string, last: string] {
  const [first = address, last = first] = address.split(":");
  return [first, last];
}

function parse(address: string): Area {
  const [first, last] = cornersOf(address);
  const column = (corner: string, open: number) => {
    const letters = /^[A-Z]+/.exec(corner)?.[0];
    return letters === undefined ? open : columnNumber(letters);
  };
  const row = (corner: string, open: number) => {
    const digits = /\d+$/.exec(corner)?.[0];
    return digits === undefined ? open : Number(digits) - 1;
  };
  return {
    startRow: row(first, 0),
    startColumn: column(first, 0),
    endRow: row(last, LAST_ROW),
    endColumn: column(last, LAST_COLUMN),
  };
}

const cell = (row: number, column: number) =>
  areaAddress({ startRow: row, endRow: row, startColumn: column, endColumn: column });

function grid(area: Area, at: (key: string) => unknown): unknown[][] {
  return Array.from({ length: area.endRow - area.startRow + 1 }, (_r, down) =>
    Array.from({ length: area.endColumn - area.startColumn + 1 }, (_c, right) =>
      at(cell(area.startRow + down, area.startColumn + right)),
    ),
  );
}

function writeFormulas(sheet: FakeSheet, area: Area, contents: unknown[][]): void {
  const rows = area.endRow - area.startRow + 1;
  const columns = area.endColumn - area.startColumn + 1;
  if (contents.length !== rows || contents.some((row) => row.length !== columns)) {
    throw new Error("InvalidArgument: the array does not match the size of the range");
  }
  contents.forEach((row, down) =>
    row.forEach((content, right) => {
      if (content === null) return;
      sheet.cells.set(cell(area.startRow + down, area.startColumn + right), content);
    }),
  );
}

function usedWithin(sheet: FakeSheet, area: Area): Area | undefined {
  const used = [...sheet.cells.keys()].map(parse).filter((each) => overlap(each, area));
  if (used.length === 0) return undefined;
  return {
    startRow: Math.min(...used.map(({ startRow }) => startRow)),
    startColumn: Math.min(...used.map(({ startColumn }) => startColumn)),
    endRow: Math.max(...used.map(({ endRow }) => endRow)),
    endColumn: Math.max(...used.map(({ endColumn }) => endColumn)),
  };
}

const overlap = (a: Area, b: Area) =>
  a.startRow <= b.endRow &&
  b.startRow <= a.endRow &&
  a.startColumn <= b.endColumn &&
  b.startColumn <= a.endColumn;

/** An object that notes under the range's address whatever is set on it. */
function recorder(
  sheet: FakeSheet,
  address: string,
  look: Record<string, unknown>,
  prefix = "",
  before: Record<string, unknown> = {},
) {
  return new Proxy(
    { ...before },
    {
      set(target, name: string, value: unknown) {
        if (typeof value === "object" || typeof value === "function")
          return Reflect.set(target, name, value);
        look[prefix + name] = value;
        sheet.looks.set(address, look);
        return true;
      },
    },
  );
}
