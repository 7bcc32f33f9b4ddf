import type { SpreadsheetService, Ui } from "./appsScript";

/** A ready formula for each function, by family: `{ Strength: { E1RM: "=SPARE_E1RM(100, 5, 2)" } }`. */
export type Examples = Readonly<Record<string, Readonly<Record<string, string>>>>;

export const MENU_TITLE = "Reps to Spare";

/** Asks for a function and puts an example of it into the cell that is selected, unless that is in use. */
export function insertExample(service: SpreadsheetService, examples: Examples): void {
  const ui = service.getUi();
  const asked = ui.prompt(
    `${MENU_TITLE}: insert an example`,
    question(examples),
    ui.ButtonSet.OK_CANCEL,
  );
  if (asked.getSelectedButton() !== ui.Button.OK) return;
  const formula = find(asked.getResponseText(), examples);
  if (formula === undefined) {
    tell(ui, `There is no function "${asked.getResponseText().trim()}".\n\n${list(examples)}`);
    return;
  }
  // Asked of the spreadsheet, not of the service: that alone goes with a permission for this spreadsheet only.
  const cell = service.getActiveSpreadsheet().getCurrentCell();
  if (cell === null) tell(ui, "Select a cell first.");
  else if (cell.isBlank()) cell.setFormula(formula);
  else tell(ui, `${cell.getA1Notation()} is in use. Select an empty cell first.`);
}

/** Shows what must be read before anybody lifts. */
export function showCautions(service: SpreadsheetService, cautions: readonly string[]): void {
  tell(service.getUi(), cautions.join("\n\n"), "Before anybody lifts");
}

const tell = (ui: Ui, text: string, title = MENU_TITLE) => ui.alert(title, text, ui.ButtonSet.OK);

function question(examples: Examples): string {
  const [name = ""] = Object.values(examples).flatMap((formulas) => Object.keys(formulas));
  return `Type the name of a function, such as ${name}.\n\n${list(examples)}`;
}

const list = (examples: Examples) =>
  Object.entries(examples)
    .map(([family, formulas]) => `${family}: ${Object.keys(formulas).join(", ")}`)
    .join("\n\n");

/** The example for a name as a coach may type it: `e1rm`, `SPARE_E1RM`, `=SPARE.E1RM(`. */
function find(typed: string, examples: Examples): string | undefined {
  const id = typed
    .trim()
    .toUpperCase()
    .replace(/^=?\s*(SPARE[._])?/, "")
    .replace(/\(.*$/, "");
  return Object.values(examples)
    .flatMap((formulas) => Object.entries(formulas))
    .find(([name]) => name === id)?.[1];
}
