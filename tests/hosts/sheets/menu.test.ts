import { beforeEach, describe, expect, test } from "vitest";
import { cautions } from "../../../src/tools/help";
import { catalogue } from "../../functions/catalogue";
import { load } from "./load";

/** A spreadsheet with one selected cell, and somebody who answers the question. */
function spreadsheet() {
  const state = {
    menu: [] as string[],
    handlers: [] as string[],
    asked: "",
    answer: "",
    cancels: false,
    alerts: [] as string[],
    formula: "",
    hasCell: true,
  };
  const cell = {
    isBlank: () => state.formula === "",
    getA1Notation: () => "B2",
    setFormula: (formula: string) => (state.formula = formula),
  };
  const menu = {
    addItem(label: string, handler: string) {
      state.menu.push(label);
      state.handlers.push(handler);
      return menu;
    },
    addToUi: () => state.menu.push("shown"),
  };
  const ui = {
    Button: { OK: {}, CANCEL: {} },
    ButtonSet: { OK: {}, OK_CANCEL: {} },
    createMenu(title: string) {
      state.menu.push(title);
      return menu;
    },
    alert: (title: string, text: string) => state.alerts.push(`${title}\n${text}`),
    prompt(_title: string, text: string) {
      state.asked = text;
      return {
        getSelectedButton: () => (state.cancels ? ui.Button.CANCEL : ui.Button.OK),
        getResponseText: () => state.answer,
      };
    },
  };
  // As in Apps Script: with a permission for this spreadsheet alone, the service itself knows no cell.
  const SpreadsheetApp = {
    getUi: () => ui,
    getActiveSpreadsheet: () => ({ getCurrentCell: () => (state.hasCell ? cell : null) }),
  };
  return { state, ...load({ SpreadsheetApp }) };
}

let sheet: ReturnType<typeof spreadsheet>;
beforeEach(() => {
  sheet = spreadsheet();
});

function insert(answer: string) {
  sheet.state.answer = answer;
  sheet.evaluate("spareInsertExample()");
}

test("opening the spreadsheet adds a menu whose entries name functions that are there", () => {
  sheet.evaluate("onOpen()");
  expect(sheet.state.menu[0]).toBe("Reps to Spare");
  expect(sheet.state.menu.at(-1)).toBe("shown");
  expect(sheet.state.handlers.length).toBeGreaterThan(1);
  for (const handler of sheet.state.handlers) {
    expect(sheet.evaluate(`typeof ${handler}`)).toBe("function");
  }
});

describe("inserting an example", () => {
  test.each(catalogue.functions.map(({ id }) => id))(
    "offers %s, with a formula that calls it",
    (id) => {
      insert(id);
      expect(sheet.state.asked).toContain(id);
      expect(sheet.state.formula).toMatch(new RegExp(`^=.*\\bSPARE_${id}\\(`));
      expect(sheet.state.formula).not.toContain("SPARE.");
      expect(sheet.state.formula).not.toContain('&""');
      expect(sheet.state.alerts).toEqual([]);
    },
  );

  test.each([" e1rm ", "SPARE_E1RM", "=SPARE.E1RM(", "=spare_e1rm(100, 5)"])(
    "knows the name that is typed as %s",
    (typed) => {
      insert(typed);
      expect(sheet.state.formula).toBe("=SPARE_E1RM(100, 5, 2)");
    },
  );

  test("puts formulas in that compute", () => {
    insert("PERCENT1RM");
    expect(sheet.evaluate(sheet.state.formula.slice(1))).toBeCloseTo(1 / (1 + 7 / 30), 12);
  });

  test("never writes over a cell that is in use", () => {
    sheet.state.formula = "=A1";
    insert("E1RM");
    expect(sheet.state.formula).toBe("=A1");
    expect(sheet.state.alerts).toEqual([expect.stringContaining("B2 is in use")]);
  });

  test("lists what there is for a name it does not know", () => {
    insert("SQUATMAX");
    expect(sheet.state.formula).toBe("");
    expect(sheet.state.alerts[0]).toContain('"SQUATMAX"');
    expect(sheet.state.alerts[0]).toContain("E1RMBAND");
  });

  test("does nothing when it is cancelled, and says so where no cell is selected", () => {
    sheet.state.cancels = true;
    insert("E1RM");
    expect([sheet.state.formula, sheet.state.alerts]).toEqual(["", []]);
    sheet.state.cancels = false;
    sheet.state.hasCell = false;
    insert("E1RM");
    expect(sheet.state.alerts).toEqual([expect.stringContaining("Select a cell first")]);
  });
});

test("shows every caution", () => {
  sheet.evaluate("spareShowCautions()");
  expect(sheet.state.alerts).toHaveLength(1);
  for (const caution of cautions) expect(sheet.state.alerts[0]).toContain(caution);
});
