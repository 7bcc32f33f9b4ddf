import { LOGGED, readColumns, whereGood } from "./columns";
import { lambda, letting, type Lambda } from "./lambda";

/** What is summed up of each row's sets, in the order of the sums below. */
const AMOUNTS = {
  sets: `count`,
  reps: `count*IF(count>0,done,0)`,
  volume: `IF(heavy,count*IF(count>0,done,0)*weights,0)`,
  near: `IF(judged,count*(1-{ABOVE}(spare,near)),0)`,
  judgedSets: `IF(judged,count,0)`,
  spared: `IF(judged,count*spare,0)`,
  unloaded: `count*(1-ISNUMBER(weights))`,
  unsaid: `count*IF(judged,1*(spare=0),1)`,
} as const;
const sum = (of: keyof typeof AMOUNTS) => `INDEX(sums,0,${Object.keys(AMOUNTS).indexOf(of) + 1})`;

/** The largest of these for each key, and nothing where there is none. */
const largest = (of: string) =>
  `LET(most,MAP(ones,LAMBDA(one,MAX(IF(same=one,${of},0)))),IF(most>0,most,""))`;

const HEADINGS =
  `{"sets","reps","volume load","close sets","mean reserve","top load","best e1RM","sets without load",` +
  `"sets at reserve 0 or blank"}`;

export const logSummary: readonly Lambda[] = [
  lambda(
    "LOGSUMMARY",
    'by load reps reserve=0 sets=1 within=4 maxReps=10 equation="epley"',
    letting(
      {
        ...readColumns(LOGGED, undefined, "by"),
        limit: `{ONE}({SETTING}(within,4))`,
        reach: `{ONE}({USUALLY}(maxReps,10))`,
        curve: `{ONE}({EQUATION}(equation))`,
        counted: `ISNUMBER(done)`,
        keys: `{KEYCELLS}(by,total,headed)`,
        same: `{SAMEKEYS}(keys,counted)`,
        // One after the other, so that the first bad one is the error.
        settled: `IF(SUM(1*ISERROR(same))>0,#VALUE!,IF(limit>=40000,#VALUE!,IF(reach>=40000,#VALUE!,0*LEN(curve))))`,
      },
      whereGood(
        `IF(settled=0,LET(top,HSTACK({KEYHEADS}(by,total,headed),${HEADINGS}),fresh,{FIRSTS}(same,counted),` +
          `IF(SUM(fresh)=0,top,VSTACK(top,HSTACK(FILTER(keys,fresh),` +
          `{LOGSUMS}(weights,done,spare,times,same,FILTER(same,fresh),limit,reach,curve))))))`,
      ),
    ),
  ),
  // The sums of each key, from the rows that have it.
  lambda(
    "LOGSUMS",
    "weights done spare times same ones near reach curve",
    letting(
      {
        count: `IF(ISNUMBER(done),IF(LEN(times)=0,1,times),0)`,
        judged: `(count>0)*ISNUMBER(spare)`,
        heavy: `(count>0)*ISNUMBER(weights)`,
        sums: `MMULT(1*(ones=TRANSPOSE(same)),HSTACK(${Object.values(AMOUNTS).join(",")}))`,
        t: `IF(judged*heavy,done+spare,0)`,
        told: `(1-{ABOVE}(1,t))*(1-{ABOVE}(t,{LESSER}(reach,{CAP}(curve))))`,
        estimates: `IF(told,weights/{FRACTION}(IF(told,{LESSER}({GREATER}(t,1),{CAP}(curve)),1),curve),0)`,
      },
      `HSTACK(${sum("sets")},${sum("reps")},${sum("volume")},${sum("near")},` +
        `IF(${sum("judgedSets")}>0,${sum("spared")}/${sum("judgedSets")},""),` +
        `${largest("IF(heavy,weights,0)")},${largest("estimates")},${sum("unloaded")},${sum("unsaid")})`,
    ),
  ),
];
