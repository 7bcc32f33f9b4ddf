import { readFileSync } from "node:fs";
import { runInContext } from "node:vm";
import { bareRealm } from "../../bareRealm";
import { built } from "../../built";
import { catalogue } from "../../functions/catalogue";

/** What a cell of Excel shows of a result: a value, or an error's code and message. */
export type Shown = number | string;

class ExcelError {
  constructor(
    readonly code: string,
    readonly message?: string,
  ) {}
}

/**
 * The bundle for Excel, called as Excel does: every argument a matrix, one that was left out `null`, and a blank
 * cell `blank`, which is 0 on the desktop and `null` on the web.
 */
export function excelHost(blank: 0 | null) {
  const functions = new Map<string, (...args: unknown[]) => unknown[][]>();
  const CustomFunctions = {
    associate: (id: string, compute: (...args: unknown[]) => unknown[][]) =>
      functions.set(id, compute),
    Error: ExcelError,
    ErrorCode: {
      invalidValue: "#VALUE!",
      notAvailable: "#N/A",
      divisionByZero: "#DIV/0!",
      invalidNumber: "#NUM!",
      nullReference: "#NULL!",
    },
  };
  const bundle = readFileSync(built("functions.js"), "utf8");
  runInContext(bundle, bareRealm({ CustomFunctions }));
  const cell = (content: unknown) => content ?? blank;
  const matrix = (argument: unknown) => {
    if (argument === null || argument === undefined) return null;
    if (!Array.isArray(argument)) return [[cell(argument)]];
    return (argument as unknown[][]).map((row) => row.map(cell));
  };
  return {
    call(id: string, args: readonly unknown[]): Shown[][] {
      const { parameters } = catalogue.functions.find((entry) => entry.id === id)!;
      const passed = parameters.map((_parameter, position) => matrix(args[position]));
      try {
        return functions.get(id)!(...passed).map((row) => row.map(shown));
      } catch (error) {
        return [[shown(error)]];
      }
    },
  };
}

function shown(content: unknown): Shown {
  if (content instanceof ExcelError) return `${content.code} ${content.message ?? ""}`;
  return content as Shown;
}
