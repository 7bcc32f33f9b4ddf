import { mkdtemp, readFile, rm } from "node:fs/promises";
import { rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { DuckDBConnection } from "@duckdb/node-api";
import { DAY_ZERO, serialOfTime } from "../../cells";
import type { CellValue } from "../../xlsx/model";
import { UnreadableFile } from "../../xlsx/package";
import { onEnd } from "../output";
import { Refused } from "../problem";

/** A table in a file that is too large for a sheet, read piece by piece. */
export interface Database {
  /** The columns' names, in their order. */
  readonly columns: readonly string[];
  /**
   * Some columns in pieces, a list a column: first the number of each row, from 1 on in the file's order, then the
   * columns asked for. Rows of one key come together, as spreadsheets compare keys, and in the file's order.
   */
  pieces(columns: readonly string[], keys: readonly string[]): AsyncIterable<CellValue[][]>;
  /** Rows under their headings as the bytes of a Parquet file. */
  parquet(
    headings: readonly string[],
    rows: readonly (readonly CellValue[])[],
  ): Promise<Uint8Array>;
}

/** How much memory the database may take; what does not fit goes into a folder that is taken away again. */
const MEMORY = "1GB";

/** Opens a table for as long as some work takes. */
export async function withTable<T>(
  path: string,
  kind: "csv" | "tsv" | "parquet",
  work: (database: Database) => Promise<T>,
): Promise<T> {
  const { DuckDBInstance } = await duckdb();
  const folder = await mkdtemp(join(tmpdir(), "spare-"));
  const stopListening = onEnd(() => rmSync(folder, { recursive: true, force: true }));
  const instance = await DuckDBInstance.create(":memory:", {
    memory_limit: MEMORY,
    temp_directory: join(folder, "spilled"),
    autoinstall_known_extensions: "false",
    autoload_known_extensions: "false",
  });
  const connection = await instance.connect();
  try {
    return await work(await open(connection, sourceOf(path, kind), folder));
  } finally {
    connection.closeSync();
    instance.closeSync();
    stopListening();
    await rm(folder, { recursive: true, force: true });
  }
}

/** DuckDB's package, which is not brought along: it is larger than all of ours. */
async function duckdb() {
  try {
    return await import("@duckdb/node-api");
  } catch (error) {
    const code = error instanceof Error && "code" in error ? error.code : undefined;
    if (code !== "ERR_MODULE_NOT_FOUND" && code !== "MODULE_NOT_FOUND") throw error;
    throw new Refused(
      "large tables are read by DuckDB, which is not installed: npm install @duckdb/node-api",
    );
  }
}

/** What a file is to the database. All of a text is looked at before its columns are said to be numbers. */
function sourceOf(path: string, kind: "csv" | "tsv" | "parquet"): string {
  if (/[*?[\]{}]/.test(path)) {
    throw new Refused(`${path} has a sign in its name that stands for several files; rename it`);
  }
  const file = text(path);
  return kind === "parquet"
    ? `read_parquet(${file})`
    : `read_csv(${file}, header = true, sample_size = -1${kind === "tsv" ? ", delim = '\t'" : ""})`;
}

async function open(
  connection: DuckDBConnection,
  source: string,
  folder: string,
): Promise<Database> {
  const types = await typesIn(connection, source);
  return {
    columns: [...types.keys()],
    async *pieces(columns, keys) {
      const read = columns.map((column) => asCell(column, types.get(column)!));
      const order = keys.map((key) => asKey(key, types.get(key)!));
      const sql =
        `SELECT "row number", ${read.join(", ")} ` +
        `FROM (SELECT (row_number() OVER ())::DOUBLE AS "row number", * FROM ${source}) ` +
        (order.length === 0 ? "" : `ORDER BY ${[...order, '"row number"'].join(", ")}`);
      const result = await connection.stream(sql).catch(unreadable);
      for (;;) {
        const chunk = await result.fetchChunk().catch(unreadable);
        if (chunk === null || chunk.rowCount === 0) return;
        yield chunk.getColumns() as CellValue[][];
      }
    },
    parquet: (headings, rows) =>
      writeParquet(connection, join(folder, "out.parquet"), headings, rows),
  };
}

async function typesIn(connection: DuckDBConnection, source: string) {
  const described = await connection.run(`DESCRIBE SELECT * FROM ${source}`).catch(unreadable);
  const rows = (await described.getRowsJS()) as [name: string, type: string][];
  return new Map(rows.map(([name, type]) => [name, type]));
}

const NUMERIC = /^(?:U?(?:TINY|SMALL|BIG|HUGE)?INT(?:EGER)?|DECIMAL|FLOAT|DOUBLE|REAL)\b/;

/** A column as cells hold it: numbers, truth values, days as a sheet counts them, and text. */
function asCell(column: string, type: string): string {
  const name = identifier(column);
  if (NUMERIC.test(type)) return `${name}::DOUBLE`;
  if (type === "BOOLEAN") return name;
  if (type === "DATE") return `date_diff('day', DATE '${DAY_ZERO}', ${name})::DOUBLE`;
  if (type.startsWith("TIMESTAMP")) return `epoch(${name}) / 86400.0 + ${serialOfTime(0)}.0`;
  return `${name}::VARCHAR`;
}

/** What a spreadsheet compares of a key: case and outer blanks aside. */
function asKey(column: string, type: string): string {
  const cell = asCell(column, type);
  return cell.endsWith("::VARCHAR") ? `coalesce(lower(trim(${cell})), '')` : cell;
}

async function writeParquet(
  connection: DuckDBConnection,
  path: string,
  headings: readonly string[],
  rows: readonly (readonly CellValue[])[],
): Promise<Uint8Array> {
  const isNumeric = headings.map((_heading, column) =>
    rows.every((row) => typeof row[column] === "number" || isNothing(row[column])),
  );
  const columns = headings.map(
    (heading, column) => `${identifier(heading)} ${isNumeric[column] ? "DOUBLE" : "VARCHAR"}`,
  );
  await connection.run(`CREATE TABLE result (${columns.join(", ")})`);
  const appender = await connection.createAppender("result");
  for (const row of rows) {
    headings.forEach((_heading, column) => {
      const value = row[column] ?? null;
      if (typeof value === "number" && isNumeric[column]) appender.appendDouble(value);
      else if (isNothing(value)) appender.appendNull();
      else appender.appendVarchar(String(value));
    });
    appender.endRow();
  }
  appender.closeSync();
  await connection.run(`COPY result TO ${text(path)} (FORMAT parquet)`);
  return new Uint8Array(await readFile(path));
}

/** A blank, or an error, which a table of data has no place for. */
const isNothing = (value: CellValue | undefined) =>
  value === null || value === undefined || value === "" || /^#/.test(String(value));

/** The first line of what the database says is what a person needs of it. */
function unreadable(error: unknown): never {
  const [line = ""] = (error instanceof Error ? error.message : String(error)).split("\n");
  throw new UnreadableFile(line);
}

const text = (value: string) => `'${value.replaceAll("'", "''")}'`;
const identifier = (name: string) => `"${name.replaceAll('"', '""')}"`;
