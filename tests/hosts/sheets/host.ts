import { CellError, type Content, type Grid } from "../../../src/cells";
import { catalogue } from "../../functions/catalogue";
import type { Loaded } from "./load";

/** How the script takes a call and what it gives back, in the realm of its own built-ins. */
export interface SheetsHost {
  /** Calls a function as a formula in Sheets does; an error it throws comes back as one. */
  call(id: string, args: readonly unknown[]): Grid;
}

/** Makes arrays and dates of the realm that the script runs in, as Apps Script does. */
interface Realm {
  array(cells: readonly unknown[]): unknown[];
  date(year: number, month: number, day: number, milliseconds: number): Date;
}

/** Sheets, as far as a custom function can tell. */
export function sheetsHost({ evaluate }: Loaded): SheetsHost {
  const realm: Realm = {
    array: evaluate("(cells) => Array.from(cells)") as Realm["array"],
    date: evaluate(
      "(year, month, day, milliseconds) => new Date(year, month, day, 0, 0, 0, milliseconds)",
    ) as Realm["date"],
  };
  const functions = new Map(
    catalogue.functions.map(({ id, parameters }) => [
      id,
      {
        parameters,
        compute: evaluate(`SPARE_${id}`) as (...args: unknown[]) => unknown,
      },
    ]),
  );
  return {
    call(id, args) {
      const { parameters, compute } = functions.get(id)!;
      const passed = args.map((argument, position) =>
        argumentInSheets(argument, realm, parameters[position]?.name === "date"),
      );
      try {
        return gridOf(compute(...passed));
      } catch (error) {
        return [[new CellError("#VALUE!", (error as Error).message)]];
      }
    },
  };
}

/** What Sheets hands over: one cell as its value, a range as rows, nothing for what was left out. */
function argumentInSheets(argument: unknown, realm: Realm, isDate: boolean): unknown {
  if (argument === null || argument === undefined) return undefined;
  const cell = (content: unknown) => cellInSheets(content, realm, isDate);
  if (!Array.isArray(argument)) return cell(argument);
  const rows = (argument as unknown[]).map((row) =>
    Array.isArray(row) ? (row as unknown[]) : [row],
  );
  const [first] = rows;
  if (rows.length === 1 && first?.length === 1) return cell(first[0]);
  return realm.array(rows.map((row) => realm.array(row.map(cell))));
}

/** A blank is "", an error its text, a date a Date; formats and data types are not there. */
function cellInSheets(content: unknown, realm: Realm, isDate: boolean): unknown {
  if (content === null || content === undefined) return "";
  if (typeof content === "number" && isDate && Number.isFinite(content))
    return dateOf(content, realm);
  if (content instanceof Date) {
    return realm.date(content.getFullYear(), content.getMonth(), content.getDate(), 0);
  }
  if (typeof content !== "object") return content;
  const { type, basicValue } = content as { type?: string; basicValue?: unknown };
  if (type === "Error") return basicValue ?? "#VALUE!";
  return basicValue ?? "";
}

const MILLISECONDS_A_DAY = 86_400_000;

function dateOf(serial: number, realm: Realm): Date {
  const days = Math.floor(serial);
  return realm.date(1899, 11, 30 + days, Math.round((serial - days) * MILLISECONDS_A_DAY));
}

/** A result in our own realm's arrays. */
function gridOf(result: unknown): Grid {
  if (!Array.isArray(result)) return [[result as Content]];
  return (result as Content[][]).map((row) => [...row]);
}

/** A result as Sheets shows it: no error in an array keeps its code there. */
export const shownInSheets = (grid: Grid): unknown[][] =>
  grid.map((row) =>
    row.map((content) => (content instanceof CellError ? `! ${content.message}` : content)),
  );
