import { serialOfTime } from "./day";

/**
 * What a cell can hold, once every host's way of passing it is out of the way: a blank is `null`, and an
 * error that was in the sheet before us is a `HostError`.
 */
export type CellValue = null | number | string | boolean | HostError;

/** An error that a cell of the sheet already holds, with its code as the sheet shows it. */
export class HostError {
  constructor(readonly code: string) {}
}

/** Sheets hands errors over as their text; in an array our own errors are text there too ("! message"). */
const ERROR_TEXT = /^#(N\/A|GETTING_DATA|[A-Z]+(\/0)?[!?])$/;
const OUR_ERROR_TEXT = /^! /;

/**
 * Reads one cell as a host passes it: desktop Excel's `0` for a blank stays a number here (only the quantity
 * that is asked for can tell what zero means), the web's `null` and Sheets' `""` are blanks, data-type objects
 * give their basic value, and a `Date` becomes the serial number it has in the sheet.
 */
export function readCell(raw: unknown): CellValue {
  switch (typeof raw) {
    case "number":
      return Number.isFinite(raw) ? raw : new HostError("#NUM!");
    case "string":
      return readText(raw);
    case "boolean":
      return raw;
    case "bigint":
      return readCell(Number(raw));
    case "object":
      return raw === null ? null : readObject(raw);
    default:
      return null;
  }
}

function readText(text: string): CellValue {
  const trimmed = text.trim();
  if (trimmed === "") return null;
  if (ERROR_TEXT.test(trimmed)) return new HostError(trimmed);
  if (OUR_ERROR_TEXT.test(trimmed)) return new HostError("#VALUE!");
  return text;
}

function readObject(raw: object): CellValue {
  if (raw instanceof HostError) return raw;
  // A date from another realm (Apps Script, a test's context) is no instance of our Date.
  if (Object.prototype.toString.call(raw) === "[object Date]") return serialNumber(raw as Date);
  const { type, basicType, basicValue, errorType, code } = raw as Record<string, unknown>;
  if (type === "Empty" || basicType === "Empty") return null;
  if (type === "Error" || basicType === "Error") {
    return new HostError(typeof basicValue === "string" ? basicValue : errorName(errorType));
  }
  if (typeof code === "string" && ERROR_TEXT.test(code)) return new HostError(code);
  if (typeof basicValue === "object" || basicValue === undefined) return new HostError("#VALUE!");
  return readCell(basicValue);
}

/** A data-type error without its basic value tells its kind in camel case only ("Ref" for #REF!). */
function errorName(errorType: unknown): string {
  switch (errorType) {
    case "NotAvailable":
      return "#N/A";
    case "Div0":
      return "#DIV/0!";
    case "Name":
      return "#NAME?";
    case "GettingData":
      return "#GETTING_DATA";
    default:
      return typeof errorType === "string" ? `#${errorType.toUpperCase()}!` : "#VALUE!";
  }
}

/** The serial number a spreadsheet shows for this date and time of day, in the date's own time zone. */
function serialNumber(date: Date): CellValue {
  const asIfUniversal = Date.UTC(
    date.getFullYear(),
    date.getMonth(),
    date.getDate(),
    date.getHours(),
    date.getMinutes(),
    date.getSeconds(),
  );
  const serial = serialOfTime(asIfUniversal);
  return Number.isFinite(serial) ? serial : new HostError("#NUM!");
}
