import { LOGGED, readColumns, whereGood } from "./columns";
import { lambda, letting, type Lambda } from "./lambda";
import { lifted } from "./lifted";

/** The days of a week: what is no number is a day of rest. */
const ofWeek = (formula: string) =>
  letting(
    {
      read: `{NOTBELOW}(loads)`,
      days: `IF(LEN(read)=0,0,read)`,
      off: `{SPREAD}(days)`,
    },
    `IF({TALL}(loads)*{WIDE}(loads)=1,IF(days=0,"",#N/A),IF(SUM(1*ISERROR(days))>0,#VALUE!,` +
      `IF(off=0,#N/A,${formula})))`,
  );

/** A total of all rows, or with keys a table of totals; nothing while a single row is not filled in. */
const totalled = (needed: readonly [string, string], title: string) =>
  `IF(keyed>0,{KEYED}(by,total,headed,ISNUMBER(done),amounts,"${title}"),` +
  `IF((total-headed=1)*(COUNT(${needed[0]})*COUNT(${needed[1]})=0)>0,"",SUM(amounts)))`;

export const log: readonly Lambda[] = [
  lambda(
    "VOLUMELOAD",
    'load reps sets=1 by=""',
    letting(
      {
        ...readColumns({ weights: LOGGED.weights, done: LOGGED.done, times: LOGGED.times }, "by"),
        amounts: `IF(ISNUMBER(weights)*ISNUMBER(done),IF(LEN(times)=0,1,times)*done*weights,0)`,
      },
      whereGood(totalled(["done", "weights"], "volume load")),
    ),
  ),
  lambda(
    "CLOSESETS",
    'reps reserve="" sets=1 within=4 by=""',
    letting(
      {
        ...readColumns({ done: LOGGED.done, spare: LOGGED.spare, times: LOGGED.times }, "by"),
        near: `{ONE}({SETTING}(within,4))`,
        close: `IF(ISNUMBER(done)*ISNUMBER(spare),1-{ABOVE}(spare,near),0)`,
        amounts: `IF(close>0,IF(LEN(times)=0,1,times),0)`,
      },
      whereGood(`IF(near>=40000,#VALUE!,${totalled(["done", "spare"], "close sets")})`),
    ),
  ),
  lifted(
    "SESSIONLOAD",
    "rpe minutes",
    { effort: `{UPTO}(rpe,10)`, time: `{POSITIVE}(minutes)` },
    `effort*time`,
  ),
  lambda("WEEKMONOTONY", "loads", ofWeek(`AVERAGE(days)/off`)),
  lambda("WEEKSTRAIN", "loads", ofWeek(`SUM(days)*AVERAGE(days)/off`)),
];
