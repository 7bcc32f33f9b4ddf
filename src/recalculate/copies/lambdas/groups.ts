import { lambda, letting, type Lambda } from "./lambda";

/** What two groups are compared by, from their complete pairs; what does not exist is "". */
const PAIRS = "beforeA afterA beforeB afterB";

/** How far each score lies from its group's mean, and what that sums up to. */
const OFF = {
  sizeA: `COUNT(beforeA)`,
  sizeB: `COUNT(beforeB)`,
  offBeforeA: `beforeA-{MIDDLE}(beforeA)`,
  offAfterA: `afterA-{MIDDLE}(afterA)`,
  offBeforeB: `beforeB-{MIDDLE}(beforeB)`,
  offAfterB: `afterB-{MIDDLE}(afterB)`,
  spreadA: `{SQUARES}(offBeforeA,beforeA)`,
  spreadB: `{SQUARES}(offBeforeB,beforeB)`,
  spread: `spreadA+spreadB`,
  products: `SUM(offBeforeA*offAfterA)+SUM(offBeforeB*offAfterB)`,
} as const;

/** The two groups of a study: who is in which, and how they compare. */
export const groups: readonly Lambda[] = [
  // A label without outer blanks; the blanks in it stay.
  lambda(
    "TRIMMED",
    "label",
    letting(
      { places: `SEQUENCE(LEN(label))`, solid: `IF(MID(label,places,1)<>" ",places,"")` },
      `MID(label,MIN(solid),MAX(solid)-MIN(solid)+1)`,
    ),
  ),
  lambda("NONZEROKEY", "cells", `LET(key,{LABELKEY}(cells),IF(key="0","",key))`),
  // The group of each row, "" where it has none.
  lambda(
    "GROUPKEYS",
    "group total headed",
    `IF(SEQUENCE(total)>headed,{NONZEROKEY}(INDEX({TURNED}(group,total),0,1)),"")`,
  ),
  // The two groups, A above B; a third one, or a score beside none, is an error.
  lambda(
    "SIDES",
    "keys there headed first",
    letting(
      {
        known: `1*(LEN(keys)>0)`,
        one: `INDEX(keys,XMATCH(1,known))`,
        others: `known*(keys<>one)`,
        other: `INDEX(keys,XMATCH(1,others))`,
        stray: `SUM(IF(SEQUENCE({TALL}(keys))>headed,(1-known)*there,0))`,
        wrong: `SUM(others*(keys<>other))+stray`,
        wanted: `{NONZEROKEY}({ONE}(first))`,
        swapped: `IF((wanted="")+(wanted=one)>0,0,IF(wanted=other,1,#VALUE!))`,
      },
      `IF(ISERROR(wrong+swapped),#VALUE!,IF(wrong>0,#VALUE!,IF(swapped,VSTACK(other,one),VSTACK(one,other))))`,
    ),
  ),
  // The difference from the same starting score, its standard error and degrees of freedom.
  lambda(
    "ADJUSTED",
    PAIRS,
    letting(
      {
        ...OFF,
        slope: `products/spread`,
        gap: `{MIDDLE}(beforeA)-{MIDDLE}(beforeB)`,
        freeA: `sizeA-1-spreadA/spread`,
        freeB: `sizeB-1-spreadB/spread`,
        leverage: `gap^2/spread/spread`,
        partA: `{SQUARES}(offAfterA-slope*offBeforeA,afterA)/freeA*(1/sizeA+leverage*spreadA)`,
        partB: `{SQUARES}(offAfterB-slope*offBeforeB,afterB)/freeB*(1/sizeB+leverage*spreadB)`,
        whole: `partA+partB`,
        free: `1/((partA/whole)^2/freeA+(partB/whole)^2/freeB)`,
        few: `MIN(sizeA,sizeB)<3`,
      },
      `IF(spread=0,{"";"";""},VSTACK({MIDDLE}(afterA)-{MIDDLE}(afterB)-slope*gap,` +
        `IF(few,"",SQRT(whole)),IF(few,"",IF(whole=0,"",free))))`,
    ),
  ),
  // Morris's effect size of how much more A changed, and its standard error.
  lambda(
    "GROUPEFFECT",
    PAIRS,
    letting(
      {
        ...OFF,
        gap: `{MIDDLE}({DIFFERENCE}(afterA,beforeA))-{MIDDLE}({DIFFERENCE}(afterB,beforeB))`,
        spreadAfter: `{SQUARES}(offAfterA,afterA)+{SQUARES}(offAfterB,afterB)`,
        close: `IF(spreadAfter=0,0,products/SQRT(spread)/SQRT(spreadAfter))`,
        tie: `IF(ABS(close)>1-0.000000000001,IF(close>0,1,-1),close)`,
        df: `sizeA+sizeB-2`,
        factor: `{HEDGES}(df)`,
        size: `factor*gap/SQRT(spread/df)`,
        noise: `2*(1-tie)*(1/sizeA+1/sizeB)`,
        variance: `factor^2*(df/(df-2))*(noise+size^2)-size^2`,
        error: `IF(spreadAfter=0,"",IF(variance>0,SQRT(variance),""))`,
      },
      `IF((df<3)+(spread=0)>0,{"";""},VSTACK(size,error))`,
    ),
  ),
];
