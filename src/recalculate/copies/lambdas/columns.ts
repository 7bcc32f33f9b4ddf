import { lambda, letting, type Lambda, type Names } from "./lambda";

/*
 * The functions that read columns row by row: a heading is passed over, a single cell stands for every row, and
 * the first bad cell is the error of the whole.
 */

/**
 * How columns are read: each name by the parameter it reads and the formula that reads it, beside labels that are always
 * there and keys that may be.
 */
export function readColumns(
  columns: Readonly<Record<string, readonly [parameter: string, read: string]>>,
  by?: "by",
  labels?: "by" | "exercise" | "group" | "who",
): Names {
  const given = Object.values(columns).map(([parameter]) => parameter);
  const lengths = given.map((parameter) => `{LENGTH}(${parameter})`);
  const heads = [
    ...given.map((parameter) => `{NOHEADING}(${parameter})`),
    ...(labels ? [`{NOLABELS}(${labels},total)`] : []),
    ...(by ? ["IF(keyed>0,{NOLABELS}(by,total),0)"] : []),
  ];
  const heights = [
    ...lengths,
    ...(labels ? [`{TALL}(${labels})`] : []),
    ...(by ? ["IF(keyed>0,{TALL}(by),1)"] : []),
  ];
  return {
    ...(by && { keyed: `{GIVEN}(by)` }),
    total: `MAX(${heights.join(",")})`,
    headed: `IF(MAX(${lengths.join(",")})=1,0,IF(${heads.join("+")}>0,0,1))`,
    ...Object.fromEntries(
      Object.entries(columns).map(([name, [, read]]) => [name, `{DOWN}(${read},total,headed)`]),
    ),
    bad: [
      ...Object.keys(columns).map((name) => `SUM(1*ISERROR(${name}))`),
      ...lengths.map((length) => `(${length}>1)*(${length}<>total)`),
      ...(labels ? [`{MISPLACED}(${labels},total)`] : []),
      ...(by ? [`IF(keyed>0,{MISPLACED}(by,total),0)`] : []),
    ].join("+"),
  };
}

/** What is read of logged sets, by the names that the formulas give it. */
export const LOGGED = {
  weights: ["load", "{POSITIVE}(load)"],
  done: ["reps", "{REPS}(reps)"],
  spare: ["reserve", "{RESERVE}(reserve)"],
  times: ["sets", "{REPS}(sets)"],
} as const;

/** Stands for no key at all: what nobody types. */
export const NONE = "UNICHAR(30)";

/** The formula where all cells of the columns are fine. */
export const whereGood = (formula: string) => `IF(bad>0,#VALUE!,${formula})`;

export const columns: readonly Lambda[] = [
  lambda(
    "LENGTH",
    "range",
    `LET(down,{TALL}(range),across,{WIDE}(range),IF((down>1)*(across>1)>0,#VALUE!,down*across))`,
  ),
  lambda("NOHEADING", "range", `IF({LENGTH}(range)=1,0,1-{HEADING}(INDEX(range,1,1)))`),
  // What was read, down a column as long as the longest, without a heading.
  lambda(
    "DOWN",
    "read total headed",
    `LET(upright,IF({WIDE}(read)>1,TRANSPOSE(read),read),IF(SEQUENCE(total)>headed,upright,""))`,
  ),
  // The one value of an argument that cannot be a range.
  lambda("ONE", "value", `IF({TALL}(value)*{WIDE}(value)>1,#VALUE!,value)`),
  // Whether a cell holds anything, of cells where 0 is a blank; a missing value is something.
  lambda(
    "SOMETHING",
    "range",
    `IF(ISERROR(range),1,(LEN(TRIM(range))>0)*(1-IF(ISNUMBER(range),range=0,FALSE)))`,
  ),
  // The same of a column; a single cell, which stands for every row, says nothing of one.
  lambda("THERE", "range", `IF({LENGTH}(range)=1,0,{SOMETHING}(range))`),
  // A list along a row or down a column: its numbers, or the usual ones where it has none.
  lambda(
    "LISTED",
    "range read usual",
    letting(
      {
        total: `{LENGTH}(range)`,
        headed: `IF({TALL}(range)=1,0,{HEADING}(INDEX(range,1,1)))`,
        list: `{DOWN}(read,total,headed)`,
      },
      `IF(total=1,IF(LEN(read)=0,usual,read),` +
        `IF(ISERROR(SUM(list)),SUM(list),IF(COUNT(list)=0,usual,FILTER(list,ISNUMBER(list)))))`,
    ),
  ),
  // Whether there are keys to count by: a blank cell is none.
  lambda("GIVEN", "by", `IF({TALL}(by)*{WIDE}(by)>1,1,{SOMETHING}(by))`),
  // Keys beside data that lie along a row are turned with them; a single key stretches.
  lambda(
    "TURNED",
    "by total",
    `IF({TALL}(by)=total,by,IF({WIDE}(by)=total,TRANSPOSE(IF(LEN(by)=0,"",by)),by))`,
  ),
  lambda(
    "MISPLACED",
    "by total",
    `IF({TALL}(by)=total,0,IF({TALL}(by)*{WIDE}(by)=1,0,IF(({TALL}(by)=1)*({WIDE}(by)=total)>0,0,1)))`,
  ),
  // How many keys of the first row cannot be headings; a blank can.
  lambda(
    "NOLABELS",
    "by total",
    `IF({TALL}(by)*{WIDE}(by)=1,0,LET(row,INDEX({TURNED}(by,total),1,0),` +
      `SUM(IF(ISERROR(row),1,IF(LEN(TRIM(row))=0,0,IF(ISNUMBER(row),1*(row<>0),1-{HEADING}(row)))))))`,
  ),
  // The keys of each row below a heading, blank ones empty.
  lambda(
    "KEYCELLS",
    "by total headed",
    letting(
      { upright: `{TURNED}(by,total)` },
      `IF(SEQUENCE(total)>headed,IF(LEN(TRIM(upright))=0,"",IF(ISLOGICAL(upright),upright&"",upright)),"")`,
    ),
  ),
  lambda(
    "KEYHEADS",
    "by total headed",
    letting(
      { upright: `{TURNED}(by,total)`, first: `INDEX(upright,1,0)` },
      `IF(headed*({TALL}(upright)>1)*ISTEXT(first)>0,IF(LEN(TRIM(first))=0,"by",first),"by")`,
    ),
  ),
  // What two keys share that are the same, whatever their case; rows that do not count share what no key has.
  lambda(
    "SAMEKEYS",
    "keys counted",
    `IF(counted,BYROW(LOWER(TRIM(keys)),LAMBDA(key,TEXTJOIN(UNICHAR(31),FALSE,key))),${NONE})`,
  ),
  // Whether a row is the first of its key.
  lambda("FIRSTS", "same counted", `counted*(XMATCH(same,same)=SEQUENCE(ROWS(same)))`),
  // A table with a row for each key, in the order in which they come.
  lambda(
    "KEYED",
    "by total headed counted amounts title",
    letting(
      {
        keys: `{KEYCELLS}(by,total,headed)`,
        same: `{SAMEKEYS}(keys,counted)`,
        fresh: `{FIRSTS}(same,counted)`,
        top: `HSTACK({KEYHEADS}(by,total,headed),title)`,
      },
      `IF(SUM(1*ISERROR(same))>0,#VALUE!,IF(SUM(fresh)=0,top,VSTACK(top,` +
        `HSTACK(FILTER(keys,fresh),MAP(FILTER(same,fresh),LAMBDA(one,SUM(IF(same=one,amounts,0))))))))`,
    ),
  ),
];
