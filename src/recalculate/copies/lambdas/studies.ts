import { lambda, type Lambda } from "./lambda";
import { lifted, parted } from "./lifted";

export const studies: readonly Lambda[] = [
  // Sizes past these are slips, and their fourth powers overflow.
  lambda("TOOLARGE", "number", `(ABS(number)>1E+50)+(number<>0)*(ABS(number)<1E-50)`),
  parted("STUDYDIFF", {
    parameters: "meanA sdA nA meanB sdB nB confidence=0.95",
    reads: {
      midA: `{NUMBER}(meanA,0)`,
      offA: `{POSITIVE}(sdA)`,
      allA: `{WHOLE}(nA,2,9007199254740991)`,
      midB: `{NUMBER}(meanB,0)`,
      offB: `{POSITIVE}(sdB)`,
      allB: `{WHOLE}(nB,2,9007199254740991)`,
      level: `{SHARE}(confidence,0.95)`,
    },
    working: {
      gap: `{DIFFERENCE}(midA,midB)`,
      partA: `offA^2/allA`,
      partB: `offB^2/allB`,
      error: `SQRT(partA+partB)`,
      shareA: `partA/(partA+partB)`,
      degrees: `1/(shareA^2/(allA-1)+(1-shareA)^2/(allB-1))`,
      reach: `{REACH}(level,degrees)*error`,
      pooled: `SQRT(((allA-1)*offA^2+(allB-1)*offB^2)/(allA+allB-2))`,
      size: `{HEDGES}(allA+allB-2)*(gap/pooled)`,
      sizeError: `SQRT(1/allA+1/allB+size^2/(2*(allA+allB)))`,
      sizeReach: `{REACH}(level,0)*sizeError`,
    },
    refusal: `IF((ABS(midA)>1E+50)+(ABS(midB)>1E+50)+{TOOLARGE}(offA)+{TOOLARGE}(offB)>0,#VALUE!,0)`,
    parts: {
      difference: "gap",
      "standard error": "error",
      low: "gap-reach",
      high: "gap+reach",
      t: "gap/error",
      df: "degrees",
      p: "{BOTHTAILS}(gap/error,degrees)",
      "effect size": "size",
      "effect standard error": "sizeError",
      "effect low": "size-sizeReach",
      "effect high": "size+sizeReach",
    },
    layout: "report",
  }),
  parted("STUDYCHANGEDIFF", {
    parameters:
      "beforeA afterA sdBeforeA nA beforeB afterB sdBeforeB nB correlation confidence=0.95",
    reads: {
      earlyA: `{NUMBER}(beforeA,0)`,
      lateA: `{NUMBER}(afterA,0)`,
      offA: `{POSITIVE}(sdBeforeA)`,
      allA: `{WHOLE}(nA,2,9007199254740991)`,
      earlyB: `{NUMBER}(beforeB,0)`,
      lateB: `{NUMBER}(afterB,0)`,
      offB: `{POSITIVE}(sdBeforeB)`,
      allB: `{WHOLE}(nB,2,9007199254740991)`,
      tie: `{CORRELATION}(correlation)`,
      level: `{SHARE}(confidence,0.95)`,
    },
    working: {
      gap: `{DIFFERENCE}({DIFFERENCE}(lateA,earlyA),{DIFFERENCE}(lateB,earlyB))`,
      degrees: `allA+allB-2`,
      pooled: `SQRT(((allA-1)*offA^2+(allB-1)*offB^2)/degrees)`,
      factor: `{HEDGES}(degrees)`,
      size: `factor*gap/pooled`,
      noise: `2*(1-tie)*(1/allA+1/allB)`,
      spread: `factor^2*(degrees/(degrees-2))*(noise+size^2)-size^2`,
      sizeError: `SQRT(IF(spread>0,spread,0))`,
      sizeReach: `{REACH}(level,0)*sizeError`,
    },
    refusal:
      `IF((ABS(earlyA)>1E+50)+(ABS(lateA)>1E+50)+(ABS(earlyB)>1E+50)+(ABS(lateB)>1E+50)+` +
      `{TOOLARGE}(offA)+{TOOLARGE}(offB)>0,#VALUE!,IF(degrees<=2,#N/A,0))`,
    parts: {
      difference: "gap",
      "effect size": "size",
      "effect standard error": "sizeError",
      "effect low": "size-sizeReach",
      "effect high": "size+sizeReach",
    },
    layout: "report",
  }),
  lifted(
    "SDCHANGE",
    "sdBefore sdAfter correlation",
    {
      early: `{POSITIVE}(sdBefore)`,
      late: `{POSITIVE}(sdAfter)`,
      tie: `{CORRELATION}(correlation)`,
    },
    `IF({TOOLARGE}(early)+{TOOLARGE}(late)>0,#VALUE!,SQRT((early-late)^2+2*(1-tie)*early*late))`,
  ),
  // Half of an interval's width over how far it reaches.
  lambda(
    "FROMINTERVAL",
    "bottom top level degrees",
    `IF((ABS(bottom)>1E+50)+(ABS(top)>1E+50)+(bottom>=top)>0,#VALUE!,` +
      `IF({TOOLARGE}(degrees)>0,#VALUE!,(top-bottom)/(2*{REACH}(level,degrees))))`,
  ),
  lifted(
    "SDFROMCI",
    "low high n confidence=0.95",
    {
      bottom: `{NUMBER}(low,0)`,
      top: `{NUMBER}(high,0)`,
      all: `{WHOLE}(n,2,9007199254740991)`,
      level: `{SHARE}(confidence,0.95)`,
    },
    `SQRT(all)*{FROMINTERVAL}(bottom,top,level,all-1)`,
  ),
  lifted(
    "SEFROMCI",
    "low high confidence=0.95 df=0",
    {
      bottom: `{NUMBER}(low,0)`,
      top: `{NUMBER}(high,0)`,
      level: `{SHARE}(confidence,0.95)`,
      degrees: `{SETTING}(df,0)`,
    },
    `IF((bottom=0)*(top=0)>0,"",{FROMINTERVAL}(bottom,top,level,degrees))`,
  ),
];
