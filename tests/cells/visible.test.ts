import { expect, it } from "vitest";
import { quoted, visible } from "../../src/cells";

it("leaves what people write as it is", () => {
  const text = "Rücken–Knie 80 kg, “squat” 💪 日本";
  expect(visible(text)).toBe(text);
});

it("shows what would drive a terminal, break a line or turn the direction of text", () => {
  expect(visible("\u001b[2J\u0007\u009b1m\u007f")).toBe("\\u001b[2J\\u0007\\u009b1m\\u007f");
  expect(visible("a\nb\tc\r")).toBe("a\\nb\\tc\\r");
  expect(visible("\u202egnp.exe\u2028\u2066")).toBe("\\u202egnp.exe\\u2028\\u2066");
  expect(visible("half \ud83d")).toBe("half \\ud83d");
  expect(quoted("80\u001bkg")).toBe('"80\\u001bkg"');
});
