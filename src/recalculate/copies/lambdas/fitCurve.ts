import { readColumns, whereGood } from "./columns";
import { lambda, letting, type Lambda, type Names } from "./lambda";
import { chosenOf, LABEL_IN, oneLabel, reportOf } from "./lifted";

const PARTS: Names = {
  sets: "sets",
  "one-rep max": "most",
  "one-rep max low": "{LESSER}(most,(half-root)/square)",
  "one-rep max high": "{GREATER}(most,(half+root)/square)",
  constant: "constant",
  "constant low": "constant-reach",
  "constant high": "constant+reach",
  "reps at 80%": "1+constant/4",
  "residual sd": "SQRT(variance)",
  "r squared": "1-rest/SUM(up^2)",
};

/** A lifter's own curve: the least-squares line of reps to failure on 1 / load, and Fieller's interval. */
export const fitCurve: readonly Lambda[] = [
  lambda(
    "FITCURVE",
    'load reps reserve=0 confidence=0.95 part=""',
    letting(
      {
        label: LABEL_IN,
        named: oneLabel(Object.keys(PARTS)),
        ...readColumns({
          weights: ["load", "{POSITIVE}(load)"],
          done: ["reps", "{REPS}(reps)"],
          spare: ["reserve", "{RESERVE}(reserve)"],
        }),
        level: `{ONE}({SHARE}(confidence,0.95))`,
        whole: `ISNUMBER(weights)*ISNUMBER(done)*ISNUMBER(spare)`,
        sets: `SUM(whole)`,
        wrong: `SUM(IF(whole,(done<1)+(done+spare>30),0))`,
        first: `INDEX(FILTER(weights,whole),1,1)`,
        unlike: `SUM(IF(whole,{ABOVE}(weights,first)+{ABOVE}(first,weights),0))`,
        across: `IF(whole,1/weights,"")`,
        toFailure: `IF(whole,done+spare,"")`,
        centre: `AVERAGE(across)`,
        along: `IF(whole,across-centre,0)`,
        up: `IF(whole,toFailure-AVERAGE(toFailure),0)`,
        spread: `SUM(along^2)`,
        slope: `SUM(along*up)/spread`,
        rest: `SUM((up-slope*along)^2)`,
        constant: `1-AVERAGE(toFailure)+slope*centre`,
        variance: `rest/(sets-2)`,
        // All calls of a lifter may be off alike, which no set shows.
        shared: `IF(SUM(IF(whole,1*(spare>0),0))>0,0.25,0)`,
        varianceConstant: `variance*(1/sets+centre^2/spread)+shared`,
        multiplier: `{REACH}(level,sets-2)`,
        reach: `multiplier*SQRT(varianceConstant)`,
        square: `constant^2-multiplier^2*varianceConstant`,
        half: `slope*constant-multiplier^2*variance*centre/spread`,
        last: `slope^2-multiplier^2*variance/spread`,
        root: `SQRT({GREATER}(0,half^2-square*last))`,
        most: `slope/constant`,
        refused: `IF(sets<3,1,IF(unlike=0,1,IF((slope<=0)+(constant<=0)>0,1,(square<=0)+(last<=0))))`,
      },
      whereGood(
        `IF(ISERROR(level),level,IF(wrong>0,#VALUE!,IF(refused>0,#N/A,` +
          `IF(named,${chosenOf(PARTS)},${reportOf(PARTS)}))))`,
      ),
    ),
  ),
];
