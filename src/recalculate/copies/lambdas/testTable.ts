import { lambda, letting, type Lambda } from "./lambda";

/** The scores of one group in the measure `at`, of its complete pairs. */
const BEFORE_A = "{PICKED}(scoresBefore,scoresAfter,isA,at)";
const AFTER_A = "{PICKED}(scoresAfter,scoresBefore,isA,at)";
const BEFORE_B = "{PICKED}(scoresBefore,scoresAfter,isB,at)";
const AFTER_B = "{PICKED}(scoresAfter,scoresBefore,isB,at)";
const ALL = [BEFORE_A, AFTER_A, BEFORE_B, AFTER_B].join(",");

/** A column of one number for each measure. */
const each = (formula: string) => `MAP(SEQUENCE(width),LAMBDA(at,${formula}))`;

/** The columns of the table, each by its heading. */
const COLUMNS = {
  measure: "TRANSPOSE(INDEX(before,1,0))",
  "n A": "sizesA",
  "n B": "sizesB",
  "before A": each(`{MIDDLE}(${BEFORE_A})`),
  "after A": each(`{MIDDLE}(${AFTER_A})`),
  "change A": each(`{MIDDLE}({DIFFERENCE}(${AFTER_A},${BEFORE_A}))`),
  "before B": each(`{MIDDLE}(${BEFORE_B})`),
  "after B": each(`{MIDDLE}(${AFTER_B})`),
  "change B": each(`{MIDDLE}({DIFFERENCE}(${AFTER_B},${BEFORE_B}))`),
  "adjusted difference": "gaps",
  low: `IF(tested,gaps-reaches,"")`,
  high: `IF(tested,gaps+reaches,"")`,
  p: "chances",
  "Holm p": "{HOLM}(chances)",
  "effect size": each(`INDEX({GROUPEFFECT}(${ALL}),1)`),
} as const;

const HEADINGS = `{${Object.keys(COLUMNS)
  .map((heading) => `"${heading}"`)
  .join(",")}}`;

export const testTable: readonly Lambda[] = [
  // The scores of one column, in the rows that count and have one in the other block too.
  lambda(
    "PICKED",
    "scores others counted at",
    letting(
      { column: `INDEX(scores,0,at)` },
      `FILTER(column,counted*ISNUMBER(column)*ISNUMBER(INDEX(others,0,at)))`,
    ),
  ),
  // The chances of several tests, raised by Holm's rule; "" takes no part in it.
  lambda(
    "HOLM",
    "chances",
    letting(
      {
        raised: `MAP(chances,LAMBDA(one,IF(LEN(one)=0,"",one*(COUNT(chances)-SUM(IF(ISNUMBER(chances),1*(chances<one),0))))))`,
      },
      `MAP(chances,LAMBDA(one,IF(LEN(one)=0,"",MIN(1,MAX(IF(ISNUMBER(chances),IF(chances<=one,raised,0),0))))))`,
    ),
  ),
  lambda(
    "TESTTABLE",
    'group before after first="" confidence=0.95',
    letting(
      {
        width: `{WIDE}(before)`,
        total: `MAX({TALL}(before),{TALL}(after),{TALL}(group))`,
        headed: `IF({TALL}(before)*{TALL}(after)=1,0,IF({UNTITLED}(before)+{UNTITLED}(after)+{NOLABELS}(group,total)>0,0,1))`,
        misfit:
          `({WIDE}(after)<>width)+({TALL}(before)>1)*({TALL}(before)<>total)+` +
          `({TALL}(after)>1)*({TALL}(after)<>total)+{MISPLACED}(group,total)`,
        title: `INDEX(before,1,1)`,
        titled: `IF(headed*ISTEXT(title),LEN(TRIM(title))>0,FALSE)`,
        below: `SEQUENCE(total)>headed`,
        scoresBefore: `IF(below,{SCORE}(before),"")`,
        scoresAfter: `IF(below,{SCORE}(after),"")`,
        bad: `SUM(1*ISERROR(scoresBefore))+SUM(1*ISERROR(scoresAfter))`,
        level: `{ONE}({SHARE}(confidence,0.95))`,
        keys: `{GROUPKEYS}(group,total,headed)`,
        sides: `{SIDES}(keys,1*({FILLED}(before)+{FILLED}(after)>0),headed,first)`,
        isA: `keys=INDEX(sides,1)`,
        isB: `keys=INDEX(sides,2)`,
      },
      `IF(misfit+1-titled>0,#VALUE!,IF(bad>0,#VALUE!,IF(0*level+0*ROWS(sides)=0,{MEASURES}(before,scoresBefore,scoresAfter,isA,isB,level))))`,
    ),
  ),
  // A row for each column of scores.
  lambda(
    "MEASURES",
    "before scoresBefore scoresAfter isA isB level",
    letting(
      {
        width: `{WIDE}(before)`,
        sizesA: each(
          `SUM(isA*ISNUMBER(INDEX(scoresBefore,0,at))*ISNUMBER(INDEX(scoresAfter,0,at)))`,
        ),
        sizesB: each(
          `SUM(isB*ISNUMBER(INDEX(scoresBefore,0,at))*ISNUMBER(INDEX(scoresAfter,0,at)))`,
        ),
        gaps: each(`INDEX({ADJUSTED}(${ALL}),1)`),
        errors: each(`INDEX({ADJUSTED}(${ALL}),2)`),
        degrees: each(`INDEX({ADJUSTED}(${ALL}),3)`),
        tested: `ISNUMBER(degrees)`,
        reaches: `IF(tested,{REACH}(level,degrees)*errors,"")`,
        chances: `IF(tested,{BOTHTAILS}(gaps/errors,degrees),"")`,
      },
      `IF(MIN(sizesA,sizesB)=0,#N/A,VSTACK(${HEADINGS},HSTACK(${Object.values(COLUMNS).join(",")})))`,
    ),
  ),
];
