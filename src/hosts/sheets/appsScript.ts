/** The part of Apps Script's services that we use, as its global names them. */
export interface SpreadsheetService {
  getActiveSpreadsheet(): ActiveSpreadsheet;
  getUi(): Ui;
}

export interface ActiveSpreadsheet {
  getSpreadsheetTimeZone(): string;
  getCurrentCell(): CurrentCell | null;
}

export interface CurrentCell {
  isBlank(): boolean;
  getA1Notation(): string;
  setFormula(formula: string): unknown;
}

export interface Ui {
  readonly Button: { readonly OK: unknown };
  readonly ButtonSet: { readonly OK: unknown; readonly OK_CANCEL: unknown };
  alert(title: string, text: string, buttons: unknown): unknown;
  prompt(
    title: string,
    text: string,
    buttons: unknown,
  ): { getSelectedButton(): unknown; getResponseText(): string };
}
