/** The text of the script for Google Sheets, written from the catalogue around the bundled functions. */
import { MENU_TITLE, type Examples } from "../hosts/sheets/menu";
import { formulaForSheets, textForSheets } from "../hosts/sheets/wording";
import { spell } from "../formula/spelling";
import type { Catalogue, CatalogueFunction, CustomEnum, Parameter } from "../functions/catalogue";
import { familyTitle } from "../functions/familyTitle";

export interface ScriptParts {
  readonly catalogue: Catalogue;
  readonly cautions: readonly string[];
  /** The bundled functions: JavaScript that leaves them in a variable of the name `BUNDLE`. */
  readonly bundle: string;
  /** The licence notices of everything in the bundle that is not ours. */
  readonly notices: readonly string[];
  readonly version: string;
}

/** The variable in which the bundle leaves what it exports. */
export const BUNDLE = "bundle";

/** The only name of ours that is no function of a cell or of the menu. Apps Script hides one that ends in "_". */
const PRIVATE = "repsToSpare_";

/** The whole script, ready to be pasted. */
export function scriptText({ catalogue, cautions, bundle, notices, version }: ScriptParts): string {
  return `${comment([
    `Reps to Spare ${version}: functions for programming and testing strength training, for Google Sheets.`,
    "",
    "Type =SPARE_E1RM(100, 5, 2) in a cell. Made by a build: replace the whole file rather than edit it.",
    "",
    ...cautions,
    "",
    "MIT licence. The notices of what comes from others stand at the end of this file.",
    "",
    "The functions need no permission. The menu works on the spreadsheet it is opened in, and on no other:",
    "@OnlyCurrentDoc",
  ])}

${catalogue.functions.map((entry) => cellFunction(entry, catalogue.enums)).join("\n\n")}

${menu(catalogue, cautions)}

${comment([
  "The functions themselves, loaded by the first call. What computes is here to be read: our own code, src/ in the",
  "project, with its comments and without its types, a heading a file; before it the special functions of others.",
])}
function ${PRIVATE}() {
  if (!${PRIVATE}.loaded) {
${bundle.trim()}
    ${PRIVATE}.loaded = ${BUNDLE};
  }
  return ${PRIVATE}.loaded;
}

${comment(["Notices", "", ...notices])}
`;
}

/** A custom function with the comment that Sheets shows while it is typed. */
function cellFunction(entry: CatalogueFunction, enums: readonly CustomEnum[]): string {
  const { id, parameters } = entry;
  const names = parameters.map(({ name }) => name).join(", ");
  return `${comment([
    textForSheets(entry.description),
    "",
    `Example: ${exampleOf(entry)}`,
    "",
    ...parameters.map((parameter) => parameterTag(parameter, enums)),
    `@return {range} ${textForSheets(entry.returns)}`,
    "@customfunction",
  ])}
function ${spell(id, "sheets")}(${names}) {
  return ${PRIVATE}().call(${JSON.stringify(id)}, [${names}]);
}`;
}

function parameterTag(
  { name, optional, description, customEnumId }: Parameter,
  enums: readonly CustomEnum[],
): string {
  const words = enums.find(({ id }) => id === customEnumId)?.values ?? [];
  return [
    `@param {range} ${optional ? `[${name}] Optional.` : name}`,
    textForSheets(description),
    ...(words.length > 0
      ? [`One of: ${words.map(({ stringValue }) => `"${stringValue}"`).join(", ")}.`]
      : []),
  ].join(" ");
}

/**
 * The example that does most without help: one that needs no cells of a sheet, and that leaves nothing out between
 * two commas, if there is one.
 */
function exampleOf({ examples }: CatalogueFunction): string {
  const inAnySheet = examples.filter((example) => !CELL.test(example));
  const whole = inAnySheet.filter((example) => !GAP.test(example));
  const [formula = ""] = [...whole, ...inAnySheet, ...examples];
  return formulaForSheets(formula);
}

const CELL = /(?<![A-Z\d"])[A-Z]{1,3}\d+(?![A-Z\d(])/;
const GAP = /,\s*,/;

function menu({ functions }: Catalogue, cautions: readonly string[]): string {
  const json = (value: unknown) => JSON.stringify(value, null, 2).replaceAll("\n", "\n  ");
  return `${comment(["Adds the menu when the spreadsheet is opened."])}
function onOpen() {
  SpreadsheetApp.getUi()
    .createMenu(${JSON.stringify(MENU_TITLE)})
    .addItem("Insert an example…", "spareInsertExample")
    .addItem("Before anybody lifts", "spareShowCautions")
    .addToUi();
}

function spareInsertExample() {
  ${PRIVATE}().insertExample(${json(examplesByFamily(functions))});
}

function spareShowCautions() {
  ${PRIVATE}().showCautions(${json(cautions)});
}`;
}

function examplesByFamily(functions: readonly CatalogueFunction[]): Examples {
  const families = [...new Set(functions.map(({ family }) => family))];
  return Object.fromEntries(
    families.map((family) => [
      familyTitle(family),
      Object.fromEntries(
        functions
          .filter((entry) => entry.family === family)
          .map((entry) => [entry.id, exampleOf(entry)]),
      ),
    ]),
  );
}

/** A block comment; nothing in its lines can end it early. */
const comment = (lines: readonly string[]) =>
  [
    "/**",
    ...lines
      .flatMap((line) => line.split("\n"))
      .map((line) => ` * ${line.replaceAll("*/", "*\u200b/")}`.trimEnd()),
    " */",
  ].join("\n");
