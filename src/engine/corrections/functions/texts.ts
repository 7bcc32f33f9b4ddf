import type { BaseFunction } from "@univerjs/engine-formula";
import { StringValueObject } from "@univerjs/engine-formula";
import { around } from "./around";
import { asNumber, asText, wrongValue } from "./numbers";
import { cellByCell } from "./plain";
import { wildcardPattern } from "./wildcards";

export const textFunctions = (): readonly BaseFunction[] => [
  cellByCell("SEARCH", [2, 3], (sought, within, from = 1) => {
    const start = asNumber(from);
    const text = asText(within);
    if (start === undefined || start < 1 || start > text.length + 1) return wrongValue;
    const found = text
      .slice(Math.floor(start) - 1)
      .search(wildcardPattern(asText(sought), "inside"));
    return found < 0 ? wrongValue : found + Math.floor(start);
  }),
  // A link shows its label; it leads nowhere here, and its address goes nowhere.
  cellByCell("HYPERLINK", [1, 2], (address, label = address) => label ?? 0),
  cellByCell("VALUETOTEXT", [1, 2], (value, form = 0) => {
    return Number(form) === 1 && typeof value === "string"
      ? `"${value.replaceAll('"', '""')}"`
      : asText(value);
  }),
  around("TEXT", (within, value, ...format) =>
    within(
      value.isBoolean() ? StringValueObject.create(asText(value.getValue())) : value,
      ...format,
    ),
  ),
  cellByCell("LEN", [1, 1], (text) => asText(text).length),
];
