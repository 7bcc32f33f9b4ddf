import { describe, expect, it } from "vitest";
import {
  CellError,
  HostError,
  passOn,
  readCell,
  readQuantity,
  readSetting,
  shortNumber,
  type Quantity,
} from "../../src/cells";
import { blanks, blanksButZero, change, errorText, load, reps, reserve } from "./fixtures";

const read = (raw: unknown, quantity: Quantity) => readQuantity(readCell(raw), quantity);
const readAsSetting = (raw: unknown, quantity: Quantity) => readSetting(readCell(raw), quantity);

describe("a quantity that cannot be zero", () => {
  it.each(blanks)("is not there in a blank cell of %s", (_host, blank) => {
    expect(read(blank, load)).toBeNull();
    expect(readAsSetting(blank, load)).toBeNull();
  });

  it("takes a zero for a blank in any spelling", () => {
    for (const zero of [-0, "0", "0.0", "0,0", { type: "FormattedNumber", basicValue: 0 }]) {
      expect(read(zero, load)).toBeNull();
    }
  });
});

describe("a quantity that can be zero", () => {
  it.each(blanksButZero)("is not there in a blank cell of %s", (_host, blank) => {
    expect(read(blank, reserve)).toBeNull();
  });

  it("takes a zero as a value, also as text", () => {
    expect(read(0, reserve)).toBe(0);
    expect(read("0", reserve)).toBe(0);
  });
});

describe("text in a data column", () => {
  it("is its number where it wholly is one", () => {
    expect(read("2,5", reserve)).toBe(2.5);
  });

  it("is a missing value where it has no digits", () => {
    expect(read("DNS", load)).toBeNull();
    expect(read("–", load)).toBeNull();
  });

  it("is an error that shows it where it has digits but is no number", () => {
    expect(errorText(read("80kg", load))).toBe(
      '#VALUE! load is text, "80kg"; expected a load above 0',
    );
  });

  it("is an error that shows both readings where a comma may group thousands", () => {
    expect(errorText(read("1,250", load))).toBe(
      '#VALUE! load is text, "1,250", which can mean 1.250 or 1250; expected a load above 0',
    );
  });

  it("is held to the same bounds as a number", () => {
    expect(errorText(read("-80", load))).toBe("#VALUE! load is -80; expected a load above 0");
  });
});

describe("text in a setting", () => {
  it("is its number where it wholly is one", () => {
    expect(readAsSetting("2,5", load)).toBe(2.5);
  });

  it("is a mistake where it is none, for no setting is missing", () => {
    expect(errorText(readAsSetting("none", load))).toBe(
      '#VALUE! load is text, "none"; expected a load above 0',
    );
  });
});

describe("a number that is not allowed", () => {
  it("is an error that shows it and what was expected", () => {
    expect(errorText(read(-5, load))).toBe("#VALUE! load is -5; expected a load above 0");
  });

  it("is shown without binary dust", () => {
    expect(errorText(read(-0.1 - 0.2, load))).toContain("load is -0.3;");
    expect(shortNumber(0.1 + 0.2)).toBe("0.3");
  });
});

describe("a number out of all proportion", () => {
  it("is refused, past 1e100 and short of 1e-100, whatever the quantity takes", () => {
    for (const size of [1.1e100, -1.1e100, 0.9e-100, -0.9e-100]) {
      expect(errorText(read(size, change))).toBe(
        `#VALUE! change is ${shortNumber(size)}; expected a number`,
      );
    }
  });

  it("is none of those up to there, nor zero", () => {
    for (const size of [1e100, -1e100, 1e-100, -1e-100, 0]) expect(read(size, change)).toBe(size);
  });
});

describe("a date where none can be", () => {
  it("is an error that says so, from 40,000 on", () => {
    expect(read(39_999, reps)).toBe(39_999);
    expect(errorText(read(40_000, reps))).toBe(
      "#VALUE! reps is 40000, which looks like a date; expected a number of reps above 0",
    );
  });

  it("is known as text, as a Date, and with a time of day", () => {
    for (const date of ["45292", new Date(2024, 0, 1), { type: "Double", basicValue: 45292 }]) {
      expect(errorText(read(date, reserve))).toContain("reserve is 45292, which looks like a date");
    }
    expect(errorText(read(45292.7083333333339, reps))).toContain("reps is 45292.7083,");
  });

  it("is a number like any other where so large a number can be", () => {
    expect(read(45_292, load)).toBe(45_292);
    expect(read(new Date(2024, 0, 1), change)).toBe(45_292);
  });
});

describe("what is no number", () => {
  it("is an error where it is TRUE or FALSE", () => {
    expect(errorText(read(true, load))).toBe("#VALUE! load is TRUE; expected a load above 0");
    expect(errorText(readAsSetting(false, load))).toContain("load is FALSE");
  });

  it.each(["#N/A", "#DIV/0!", "#NUM!", "#NULL!"])("passes an error on: %s", (code) => {
    expect(errorText(read(code, load))).toBe(`${code} load holds ${code}`);
  });

  it.each(["#REF!", "#NAME?", "#SPILL!", "#ERROR!"])(
    "names an error that no function may return: %s",
    (code) => {
      const error = passOn(new HostError(code), "load");
      expect(error).toBeInstanceOf(CellError);
      expect(errorText(error)).toBe(`#VALUE! load holds ${code}`);
    },
  );
});
