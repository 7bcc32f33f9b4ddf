import { merge } from "@univerjs/core";
import english from "@univerjs/preset-sheets-core/locales/en-US";
import englishOfDrawings from "@univerjs/preset-sheets-drawing/locales/en-US";
import englishOfFilters from "@univerjs/preset-sheets-filter/locales/en-US";
import englishOfFinding from "@univerjs/preset-sheets-find-replace/locales/en-US";
import englishOfSorting from "@univerjs/preset-sheets-sort/locales/en-US";

/** The spreadsheet's words, with those that it forgot and those that say more in plain English. */
export const words = merge(
  {},
  english,
  englishOfDrawings,
  englishOfFilters,
  englishOfFinding,
  englishOfSorting,
  {
    "sheets-formula": {
      progress: {
        analyzing: "Reading the formulas",
        calculating: "Computing",
        "array-analysis": "Reading what spills",
        "array-calculation": "Computing what spills",
        done: "Computed",
      },
    },
    "sheets-drawing-ui": { upload: { float: "Picture from this computer" } },
  },
);
