/**
 * The library that reads and formats numbers for the spreadsheet, with dates read as the browser's
 * language writes them. The build puts it in the library's place.
 */
import { dateReader } from "./readDate";

export * from "numfmt";
export const parseDate = dateReader(navigator.language);
