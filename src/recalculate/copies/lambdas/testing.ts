import { columnReport } from "./columnReport";
import { readColumns, whereGood } from "./columns";
import { choose, lambda, letting, type Lambda, type Names } from "./lambda";
import { inShapeOf, lifted, parted } from "./lifted";

const beforeAndAfter = readColumns({
  scoresBefore: ["before", "{SCORE}(before)"],
  scoresAfter: ["after", "{SCORE}(after)"],
});

/** The athletes who have both scores. */
const PAIRS: Names = {
  both: `ISNUMBER(scoresBefore)*ISNUMBER(scoresAfter)`,
  pairs: `SUM(both)`,
  changes: `IF(both,{DIFFERENCE}(scoresAfter,scoresBefore),"")`,
  // A row that holds something, but not both scores.
  lost: `(1-both)*({DOWN}({THERE}(before),total,0)+{DOWN}({THERE}(after),total,0)>0)`,
};
const DROPPED = "SUM(IF(SEQUENCE(total)>headed,lost,0))";

export const testing: readonly Lambda[] = [
  lifted(
    "MDC",
    "typicalError confidence=0.95 df=0",
    {
      noise: `{POSITIVE}(typicalError)`,
      level: `{SHARE}(confidence,0.95)`,
      degrees: `{SETTING}(df,0)`,
    },
    `noise*SQRT(2)*{REACH}(level,degrees)`,
  ),
  lambda(
    "SWC",
    "scores fraction=0.2",
    letting(
      {
        ...readColumns({ found: ["scores", "{SCORE}(scores)"] }),
        part: `{USUALLY}(fraction,0.2)`,
        off: `IF(COUNT(found)<2,#N/A,{SPREAD}(found))`,
      },
      whereGood(inShapeOf(["fraction"], `IF(ISERROR(part),part,IF(off=0,#N/A,part*off))`)),
    ),
  ),
  // What an interval of a change comes to, beside the smallest change that matters.
  lambda(
    "CHANGEREADING",
    "low high smallest",
    letting(
      {
        near: `{LESSER}(ABS(low),ABS(high))`,
        far: `{GREATER}(ABS(low),ABS(high))`,
        way: `IF(low>0,"real increase","real decrease")`,
      },
      choose(
        [
          [`1-{ABOVE}(ABS(low+high),high-low)`, `"within test error"`],
          [`1-{ABOVE}(far,smallest)`, `"real, too small to matter"`],
          [`{ABOVE}(smallest,near)`, `way&", perhaps too small to matter"`],
        ],
        "way",
      ),
    ),
  ),
  parted("CHANGESCORE", {
    parameters: "before after typicalError smallest=0 confidence=0.95 df=0",
    reads: {
      earlier: `{SCORE}(before)`,
      later: `{SCORE}(after)`,
      least: `{SETTING}(smallest,0)`,
      error: `{POSITIVE}(typicalError)`,
      level: `{SHARE}(confidence,0.95)`,
      degrees: `{SETTING}(df,0)`,
    },
    working: {
      noise: `error*SQRT(2)`,
      change: `{DIFFERENCE}(later,earlier)`,
      reach: `{REACH}(level,degrees)*noise`,
      percent: `IF(earlier>0,change/earlier,#N/A)`,
      ratio: `change/noise`,
    },
    parts: {
      change: "change",
      percent: "percent",
      low: "change-reach",
      high: "change+reach",
      ratio: "ratio",
      p: "{BOTHTAILS}(ratio,degrees)",
      chance: "{TAIL}((least-change)/noise,degrees)",
      reading: "{CHANGEREADING}(change-reach,change+reach,least)",
    },
    layout: "row",
  }),
  lambda(
    "RESPONDERS",
    'before after threshold confidence=0.95 part=""',
    columnReport(
      {
        ...beforeAndAfter,
        limit: `{ONE}({NUMBER}(threshold,0))`,
        level: `{ONE}({SHARE}(confidence,0.95))`,
        ...PAIRS,
        passed: `SUM(IF(both,1*{ABOVE}(changes,limit),0))`,
        stayed: `SUM(IF(both,1*(changes<=0),0))`,
      },
      `(LEN(limit)=0)+0*level`,
      `pairs=0`,
      {
        n: "pairs",
        dropped: DROPPED,
        responders: "passed",
        share: "passed/pairs",
        low: "{WILSONLOW}(passed,pairs,level)",
        high: "{WILSONHIGH}(passed,pairs,level)",
        "no increase": "stayed",
      },
    ),
  ),
  lambda(
    "PAIREDCHANGE",
    'before after confidence=0.95 part=""',
    columnReport(
      {
        ...beforeAndAfter,
        level: `{ONE}({SHARE}(confidence,0.95))`,
        ...PAIRS,
        earlier: `IF(both,scoresBefore,"")`,
        later: `IF(both,scoresAfter,"")`,
        centre: `AVERAGE(changes)`,
        off: `IF(pairs<2,#N/A,{SPREAD}(changes))`,
        error: `off/SQRT(pairs)`,
        ratio: `IF(error=0,#N/A,centre/error)`,
        reach: `IF(error=0,#N/A,{REACH}(level,pairs-1)*error)`,
        offBefore: `IF(pairs<3,#N/A,{SPREAD}(earlier))`,
        offAfter: `IF(pairs<3,#N/A,{SPREAD}(later))`,
        effect: `IF(offBefore=0,#N/A,{HEDGES}(pairs-1)*centre/offBefore)`,
        products: `SUM(IF(both,(scoresBefore-AVERAGE(earlier))*(scoresAfter-AVERAGE(later)),0))`,
        close: `IF(offBefore*offAfter=0,#N/A,products/(pairs-1)/offBefore/offAfter)`,
        alike: `IF(ABS(close)>1-0.000000000001,IF(close>0,1,-1),close)`,
        effectOff: `SQRT(2*(1-alike)/pairs+effect^2/(2*pairs))`,
      },
      `0*level`,
      `pairs=0`,
      {
        n: "pairs",
        dropped: DROPPED,
        "mean before": "AVERAGE(earlier)",
        "mean after": "AVERAGE(later)",
        "mean change": "centre",
        "sd of change": "off",
        "standard error": "error",
        low: "centre-reach",
        high: "centre+reach",
        t: "ratio",
        df: "IF(pairs<2,#N/A,pairs-1)",
        p: "{BOTHTAILS}(ratio,pairs-1)",
        "effect size": "effect",
        "effect standard error": "IF(effectOff=0,#N/A,effectOff)",
      },
    ),
  ),
];
