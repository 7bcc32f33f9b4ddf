import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { buildBook, worksheet } from "../cli/support";
import { hasLibreOffice } from "../libreOffice";
import { runSpare } from "./runSpare";

const rows = 50_000;

/**
 * A season's log on the command line, beside LibreOffice on the same arithmetic in its own formulas: user
 * seconds, which other programs on the machine change little, and the most memory. Needs `dist/cli.js`.
 */
export function benchCommandLine(): void {
  const folder = mkdtempSync(join(tmpdir(), "spare-bench-"));
  try {
    const put = (name: string, bytes: Uint8Array) => {
      writeFileSync(join(folder, name), bytes);
      return join(folder, name);
    };
    const cells = put("cells.xlsx", filledDown(rows));
    const table = put("table.xlsx", tableOf(rows));
    const native = put(
      "native.xlsx",
      logOf((row) => `A${row}*(1+(B${row}+C${row})/30)`),
    );
    const results = {
      [`${rows} filled-down E1RM cells`]: calc(cells, folder),
      "the same in a Table": calc(table, folder),
      ...(hasLibreOffice && { "native formulas, LibreOffice": runLibreOffice(native, folder) }),
    };
    console.log("\nA season's log on the command line");
    console.table(results);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/**
 * A log of so many sets, from row 2 on, with E1RM filled down beside them, and whatever else stands in a row from column
 * E on.
 */
export function filledDown(length: number, beside = nothing): Uint8Array {
  const call = (row: number) => `_xldudf_SPARE_E1RM(A${row},B${row},C${row})`;
  return buildBook({ sheets: { Log: dataOf(call, length, beside) } });
}

interface Cost {
  readonly "user s": number;
  readonly MB?: number;
}

const heading = `<row r="1">${["load", "reps", "reserve", "e1RM"]
  .map((name, column) => {
    return `<c r="${"ABCD"[column]}1" t="inlineStr"><is><t>${name}</t></is></c>`;
  })
  .join("")}</row>`;

function dataOf(formula: (row: number) => string, length = rows, beside = nothing): string {
  const data = Array.from({ length }, (_, index) => {
    const row = index + 2;
    const numbers = [80 + (row % 60) * 2.5, 1 + (row % 8), row % 5];
    const cells = numbers.map((value, at) => `<c r="${"ABC"[at]}${row}"><v>${value}</v></c>`);
    return `<row r="${row}">${cells.join("")}<c r="D${row}"><f>${formula(row)}</f></c>${beside(row)}</row>`;
  });
  return heading + data.join("");
}

const nothing: (row: number) => string = () => "";

const logOf = (formula: (row: number) => string) => buildBook({ sheets: { Log: dataOf(formula) } });

/** The same in a Table, whose formulas name its columns. */
export function tableOf(length: number): Uint8Array {
  const ref = `A1:D${length + 1}`;
  const columns = ["load", "reps", "reserve", "e1RM"].map(
    (name, index) => `<tableColumn id="${index + 1}" name="${name}"/>`,
  );
  const table =
    `<table xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" id="1" name="Sets" displayName="Sets" ` +
    `ref="${ref}"><autoFilter ref="${ref}"/><tableColumns count="4">${columns.join("")}</tableColumns></table>`;
  const type = "application/vnd.openxmlformats-officedocument.spreadsheetml.table+xml";
  const thisRow = (column: string) => `Sets[[#This Row],[${column}]]`;
  const formula = `_xldudf_SPARE_E1RM(${["load", "reps", "reserve"].map(thisRow).join(",")})`;
  return buildBook({
    sheets: {
      Log: worksheet(
        dataOf(() => formula, length),
        `<tableParts count="1"><tablePart r:id="rId1"/></tableParts>`,
      ),
    },
    parts: { "xl/tables/table1.xml": [table, type] },
    references: { "xl/worksheets/sheet1.xml": [["table", "../tables/table1.xml"]] },
  });
}

function calc(input: string, folder: string): Cost {
  const { user, megabytes } = runSpare("calc", input, "-o", join(folder, "out.xlsx"));
  return { "user s": user, MB: megabytes };
}

function runLibreOffice(input: string, folder: string): Cost {
  const profile = `-env:UserInstallation=file://${join(folder, "profile")}`;
  const args = [
    profile,
    "--headless",
    "--convert-to",
    "xlsx",
    "--outdir",
    join(folder, "out"),
    input,
  ];
  const run = () =>
    spawnSync("bash", ["-c", 'time -p soffice "$@"', "bench", ...args], { encoding: "utf8" });
  // The first run makes its profile.
  run();
  const [, seconds] = /^user ([\d.]+)$/m.exec(run().stderr) ?? [];
  return { "user s": round(Number(seconds)) };
}

const round = (value: number) => Math.round(value * 100) / 100;
