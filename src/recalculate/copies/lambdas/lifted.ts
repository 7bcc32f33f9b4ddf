import {
  choose,
  lambda,
  letting,
  missing,
  texts,
  unless,
  type Lambda,
  type Names,
  type Parameter,
} from "./lambda";

/*
 * The functions that answer for each cell of a range by itself. By the rules of spreadsheets for
 * arithmetic on ranges a formula for single cells is one for ranges too, as long as its conditions are
 * sums and products (AND and OR would make one answer of a whole range).
 */

/** Parameters that hold words and not data: a heading above them is none. */
const WORDS = new Set(["equation", "direction", "part", "week"]);

/** A function with one result: how its cells are read, and what comes of them where none is missing. */
export function lifted(name: string, parameters: string, reads: Names, answer: string): Lambda {
  const whole = lambda(name, parameters, "");
  const inputs = whole.parameters.map((parameter) => parameter.name);
  const result = unless(Object.keys(reads), answer);
  return { ...whole, body: letting({ ...reads, answer: result }, inShapeOf(inputs, "answer")) };
}

/** What a function with several results is made of. */
export interface Parted {
  readonly parameters: string;
  /** How its cells are read. */
  readonly reads: Names;
  /** Those of the names read that may be missing. */
  readonly optional?: readonly string[];
  /** What is worked out from them. */
  readonly working: Names;
  /** 0, or the error of the whole where cells that are fine one by one do not go together. */
  readonly refusal?: string;
  /** The results by their labels; one that does not exist is #N/A. */
  readonly parts: Names;
  /** Whether the results stand in a row, one for each row of cells, or as a report with labels. */
  readonly layout: "row" | "report";
}

/** A function with several results, of which the last argument names some. */
export function parted(name: string, made: Parted): Lambda {
  const { parameters, reads, optional = [], working, refusal, parts, layout } = made;
  const whole = lambda(name, `${parameters} part=""`, "");
  const inputs = namesOf(whole.parameters).filter((input) => input !== "part");
  const checked = refusal === undefined ? "0" : refusal;
  const names = {
    label: LABEL_IN,
    named: oneLabel(Object.keys(parts)),
    ...reads,
    ...working,
    waits: `IF(${missing(Object.keys(reads), optional)}>0,1,${checked})`,
    // In the labels' shape also where there is nothing but one error or one blank.
    chosen: `IF(waits+0*ISERROR(label)>0,"",${chosenOf(parts)})`,
    ...(layout === "row" && { row: `HSTACK(${Object.values(parts).map(inRow).join(",")})` }),
  };
  const picked = `IF(${clashOf(inputs)}>0,#VALUE!,${inShapeOf(inputs, "chosen")})`;
  const all =
    layout === "row"
      ? `IF(${widest(inputs)}>1,#VALUE!,${inShapeOf(inputs, "row")})`
      : `IF(${largest(inputs)}>1,#VALUE!,IF(waits>0,"",${reportOf(parts)}))`;
  return { ...whole, body: letting(names, `IF(named,${picked},${all})`) };
}

/** A report in two columns; a value that does not exist is an empty cell. */
export const reportOf = (parts: Names) =>
  `HSTACK(${texts(Object.keys(parts))},VSTACK(${Object.values(parts)
    .map((value) => `IFNA(${value},"")`)
    .join(",")}))`;

/** The labels that `part` names, and what `oneLabel` makes of a single one. */
export const LABEL_IN = `IF(LEN(TRIM(part))=0,"",IF(part=0,"",LOWER(TRIM(part))))`;

/** 1 where `part` names anything, 0 where it is a blank; a single label that is none is an error. */
export const oneLabel = (labels: readonly string[]) =>
  `IF({TALL}(part)*{WIDE}(part)>1,1,IF(label="",0,` +
  `IF(ISERROR(FIND("|",label))*ISNUMBER(FIND("|"&label&"|","|${labels.join("|").toLowerCase()}|"))>0,1,#VALUE!)))`;

/** The values that the labels name, in the labels' shape. */
export const chosenOf = (parts: Names) =>
  choose(
    [
      [`label=""`, `""`],
      ...Object.entries(parts).map(([label, value]) => [`label="${label}"`, value] as const),
    ],
    "#VALUE!",
  );

/** Above 0 where labels run along the same direction as the cells. */
export const clashOf = (inputs: readonly string[]) =>
  `(${tallest(inputs)}>1)*({TALL}(part)>1)+(${widest(inputs)}>1)*({WIDE}(part)>1)`;

const inRow = (value: string) => `IF(waits>0,"",IFNA(${value},""))`;

const namesOf = (parameters: readonly Parameter[]) => parameters.map(({ name }) => name);
const tallest = (inputs: readonly string[]) =>
  `MAX(${inputs.map((input) => `{TALL}(${input})`).join(",")})`;
const widest = (inputs: readonly string[]) =>
  `MAX(${inputs.map((input) => `{WIDE}(${input})`).join(",")})`;
/** How many cells the largest of these has. */
const largest = (inputs: readonly string[]) => `${tallest(inputs)}*${widest(inputs)}`;

/**
 * The answer to cells of these shapes: an error where they do not go together, and nothing in a row
 * of headings.
 */
export function inShapeOf(inputs: readonly string[], answer: string): string {
  const data = inputs.filter((input) => !WORDS.has(input));
  const grids = inputs.map((input) => `({TALL}(${input})>1)*({WIDE}(${input})>1)`).join("+");
  const misfits = inputs.map((input) => `{MISFIT}(${input},tall,wide,grids)`).join("+");
  const untitled = data.map((input) => `{UNTITLED}(${input})`).join("+");
  const many = letting(
    { tall: tallest(inputs), wide: widest(inputs), grids },
    `IF(${misfits}>0,#VALUE!,IF(${tallest(data)}=1,${answer},` +
      `IF(${untitled}>0,${answer},IF(SEQUENCE(tall)=1,"",${answer}))))`,
  );
  return `IF(${largest(inputs)}=1,${answer},${many})`;
}

/** What the shapes of ranges are judged by. */
export const shapes: readonly Lambda[] = [
  lambda("TALL", "range", `IFERROR(ROWS(range),1)`),
  lambda("WIDE", "range", `IFERROR(COLUMNS(range),1)`),
  // A single cell stretches, a column goes with a row; beside a grid only another grid will do.
  lambda(
    "MISFIT",
    "range tall wide grids",
    `LET(down,{TALL}(range),across,{WIDE}(range),IF(down*across=1,0,` +
      `IF(grids>0,(down<>tall)+(across<>wide),(down>1)*(down<>tall)+(across>1)*(across<>wide))))`,
  ),
  // How many cells of a first row are no heading; a single row has none that would have to be.
  lambda("UNTITLED", "range", `IF({TALL}(range)=1,0,SUM(1-{HEADING}(INDEX(range,1,0))))`),
  // A list from elsewhere has a heading of its own.
  lambda(
    "BELOWHEADING",
    "range",
    `IF({TALL}(range)=1,range,IF({UNTITLED}(range)>0,range,IF(SEQUENCE(ROWS(range))=1,"",range)))`,
  ),
];
