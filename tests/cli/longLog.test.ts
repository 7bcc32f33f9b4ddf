import { afterAll, expect, it } from "vitest";
import { filledDown } from "../bench/commandLine";
import { lookAt, spare, workFolder } from "./support";

const folder = workFolder();
afterAll(() => folder.remove());

it("goes through with more formulas of ours than an engine takes arguments, ordinary ones and one that reads all", async () => {
  const rows = 130_000;
  expect(() => Math.max(...Array<number>(rows).fill(0))).toThrow(RangeError);
  const input = folder.put(
    "log.xlsx",
    filledDown(rows, (row) =>
      row === 2
        ? `<c r="E2"><f>A2*B2</f><v>1</v></c><c r="F2"><f>_xldudf_SPARE_SWC(D2:D${rows + 1})</f></c>`
        : "",
    ),
  );
  const { err } = await spare("calc", input, "-o", folder.path("out.xlsx"));
  expect(err).toBe("");
  const { value } = lookAt(folder.bytes("out.xlsx"));
  // Row 130,001: 182.5 for 2 with 1 in reserve, by Epley (1985).
  expect(value("Log", `D${rows + 1}`)).toBeCloseTo(182.5 * (1 + 3 / 30), 9);
  expect(value("Log", "E2")).toBe(1);
  expect(value("Log", "F2")).toBeGreaterThan(0);
}, 60_000);
