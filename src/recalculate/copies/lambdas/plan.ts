import { lambda, letting, unless, type Lambda } from "./lambda";
import { lifted, parted } from "./lifted";

/** A set's one-rep max by its reps and reserve. */
const maximum = (load: string, reps: string, reserve: string) =>
  `${load}/{FRACTION}(${reps}+${reserve},curve)`;

export const plan: readonly Lambda[] = [
  lambda(
    "RESERVEIN",
    "length from to week step",
    `{TOMULTIPLE}(IF(length=1,to,from+(to-from)*(week-1)/(length-1)),step,"tie up")`,
  ),
  lifted(
    "RESERVETAPER",
    "weeks from to week step=1",
    {
      length: `{WHOLE}(weeks,1,520)`,
      first: `{RESERVE}(from)`,
      last: `{RESERVE}(to)`,
      multiple: `{SETTING}(step,1)`,
      number: `{WHOLE}({BELOWHEADING}(week),1,1E+100)`,
    },
    `IF(number>length,#VALUE!,{RESERVEIN}(length,first,last,number,multiple))`,
  ),
  // Without a week: all of them, one below the other.
  lambda(
    "RESERVEWEEKS",
    "weeks from to step=1",
    letting(
      {
        length: `{ONE}({WHOLE}(weeks,1,520))`,
        first: `{ONE}({RESERVE}(from))`,
        last: `{ONE}({RESERVE}(to))`,
      },
      unless(
        ["length", "first", "last"],
        `{RESERVEIN}(length,first,last,SEQUENCE(length),{ONE}({SETTING}(step,1)))`,
      ),
    ),
  ),
  parted("PLANCHECK", {
    parameters: 'plannedLoad plannedReps plannedReserve="" load reps reserve="" equation="epley"',
    reads: {
      heavy: `{POSITIVE}(plannedLoad)`,
      many: `{REPS}(plannedReps)`,
      spare: `{RESERVE}(plannedReserve)`,
      weight: `{POSITIVE}(load)`,
      done: `{REPS}(reps)`,
      left: `{RESERVE}(reserve)`,
      curve: `{EQUATION}(equation)`,
    },
    optional: ["spare", "left"],
    working: {
      judged: `(LEN(spare)>0)*(LEN(left)>0)`,
      assumed: maximum("heavy", "many", "spare"),
      shown: maximum("weight", "done", "left"),
      loadOff: `{DIFFERENCE}(weight,heavy)/heavy`,
      repsOff: `{DIFFERENCE}(done,many)`,
      reserveOff: `IF(judged>0,{DIFFERENCE}(left,spare),#N/A)`,
      strengthOff: `IF(judged>0,{DIFFERENCE}(shown,assumed)/assumed,#N/A)`,
    },
    refusal: `IF((many<1)+(done<1)>0,#VALUE!,IF(judged>0,IF(ISERROR(assumed+shown),#VALUE!,0),0))`,
    parts: {
      "load off": "loadOff",
      "reps off": "repsOff",
      "reserve off": "reserveOff",
      "strength off": "strengthOff",
    },
    layout: "row",
  }),
];
