/** What the generated script keeps in its closure: the functions and what the menu does. */
import "./builtIns";
import { implementationOf } from "../../functions/implementationOf";
import { implementations } from "../../functions/implementations";
import type { SpreadsheetService } from "./appsScript";
import { readArguments, writeResult, type SheetsResult } from "./cells";
import * as menu from "./menu";

declare const SpreadsheetApp: SpreadsheetService;

/** Computes one call of a custom function: `call("E1RM", [100, 5, 2])`. */
export const call = (id: string, args: readonly unknown[]): SheetsResult =>
  writeResult(implementationOf(implementations, id)(...readArguments(args, spreadsheetTimeZone)));

export const insertExample = (examples: menu.Examples) =>
  menu.insertExample(SpreadsheetApp, examples);

export const showCautions = (cautions: readonly string[]) =>
  menu.showCautions(SpreadsheetApp, cautions);

/** A custom function may read where its spreadsheet is without any permission. */
function spreadsheetTimeZone(): string | undefined {
  try {
    return SpreadsheetApp.getActiveSpreadsheet().getSpreadsheetTimeZone();
  } catch {
    // Without an answer a date is read by the script's own clock, which usually stands in the same zone.
    return undefined;
  }
}
