import { curves } from "./curves";
import { choose, lambda, type Lambda } from "./lambda";
import { lifted, parted } from "./lifted";

/** The least or the most of what all published equations say that reach as far. */
function overAll(which: "LESSER" | "GREATER", reps: string): string {
  const estimate = (name: string) => `weight/{FRACTION}(${reps},"${name}")`;
  const within = (names: readonly string[]) =>
    names.map(estimate).reduce((best, next) => `{${which}}(${best},${next})`);
  const far = Object.keys(curves).filter((name) => name !== "brzycki" && name !== "lander");
  return `IF(most>15,${within(far)},${within(Object.keys(curves))})`;
}

export const strength: readonly Lambda[] = [
  lifted(
    "E1RM",
    'load reps reserve=0 equation="epley"',
    {
      weight: `{POSITIVE}(load)`,
      done: `{REPS}(reps)`,
      spare: `{RESERVE}(reserve)`,
      curve: `{EQUATION}(equation)`,
    },
    `weight/{FRACTION}(done+spare,curve)`,
  ),
  lambda(
    "EQUATIONORALL",
    "value",
    choose(
      [
        ["ISERROR(value)", `{EQUATION}(value)`],
        [`LOWER(TRIM(value))="all"`, `"all"`],
      ],
      `{EQUATION}(value)`,
    ),
  ),
  parted("E1RMBAND", {
    parameters: 'load reps reserve=0 reserveError=1 equation="epley"',
    reads: {
      weight: `{POSITIVE}(load)`,
      done: `{REPS}(reps)`,
      spare: `{RESERVE}(reserve)`,
      wrong: `{SETTING}(reserveError,1)`,
      curve: `{EQUATIONORALL}(equation)`,
    },
    working: {
      one: `IF(curve="all","epley",curve)`,
      most: `done+spare+wrong`,
      fewest: `{GREATER}(done,done+spare-wrong)`,
      estimate: `weight/{FRACTION}(done+spare,one)`,
      low: `IF(curve="all",${overAll("LESSER", "fewest")},weight/{FRACTION}(fewest,one))`,
      high: `IF(curve="all",${overAll("GREATER", "most")},weight/{FRACTION}(most,one))`,
    },
    refusal: `IF((fewest<1)+(most>{CAP}(one))>0,#VALUE!,0)`,
    parts: { low: "low", estimate: "estimate", high: "high" },
    layout: "row",
  }),
  lifted(
    "PERCENT1RM",
    'reps reserve=0 equation="epley"',
    { done: `{REPS}(reps)`, spare: `{RESERVE}(reserve)`, curve: `{EQUATION}(equation)` },
    `{FRACTION}(done+spare,curve)`,
  ),
  lambda(
    "REPSWITH",
    "share spare curve",
    `LET(total,IFERROR({REPSTOFAILURE}(IF(share>1,1,share),curve),#N/A),` +
      `IF(share-1>0.000000001*share,0,IF(total>{CAP}(curve)*1.000000001,#N/A,` +
      `IF(total>spare,total-spare,0))))`,
  ),
  lifted(
    "REPSAT",
    'load oneRepMax reserve=0 equation="epley"',
    {
      weight: `{POSITIVE}(load)`,
      most: `{POSITIVE}(oneRepMax)`,
      spare: `{RESERVE}(reserve)`,
      curve: `{EQUATION}(equation)`,
    },
    `{REPSWITH}(weight/most,spare,curve)`,
  ),
  lifted(
    "RELATIVESTRENGTH",
    "load bodyMass exponent=1",
    {
      weight: `{POSITIVE}(load)`,
      mass: `{POSITIVE}(bodyMass)`,
      power: `{USUALLY}(exponent,1)`,
    },
    `weight/mass^power`,
  ),
];
