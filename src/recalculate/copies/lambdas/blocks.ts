import { choose, lambda, letting, type Lambda } from "./lambda";
import { inShapeOf } from "./lifted";

/** The numbers of a row of blocks, and how each is read. */
const BLOCK = {
  length: "{WHOLE}(cells,1,520)",
  setsFirst: "{REPS}(cells)",
  setsLast: "{REPS}(cells)",
  repsLow: "{REPS}(cells)",
  repsHigh: "{REPS}(cells)",
  reserveFirst: "{RESERVE}(cells)",
  reserveLast: "{RESERVE}(cells)",
} as const;
const COLUMNS = Object.keys(BLOCK);

/** Where a block's columns stand in the list that BLOCKS makes: its name, its numbers, and the last week of each. */
const END = COLUMNS.length + 2;
const inList = (column: string | number) =>
  typeof column === "number" ? column : COLUMNS.indexOf(column) + 2;

/** One column of the blocks as they are given, without the heading. */
const given = (column: string, index: number) =>
  `LET(cells,INDEX(blocks,0,${index + 1}+named),IF(SEQUENCE(ROWS(blocks))>headed,${column},""))`;

const summed = (of: (column: string) => string) => COLUMNS.map(of).join("+");

const PARTS = {
  block: `IF(LEN(title)=0,at,title)`,
  week: "number",
  sets: "sets",
  "reps low": "repsLow",
  "reps high": "repsHigh",
  reserve: "spare",
  percent: "share",
  load: "weight",
  "volume load": "sets*middle*weight",
} as const;

const LIFTED = ["oneRepMax", "week", "part", "increment", "equation"];

