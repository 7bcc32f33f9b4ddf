import { afterAll, expect, it } from "vitest";
import { runSpare } from "../bench/runSpare";
import { buildBook, lookAt, workFolder } from "./support";

const folder = workFolder();
afterAll(() => folder.remove());

it("has room for one call that fills 250,000 cells", { timeout: 60_000 }, () => {
  const call = `<c r="B1" cm="1"><f t="array" ref="B1">_xldudf_SPARE_E1RM(A1:A250000,5)</f></c>`;
  const loads = `<row r="1"><c r="A1"><v>100</v></c>${call}</row><row r="250000"><c r="A250000"><v>120</v></c></row>`;
  const input = folder.put("book.xlsx", buildBook({ sheets: { Log: loads } }));
  const { status, user, megabytes } = runSpare("calc", input, "-o", folder.path("out.xlsx"));
  expect(status).toBe(0);
  expect(user).toBeLessThan(5);
  expect(megabytes).toBeLessThan(500);
  const { value } = lookAt(folder.bytes("out.xlsx"));
  // Epley (1985): the load times one and a thirtieth for each repetition.
  expect(value("Log", "B1")).toBeCloseTo(100 * (1 + 5 / 30), 9);
  expect(value("Log", "B2")).toBe("");
  expect(value("Log", "B250000")).toBeCloseTo(120 * (1 + 5 / 30), 9);
});
