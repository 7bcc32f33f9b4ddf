import { readColumns, whereGood } from "./columns";
import { choose, lambda, letting, type Lambda, type Names } from "./lambda";
import { chosenOf, inShapeOf, LABEL_IN, lifted, oneLabel, parted, reportOf } from "./lifted";

/** A report on columns, or the parts of it that are named; nothing while an argument is not filled in. */
const columnReport = (names: Names, waits: string, refused: string, parts: Names) =>
  letting(
    { label: LABEL_IN, named: oneLabel(Object.keys(parts)), ...names },
    whereGood(
      `IF(${waits}>0,"",IF(${refused},#N/A,IF(named,${chosenOf(parts)},${reportOf(parts)})))`,
    ),
  );

const beforeAndAfter = readColumns({
  scoresBefore: ["before", "{SCORE}(before)"],
  scoresAfter: ["after", "{SCORE}(after)"],
});

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
        both: `ISNUMBER(scoresBefore)*ISNUMBER(scoresAfter)`,
        pairs: `SUM(both)`,
        changes: `IF(both,{DIFFERENCE}(scoresAfter,scoresBefore),"")`,
        passed: `SUM(IF(both,1*{ABOVE}(changes,limit),0))`,
        stayed: `SUM(IF(both,1*(changes<=0),0))`,
        // A row that holds something, but not both scores.
        lost: `(1-both)*({DOWN}({THERE}(before),total,0)+{DOWN}({THERE}(after),total,0)>0)`,
      },
      `(LEN(limit)=0)+0*level`,
      `pairs=0`,
      {
        n: "pairs",
        dropped: "SUM(IF(SEQUENCE(total)>headed,lost,0))",
        responders: "passed",
        share: "passed/pairs",
        low: "{WILSONLOW}(passed,pairs,level)",
        high: "{WILSONHIGH}(passed,pairs,level)",
        "no increase": "stayed",
      },
    ),
  ),
  parted("RESPONDERDIFF", {
    parameters: "respondersA nA respondersB nB confidence=0.95",
    reads: {
      passedA: `{HOWMANY}(respondersA)`,
      allA: `{WHOLE}(nA,1,1E+100)`,
      passedB: `{HOWMANY}(respondersB)`,
      allB: `{WHOLE}(nB,1,1E+100)`,
      level: `{SHARE}(confidence,0.95)`,
    },
    working: {
      lowA: `{WILSONLOW}(passedA,allA,level)`,
      highA: `{WILSONHIGH}(passedA,allA,level)`,
      lowB: `{WILSONLOW}(passedB,allB,level)`,
      highB: `{WILSONHIGH}(passedB,allB,level)`,
      shareA: `passedA/allA`,
      shareB: `passedB/allB`,
      each: `ISERROR(passedA+allA+passedB+allB)+1>0`,
      exact:
        `MAP(IF(each,passedA),IF(each,allA),IF(each,passedB),IF(each,allB),` +
        `LAMBDA(oneA,ofA,oneB,ofB,{FISHER}(oneA,ofA,oneB,ofB)))`,
    },
    refusal: `IF((allA>1000000)+(allB>1000000)+(passedA>allA)+(passedB>allB)>0,#VALUE!,0)`,
    parts: {
      "share A": "shareA",
      "share B": "shareB",
      difference: "shareA-shareB",
      low: "shareA-shareB-SQRT((shareA-lowA)^2+(highB-shareB)^2)",
      high: "shareA-shareB+SQRT((highA-shareA)^2+(shareB-lowB)^2)",
      p: "exact",
    },
    layout: "report",
  }),
  parted("EQUIVALENCE", {
    parameters: "difference standardError df margin alpha=0.05",
    reads: {
      gap: `{NUMBER}(difference,0)`,
      error: `{POSITIVE}(standardError)`,
      degrees: `{POSITIVE}(df)`,
      limit: `{POSITIVE}(margin)`,
      risk: `{SHARE}(alpha,0.05)`,
    },
    working: {
      pLow: `{TAIL}((gap+limit)/error,degrees)`,
      pHigh: `{TAIL}((limit-gap)/error,degrees)`,
      pBoth: `{GREATER}(pLow,pHigh)`,
      reach: `{REACH}(1-2*risk,degrees)*error`,
      reading: choose(
        [
          [`{ABOVE}(risk,pBoth)`, `"the same within the margin"`],
          [
            `{ABOVE}(gap-reach,limit)+{ABOVE}(-limit,gap+reach)>0`,
            `"different by more than the margin"`,
          ],
        ],
        `"not shown to be the same"`,
      ),
    },
    refusal: `IF(risk>=0.5,#VALUE!,0)`,
    parts: {
      "p low side": "pLow",
      "p high side": "pHigh",
      p: "pBoth",
      low: "gap-reach",
      high: "gap+reach",
      reading: "reading",
    },
    layout: "report",
  }),
];
