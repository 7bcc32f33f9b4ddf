import { OfficeMockObject } from "office-addin-mock";
import type { ExcelApi, RequestContext } from "../../../src/hosts/excel/paneOffice";
import { readTypedApi, type Member } from "./typedApi";

const api = readTypedApi();

/** A cell's look, as far as the pane touches it. */
const format = () => ({
  columnWidth: 48,
  rowHeight: 15,
  fill: {},
  font: {},
  borders: {
    border: {},
    getItem() {
      return this.border;
    },
  },
});

/** Cells A1:B2 of the sheet Log, whichever are asked for. */
const range = () => ({
  address: "Log!A1:B2",
  cellCount: 4,
  left: 0,
  top: 0,
  width: 96,
  isNullObject: false,
  values: [
    ["load", "reps"],
    [100, 5],
  ],
  formulas: [
    ["load", "reps"],
    [100, 5],
  ],
  numberFormat: [["General"]],
  format: format(),
  merge: () => undefined,
  select: () => undefined,
  getUsedRangeOrNullObject() {
    return this;
  },
  // What a count gives is there after the next sync, without a load.
  getTables: () => ({ getCount: () => ({ value: 0 }) }),
});

const chart = {
  title: {},
  series: {
    one: { setValues: () => undefined, setXAxisValues: () => undefined },
    getItemAt() {
      return this.one;
    },
    add() {
      return this.one;
    },
  },
  axes: { categoryAxis: { title: {} }, valueAxis: { title: {} } },
};

/** A sheet, and what the pane asks of it. */
const sheet = () => ({
  name: "Log",
  cells: range(),
  activate: () => undefined,
  getRange() {
    return this.cells;
  },
  freezePanes: { freezeAt: () => undefined },
  shapes: {
    shape: {},
    addImage() {
      return this.shape;
    },
  },
  charts: {
    chart,
    add() {
      return this.chart;
    },
  },
});

const workbook = () => ({
  selected: { ...range(), worksheet: sheet() },
  getSelectedRange() {
    return this.selected;
  },
  getActiveCell() {
    return this.selected;
  },
  onSelectionChanged: { add: () => undefined },
  worksheets: {
    // The mock has no collections: of these items there is one.
    items: {
      name: "Log",
      map<T>(of: (item: { name: string }) => T) {
        return [of(this)];
      },
    },
    sheet: sheet(),
    add() {
      return this.sheet;
    },
    getItem() {
      return this.sheet;
    },
    getActiveWorksheet() {
      return this.sheet;
    },
  },
});

/** Excel as Microsoft's mock stands in for it, which keeps what was not loaded and synced from being read. */
export interface MockExcel {
  readonly excel: ExcelApi;
  /** Every call of Excel's API so far, each once and in order: "Range.load(values)", "Range.formulas =". */
  calls(): string[];
  /** The requirement sets that those calls came with. */
  sets(): string[];
}

export function mockExcel(): MockExcel {
  const seen = new Map<string, Member>();
  const context = new OfficeMockObject({ workbook: workbook() });
  const recorded = record(context, "RequestContext", (call, member) => seen.set(call, member));
  return {
    excel: { run: (batch) => batch(recorded as RequestContext) },
    calls: () => [...seen.keys()],
    sets: () => [...new Set([...seen.values()].flatMap(({ set }) => set ?? []))],
  };
}

type See = (call: string, member: Member) => void;

/** An object of the mock whose every use is noted; what Excel's own types do not have is refused. */
function record(object: object, className: string, see: See): unknown {
  const membersOf = api.get(className);
  const memberOf = (name: string) => {
    const member = membersOf?.get(name);
    if (!member) throw new Error(`Excel's ${className} has no ${name}`);
    return member;
  };
  return new Proxy(object, {
    get(target, name) {
      const value: unknown = Reflect.get(target, name);
      // Awaiting asks every object whether it is a promise.
      if (typeof name === "symbol" || name === "then") return value;
      if (name === "sync") return () => synced(target as OfficeMockObject);
      const member = memberOf(name);
      const given = (result: unknown) =>
        typeof result === "object" && result !== null && api.has(member.gives ?? "")
          ? record(result, member.gives!, see)
          : result;
      if (typeof value === "function") {
        return (...args: unknown[]) => {
          const loads = name === "load" ? String(args[0]) : "";
          see(`${className}.${name}(${loads})`, member);
          return given(Reflect.apply(value, target, args));
        };
      }
      if (!api.has(member.gives ?? "")) see(`${className}.${name}`, member);
      return given(value);
    },
    set(target, name, value) {
      if (typeof name === "string") see(`${className}.${name} =`, memberOf(name));
      return Reflect.set(target, name, value);
    },
  });
}

/** The mock's sync passes on to its parts without waiting for them. */
async function synced(target: OfficeMockObject): Promise<void> {
  await target.sync();
  await new Promise((resolve) => setImmediate(resolve));
}
