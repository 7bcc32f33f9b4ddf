import { choose, type Lambda } from "./lambda";
import { parted } from "./lifted";

/** The reports on tests that are made of single values. */
export const testingReports: readonly Lambda[] = [
  parted("RESPONSESHARE", {
    parameters: "meanChange sdChange typicalError threshold n=0 df=0 confidence=0.95",
    reads: {
      centre: `{NUMBER}(meanChange,0)`,
      seen: `{POSITIVE}(sdChange)`,
      limit: `{NUMBER}(threshold,0)`,
      size: `LET(number,{SETTING}(n,0),IF(number=0,0,IF((number<>INT(number))+(number<2)>0,#VALUE!,number)))`,
      error: `{POSITIVE}(typicalError)`,
      level: `{SHARE}(confidence,0.95)`,
      degrees: `{SETTING}(df,0)`,
    },
    working: {
      noise: `error*SQRT(2)`,
      trueOff: `IF({ABOVE}(seen,noise),SQRT((seen-noise)*(seen+noise)),#N/A)`,
      free: `IF(size=0,#N/A,size-1)`,
      chance: `{RATIOTAIL}((seen/noise)^2,free,degrees)`,
      reading: choose(
        [
          [`ISERROR(chance)`, `"say n to tell spread from test error"`],
          [`{ABOVE}(1-level,chance)`, `"more spread than test error explains"`],
        ],
        `"all may have changed alike"`,
      ),
    },
    refusal: `IF(size>10000000,#VALUE!,0)`,
    parts: {
      "observed share": "{TAIL}((limit-centre)/seen,0)",
      "share if all alike": "{TAIL}((limit-centre)/noise,0)",
      "share without noise": "{TAIL}((limit-centre)/trueOff,0)",
      "true sd": "trueOff",
      "true sd low": "{EXTRASPREAD}(seen,free,noise,degrees,level,-1)",
      "true sd high": "{EXTRASPREAD}(seen,free,noise,degrees,level,1)",
      p: "chance",
      reading: "reading",
    },
    layout: "report",
  }),
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
            `{ABOVE}(gap-reach,limit)+{ABOVE}(0-limit,gap+reach)>0`,
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
