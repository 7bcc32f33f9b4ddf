import { isError, type CellValue } from "../../../src/xlsx/model";

/** What coaches write around a call, and what it makes of the call's value: worked out here, by nobody else's rules. */
export interface Wrapper {
  /** Whether the call reads a cell that the wrapper asks about. */
  readonly needsCell: boolean;
  write(call: string, cell: string): string;
  /** What is shown for the value; nothing where programs may differ over it. */
  mean(value: CellValue, cell: CellValue): CellValue | undefined;
}

export const bare: Wrapper = {
  needsCell: false,
  write: (call) => call,
  mean: (value) => value,
};

export const wrappers: readonly Wrapper[] = [
  {
    needsCell: false,
    write: (call) => `IFERROR(${call},"–")`,
    mean: (value) => (isError(value) ? "–" : value),
  },
  {
    needsCell: false,
    write: (call) => `ROUND(${call},1)`,
    mean: rounded,
  },
  {
    needsCell: false,
    write: (call) => `IFERROR(ROUND(${call},1),"")`,
    mean(value) {
      const shown = rounded(value);
      return shown !== undefined && isError(shown) ? "" : shown;
    },
  },
  {
    needsCell: true,
    write: (call, cell) => `IF(${cell}="","",${call})`,
    mean: (value, cell) => (cell === null ? "" : value),
  },
  {
    needsCell: true,
    write: (call, cell) => `IF(ISNUMBER(${cell}),${call},"none")`,
    mean: (value, cell) => (typeof cell === "number" ? value : "none"),
  },
];

/** To one digit, half away from zero; what is all but a half goes either way. */
function rounded(value: CellValue): CellValue | undefined {
  if (value === "") return "#VALUE!";
  if (typeof value !== "number") return value !== null && isError(value) ? value : undefined;
  const tenths = Math.abs(value) * 10;
  if (tenths > 1e12 || Math.abs((tenths % 1) - 0.5) < 1e-6) return undefined;
  return (Math.sign(value) * Math.round(tenths)) / 10 || 0;
}
