/** A formula put beside a log of three sets, with its heading, its digits and a width. */
export const insertion = {
  sheet: "Log",
  address: "C2",
  formula: "=SPARE.E1RM(A2:A4, B2:B4)",
  headings: [{ address: "C1", text: "e1RM, kg" }],
  formats: [{ address: "C2:C4", format: "0.0" }],
  widths: { 2: 20 },
};
