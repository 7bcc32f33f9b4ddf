import { NONE, readColumns, whereGood } from "./columns";
import { lambda, letting, texts, type Lambda, type Names } from "./lambda";
import { chosenOf, LABEL_IN, oneLabel, reportOf } from "./lifted";

/** What CALLCHECK says of calls, one below the other; what does not exist for them is "". */
const CHECKED: Names = {
  n: "calls",
  bias: "bias",
  sd: "off",
  "mean miss": `{MIDDLE}(IF(ISNUMBER(errors),ABS(errors),""))`,
  low: "bias-reach",
  high: "bias+reach",
  "agree low": "bias-1.96*off",
  "agree high": "bias+1.96*off",
  p: "IF(ISERROR(error),#N/A,{BOTHTAILS}(bias/error,free))",
};
const inChecked = (checked: string, part: string) =>
  `INDEX(${checked},${Object.keys(CHECKED).indexOf(part) + 1},1)`;

/** The report's values by their labels, in its order. */
const PARTS: Names = Object.fromEntries(
  ["n", "dropped", ...Object.keys(CHECKED).slice(1)].map((part) => [
    part,
    part === "dropped"
      ? "SUM(lost)"
      : `LET(found,${inChecked("checked", part)},IF(LEN(found)=0,#N/A,found))`,
  ]),
);

/** The columns of the table by keys. */
const TABLE_PARTS = ["n", "bias", "sd", "mean miss", "low", "high"];
const ofEachKey = (part: string) =>
  `MAP(FILTER(same,fresh),LAMBDA(one,` +
  `${inChecked(`{CALLCHECK}(IF(same=one,errors,""),lifters,owned,level)`, part)}))`;

export const reserveCheck: readonly Lambda[] = [
  // The spread of one call among several lifters' calls: within and between lifters (Bland and Altman 2007).
  lambda(
    "CALLSPREAD",
    "errors match means",
    letting(
      {
        calls: `COUNT(errors)`,
        lifters: `ROWS(means)`,
        own: `MMULT(match,means)`,
        values: `IF(ISNUMBER(errors),errors,0)`,
        within: `{SQUARES}(IF(ISNUMBER(errors),errors-own,0),values)/(calls-lifters)`,
        apart: `{SQUARES}(IF(ISNUMBER(errors),own-{MIDDLE}(errors),0),values)/(lifters-1)`,
        counts: `MMULT(TRANSPOSE(1*ISNUMBER(errors)),match)`,
        perLifter: `(calls-SUM(counts^2)/calls)/(lifters-1)`,
      },
      `SQRT(within+{GREATER}(0,(apart-within)/perLifter))`,
    ),
  ),
  // How well the calls with an error that is a number were made; without lifters every call stands for itself.
  lambda(
    "CALLCHECK",
    "errors lifters owned level",
    letting(
      {
        calls: `COUNT(errors)`,
        mine: `IF(ISNUMBER(errors),lifters,${NONE})`,
        ones: `IF(owned>0,FILTER(mine,{FIRSTS}(mine,ISNUMBER(errors))),"")`,
        means: `IF(owned>0,MAP(ones,LAMBDA(one,{MIDDLE}(IF(mine=one,errors,"")))),errors)`,
        free: `COUNT(means)-1`,
        bias: `{MIDDLE}(means)`,
        error: `IF(free=0,#N/A,LET(found,{SPREAD}(means)/SQRT(free+1),IF(found=0,#N/A,found)))`,
        off:
          `IF(free=0,#N/A,IF(free+1=calls,{SPREAD}(errors),` +
          `{CALLSPREAD}(errors,1*(mine=TRANSPOSE(ones)),means)))`,
        reach: `{REACH}(level,free)*error`,
      },
      `VSTACK(${Object.values(CHECKED)
        .map((value) => `IFNA(${value},"")`)
        .join(",")})`,
    ),
  ),
  // A table with a row for each key, each checked for itself.
  lambda(
    "CALLTABLE",
    "by total headed errors lifters owned level",
    letting(
      {
        counted: `ISNUMBER(errors)`,
        keys: `{KEYCELLS}(by,total,headed)`,
        same: `{SAMEKEYS}(keys,counted)`,
        fresh: `{FIRSTS}(same,counted)`,
        top: `HSTACK({KEYHEADS}(by,total,headed),TRANSPOSE(${texts(TABLE_PARTS)}))`,
      },
      `IF(SUM(1*ISERROR(same))>0,#VALUE!,IF(SUM(fresh)=0,top,VSTACK(top,` +
        `HSTACK(FILTER(keys,fresh),${TABLE_PARTS.map(ofEachKey).join(",")}))))`,
    ),
  ),
  lambda(
    "RESERVECHECK",
    'repAtCall calledReserve repsToFailure lifter="" by="" confidence=0.95 part=""',
    letting(
      {
        label: LABEL_IN,
        named: oneLabel(Object.keys(PARTS)),
        owned: `{GIVEN}(lifter)`,
        who: `IF(owned>0,lifter,"")`,
        ...readColumns(
          {
            early: ["repAtCall", "{REPS}(repAtCall)"],
            called: ["calledReserve", "{RESERVE}(calledReserve)"],
            late: ["repsToFailure", "{REPS}(repsToFailure)"],
          },
          "by",
          "who",
        ),
        level: `{ONE}({SHARE}(confidence,0.95))`,
        somebody: `IF(owned>0,BYROW({SOMETHING}({TURNED}(who,total)),LAMBDA(cells,MAX(cells))),1)`,
        complete: `ISNUMBER(early)*ISNUMBER(called)*ISNUMBER(late)*somebody`,
        // A row that holds something, but not everything.
        lost: `IF((SEQUENCE(total)>headed)*(complete=0),1*(${[
          "repAtCall",
          "calledReserve",
          "repsToFailure",
        ]
          .map((column) => `{DOWN}({SOMETHING}(${column}),total,0)`)
          .join("+")}>0),0)`,
        errors: `IF(complete,{DIFFERENCE}({DIFFERENCE}(late,early),called),"")`,
        lifters: `IF(owned>0,{SAMEKEYS}({KEYCELLS}(who,total,headed),complete),"")`,
        wrong: `SUM(IF(complete,1*{ABOVE}(early,late),0))+SUM(1*ISERROR(lifters))`,
        alone: `IF(owned>0,SUM({FIRSTS}(lifters,complete))=1,FALSE)`,
        checked: `{CALLCHECK}(errors,lifters,owned,level)`,
      },
      whereGood(
        `IF(wrong>0,#VALUE!,IF(ISERROR(level),level,IF(keyed>0,` +
          `IF({GIVEN}(part)>0,#VALUE!,{CALLTABLE}(by,total,headed,errors,lifters,owned,level)),` +
          `IF(SUM(complete)=0,IF(total-headed=1,"",#N/A),IF(alone,#N/A,` +
          `IF(named,${chosenOf(PARTS)},${reportOf(PARTS)}))))))`,
      ),
    ),
  ),
];
