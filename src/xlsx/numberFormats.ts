/** The number formats that every program knows by number, without the file writing them out. */
export const BUILT_IN_FORMATS: Readonly<Record<number, string>> = {
  1: "0",
  2: "0.00",
  3: "#,##0",
  4: "#,##0.00",
  9: "0%",
  10: "0.00%",
  11: "0.00E+00",
  12: "# ?/?",
  13: "# ??/??",
  14: "yyyy-mm-dd",
  15: "d-mmm-yy",
  16: "d-mmm",
  17: "mmm-yy",
  18: "h:mm AM/PM",
  19: "h:mm:ss AM/PM",
  20: "h:mm",
  21: "h:mm:ss",
  22: "yyyy-mm-dd h:mm",
  37: "#,##0;(#,##0)",
  38: "#,##0;[Red](#,##0)",
  39: "#,##0.00;(#,##0.00)",
  40: "#,##0.00;[Red](#,##0.00)",
  45: "mm:ss",
  46: "[h]:mm:ss",
  47: "mm:ss.0",
  48: "##0.0E+0",
  49: "@",
};

/** Whether a number format shows dates: it has a day, month or year outside quotes and brackets. */
export function isDateFormat(pattern: string): boolean {
  const [first = ""] = pattern.replace(/"[^"]*"|\\.|_.|\*./g, "").split(";");
  // "[h]:mm" counts hours, so its m are minutes.
  const symbols = first.replace(/\[[^\]]*\]/g, "").toLowerCase();
  if (/general/.test(symbols)) return false;
  if (/[dy]/.test(symbols)) return true;
  return /m/.test(symbols) && !/[hs]/.test(symbols) && !/\[[hms]+\]/i.test(first);
}