/** Plans by blocks: a short table with a row a block, and a name before its numbers if it likes. */
export const blocks: readonly Lambda[] = [
  // The filled rows of a table of blocks, each with its last week behind it; "" where there is none.
  lambda(
    "BLOCKS",
    "blocks",
    letting(
      {
        named: `1*({WIDE}(blocks)=${COLUMNS.length + 1})`,
        head: `INDEX(blocks,1,0)`,
        untitled: `SUM(IF(SEQUENCE(1,{WIDE}(blocks))>named,1-{HEADING}(head),IF(ISERROR(head),1,IF(LEN(TRIM(head))=0,0,IF(ISNUMBER(head),1*(head<>0),1-{HEADING}(head))))))`,
        headed: `IF({TALL}(blocks)=1,0,IF(untitled>0,0,1))`,
        title: `IF(named>0,LET(cells,INDEX(blocks,0,1),IF(SEQUENCE(ROWS(blocks))>headed,IF(LEN(TRIM(cells))=0,"",IF(ISNUMBER(cells),IF(cells=0,"",cells),cells&"")),"")),"")`,
        ...Object.fromEntries(
          Object.entries(BLOCK).map(([name, read], index) => [name, given(read, index)]),
        ),
        bad: `SUM(1*ISERROR(title))+${summed((name) => `SUM(1*ISERROR(${name}))`)}`,
        filled: `LEN(title)+${summed((name) => `IF(ISNUMBER(${name}),${name}<>0,0)`)}>0`,
        gaps: `filled*(${summed((name) => `(LEN(${name})=0)`)})`,
        rows: `FILTER(HSTACK(IF(filled,title,title),${COLUMNS.join(",")}),filled)`,
        weeks: `INDEX(rows,0,2)`,
        ends: `MAP(SEQUENCE(ROWS(rows)),LAMBDA(last,SUM(IF(SEQUENCE(ROWS(rows))<=last,weeks,0))))`,
      },
      `IF({GIVEN}(blocks)=0,"",IF(({WIDE}(blocks)<${COLUMNS.length})+({WIDE}(blocks)>${COLUMNS.length + 1})>0,#VALUE!,` +
        `IF(bad>0,#VALUE!,IF(SUM(1*filled)=0,"",IF(SUM(gaps)>0,#VALUE!,HSTACK(rows,ends))))))`,
    ),
  ),
  // One number of one week of a plan; of several maxima each is for the block in its place.
  lambda(
    "PLANNED",
    "maxima list number step curve what",
    letting(
      {
        total: `MAX(INDEX(list,0,${END}))`,
        at: `IF((total>520)+(number>total)>0,#VALUE!,SUM(1*(INDEX(list,0,${END})<number))+1)`,
        title: `INDEX(list,at,1)`,
        ...Object.fromEntries(COLUMNS.map((name) => [name, `INDEX(list,at,${inList(name)})`])),
        most: `IF(COUNT(maxima)=1,SUM(maxima),INDEX(maxima,at,1))`,
        inBlock: `number-INDEX(list,at,${END})+length`,
        straight: `IF(length=1,setsLast,setsFirst+(setsLast-setsFirst)*(inBlock-1)/(length-1))`,
        sets: `{TOMULTIPLE}(straight,1,"nearest")`,
        spare: `{RESERVEIN}(length,reserveFirst,reserveLast,inBlock,1)`,
        middle: `(repsLow+repsHigh)/2`,
        share: `{FRACTION}(middle+spare,curve)`,
        weight: `{TOLOAD}(most*share,most,step)`,
        wrong: `(setsFirst<1)+(setsLast<1)+(repsLow<1)+(repsHigh<repsLow)`,
      },
      `IF(ISERROR(wrong+weight),#VALUE!,IF(wrong>0,#VALUE!,${choose(
        Object.entries(PARTS).map(([word, value]) => [`what="${word}"`, value] as const),
        "#VALUE!",
      )}))`,
    ),
  ),
  lambda(
    "PLANWEEK",
    'oneRepMax blocks week part="load" increment=0 equation="epley"',
    letting(
      {
        list: `{BLOCKS}(blocks)`,
        most: `{POSITIVE}(oneRepMax)`,
        number: `{WHOLE}({BELOWHEADING}(week),1,1E+100)`,
        what: `{WORD}(part,"|${Object.keys(PARTS).join("|")}|","load")`,
        step: `{SETTING}(increment,0)`,
        curve: `{EQUATION}(equation)`,
        waits: `1*(LEN(most)=0)+1*(LEN(number)=0)+0*LEN(what)+0*LEN(step)+0*LEN(curve)`,
        each: `ISERROR(waits)>=0`,
        answer:
          `MAP(waits,IF(each,most),IF(each,number),IF(each,what),IF(each,step),IF(each,curve),` +
          `LAMBDA(wait,heavy,week,word,by,shape,IF(wait>0,"",IF({WIDE}(list)=1,"",{PLANNED}(heavy,list,week,by,shape,word)))))`,
      },
      `IF(ISERROR(SUM(LEN(list))),#VALUE!,${inShapeOf(LIFTED, "answer")})`,
    ),
  ),
  lambda(
    "BLOCKPLAN",
    'oneRepMax blocks increment=0 equation="epley"',
    letting(
      {
        maxima: `{LISTED}(oneRepMax,{POSITIVE}(oneRepMax),"")`,
        list: `{BLOCKS}(blocks)`,
        step: `{ONE}({SETTING}(increment,0))`,
        curve: `{ONE}({EQUATION}(equation))`,
        waits: `0*SUM(LEN(maxima))+0*SUM(LEN(list))+0*LEN(step)+0*LEN(curve)+(COUNT(maxima)=0)+({WIDE}(list)=1)`,
        total: `MAX(INDEX(list,0,${END}))`,
        lines: `HSTACK(${Object.keys(PARTS)
          .map(
            (word) =>
              `MAP(SEQUENCE(total),LAMBDA(number,{PLANNED}(maxima,list,number,step,curve,"${word}")))`,
          )
          .join(",")})`,
      },
      `IF(waits>0,"",IF((COUNT(maxima)<>1)*(COUNT(maxima)<>ROWS(list))+(total>520)>0,#VALUE!,` +
        `IF(SUM(1*ISERROR(lines))>0,#VALUE!,VSTACK({${Object.keys(PARTS)
          .map((word) => `"${word}"`)
          .join(",")}},lines))))`,
    ),
  ),
];
