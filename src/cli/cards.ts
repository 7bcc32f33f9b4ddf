import { readFile, realpath } from "node:fs/promises";
import { basename, dirname, extname, join } from "node:path";
import { visible } from "../cells/visible";
import type { Card } from "../cards/card";
import {
  cardFiles,
  checkAddress,
  linksFile,
  printedFile,
  PRIVACY,
  type CardFile,
} from "../cards/handOut";
import { readCards } from "../cards/readCards";
import type { Book } from "../recalculate/book";
import type { Outcome } from "../recalculate/calculate";
import type { CellValue } from "../xlsx/model";
import type { CardsArguments } from "./arguments";
import { eachBook, workOut, type ExitStatus } from "./eachBook";
import { openBook } from "./openBook";
import { writeOutput } from "./output";
import { Refused } from "./problem";
import { putInto } from "./putInto";
import { DRY_RUN } from "./report";
import { makeFolder } from "./targets";
import type { Said, Terminal } from "./terminal";

/** Makes cards from workbooks; of several, each in a folder of its own name. */
export async function cards(args: CardsArguments, terminal: Terminal): Promise<ExitStatus> {
  const several = args.inputs.length > 1;
  const folderOf = (input: string) =>
    several ? join(args.output, basename(input, extname(input))) : args.output;
  refuseSharedFolder(args.inputs, folderOf);
  return eachBook(args, terminal, async (input) => {
    const { book } = await openBook(input, terminal.in);
    const outcomes = await workOut(book, args.timeout, terminal);
    const made = await makeCards(args, book, outcomes);
    if (!args.dryRun) await writeFiles(folderOf(input), made.files);
    return { status: 0, ...reportOn(input, folderOf(input), made, args.dryRun) };
  });
}

/** Two workbooks of one name would write over each other's cards. */
function refuseSharedFolder(inputs: readonly string[], folderOf: (input: string) => string): void {
  const taken = new Map<string, string>();
  for (const input of inputs) {
    const folder = folderOf(input);
    const other = taken.get(folder);
    if (other !== undefined) throw new Refused(`${other} and ${input} would both go to ${folder}`);
    taken.set(folder, input);
  }
}

interface MadeCards {
  readonly cards: readonly Card[];
  readonly files: readonly CardFile[];
  readonly notes: readonly string[];
  /** Where the card page is hosted, if that is known. */
  readonly address: string | undefined;
}

async function makeCards(
  { sheet, page }: CardsArguments,
  book: Book,
  outcomes: readonly Outcome[],
): Promise<MadeCards> {
  const made = new Date().toISOString().slice(0, 10);
  const { cards, notes, page: named } = readCards(cellsOf(sheet, book, outcomes), made);
  const said = page ?? named;
  const address = said === undefined ? undefined : checkAddress(said);
  const files = [
    ...cardFiles(await builtPage(), cards),
    printedFile(cards, address),
    ...(address === undefined ? [] : [linksFile(cards, address)]),
  ];
  return { cards, files, notes, address };
}

async function writeFiles(folder: string, files: readonly CardFile[]): Promise<void> {
  await makeFolder(folder);
  for (const { name, text } of files) {
    await writeOutput(join(folder, name), new TextEncoder().encode(text));
  }
}

/** What was made, for a person and for programs. */
function reportOn(file: string, folder: string, made: MadeCards, dryRun: boolean): Said {
  const { cards, files, notes, address } = made;
  const names = files.map(({ name }) => name);
  const text = [
    `${cards.length} ${cards.length === 1 ? "card" : "cards"} in ${visible(folder)}:`,
    ...names.map((name) => `  ${name}`),
    ...(address === undefined
      ? ["No links and no codes: name the hosted card page with --page or beside “card page”."]
      : []),
    ...notes,
    dryRun ? DRY_RUN : PRIVACY,
  ].join("\n");
  const lifters = cards.map(({ name }) => name);
  return {
    text,
    json: () => ({
      file,
      output: dryRun ? null : folder,
      lifters,
      files: names,
      page: address ?? null,
      notes,
    }),
  };
}

/** A sheet's values as they were saved, with what was worked out now over them. */
function cellsOf(name: string, book: Book, outcomes: readonly Outcome[]): CellValue[][] {
  const sheet = book.sheets.find((one) => one.name.toLowerCase() === name.toLowerCase());
  if (!sheet)
    throw new Refused(`there is no sheet "${name}"; --sheet names the one with the cards`);
  const cells: CellValue[][] = [];
  for (const { row, column, value } of sheet.rows.flatMap((each) => each.cells)) {
    putInto(cells, row, column, value);
  }
  for (const { cell, area, values } of outcomes) {
    if (cell.sheet !== sheet) continue;
    values.forEach((line, row) =>
      line.forEach((value, column) =>
        putInto(cells, area.startRow + row, area.startColumn + column, value),
      ),
    );
  }
  return cells;
}

/** The built page of cards, beside the built command line or in the build of this copy of the project. */
async function builtPage(): Promise<string> {
  const program = await realpath(process.argv[1] ?? ".").catch(() => ".");
  const places = [join(dirname(program), "card"), join(process.cwd(), "dist", "card")];
  for (const place of places) {
    try {
      return await readFile(join(place, "index.html"), "utf8");
    } catch {
      // The next place may have it.
    }
  }
  throw new Refused("the page of cards is not built; npm run build makes it");
}
