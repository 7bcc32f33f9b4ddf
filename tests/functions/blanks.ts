/** How each host hands over a blank cell, and what a blank reserve is once the formula says `&""`. */
export const BLANKS = [
  { host: "Excel on the desktop", blank: 0, textBlank: "" },
  { host: "Excel on the web", blank: null, textBlank: "" },
  { host: "Google Sheets", blank: "", textBlank: "" },
  { host: "a data type", blank: { type: "Empty" }, textBlank: { type: "Empty" } },
] as const;
