import { readColumns } from "./columns";
import { choose, lambda, letting, type Lambda, type Names } from "./lambda";
import { columnReport } from "./columnReport";

/** What is worked out of the changes of one group by themselves. */
const changeOf = (group: "A" | "B"): Names => ({
  [`size${group}`]: `SUM(in${group})`,
  [`early${group}`]: `FILTER(scoresBefore,in${group})`,
  [`late${group}`]: `FILTER(scoresAfter,in${group})`,
  [`changes${group}`]: `{DIFFERENCE}(late${group},early${group})`,
  [`change${group}`]: `{MIDDLE}(changes${group})`,
  [`off${group}`]: `IF(size${group}<2,#N/A,{SPREAD}(changes${group}))`,
  [`error${group}`]: `IF(off${group}=0,#N/A,off${group}/SQRT(size${group}))`,
  [`reach${group}`]: `{REACH}(level,size${group}-1)*error${group}`,
});

const partsOf = (group: "A" | "B"): Names => ({
  [`n ${group}`]: `size${group}`,
  [`lost ${group}`]: `SUM(1*is${group})-size${group}`,
  [`change ${group}`]: `change${group}`,
  [`low ${group}`]: `change${group}-reach${group}`,
  [`high ${group}`]: `change${group}+reach${group}`,
  [`p ${group}`]: `{BOTHTAILS}(change${group}/error${group},size${group}-1)`,
});

export const groupChange: readonly Lambda[] = [
  // How far a spread may reach beyond another, down (way -1) or up (way 1); a spread that is known has 0 degrees of freedom.
  lambda(
    "EXTRASPREAD",
    "seen free noise degrees level way",
    letting(
      {
        excess: `(seen-noise)*(seen+noise)`,
        ofSeen: `seen^2*(1-free/{CHISQUARE}((1-way*level)/2,free))`,
        ofNoise: `IF(degrees=0,0,noise^2*(1-degrees/{CHISQUARE}((1+way*level)/2,degrees)))`,
      },
      `SQRT({GREATER}(0,excess+way*SQRT(ofSeen^2+ofNoise^2)))`,
    ),
  ),
  lambda("PRESENT", "value", `IF(LEN(value)=0,#N/A,value)`),
  lambda(
    "GROUPREADING",
    "nameA nameB difference p level",
    choose(
      [
        [`ISERROR(difference+p)`, `"not enough to go by to compare "&nameA&" and "&nameB`],
        [
          `1-{ABOVE}(1-level,p)`,
          `"no difference between "&nameA&" and "&nameB&" shown, which does not show they are the same"`,
        ],
      ],
      `"from the same starting score, "&nameA&" ended "&IF(difference>0,"higher","lower")&" than "&nameB`,
    ),
  ),
  lambda(
    "GROUPCHANGE",
    'group before after first="" confidence=0.95 part=""',
    columnReport(
      {
        ...readColumns(
          {
            scoresBefore: ["before", "{SCORE}(before)"],
            scoresAfter: ["after", "{SCORE}(after)"],
          },
          undefined,
          "group",
        ),
        level: `{ONE}({SHARE}(confidence,0.95))`,
        keys: `{GROUPKEYS}(group,total,headed)`,
        there: `{DOWN}({THERE}(before),total,0)+{DOWN}({THERE}(after),total,0)`,
        sides: `{SIDES}(keys,there,headed,first)`,
        isA: `keys=INDEX(sides,1)`,
        isB: `keys=INDEX(sides,2)`,
        names: `{TURNED}(group,total)`,
        nameA: `{TRIMMED}(INDEX(names,XMATCH(TRUE,isA),1)&"")`,
        nameB: `{TRIMMED}(INDEX(names,XMATCH(TRUE,isB),1)&"")`,
        both: `ISNUMBER(scoresBefore)*ISNUMBER(scoresAfter)`,
        inA: `both*isA`,
        inB: `both*isB`,
        ...changeOf("A"),
        ...changeOf("B"),
        gap: `changeA-changeB`,
        partA: `offA^2/sizeA`,
        partB: `offB^2/sizeB`,
        whole: `IF(partA+partB=0,#N/A,partA+partB)`,
        free: `1/((partA/whole)^2/(sizeA-1)+(partB/whole)^2/(sizeB-1))`,
        reach: `{REACH}(level,free)*SQRT(whole)`,
        adjusted: `{ADJUSTED}(earlyA,lateA,earlyB,lateB)`,
        ended: `{PRESENT}(INDEX(adjusted,1))`,
        error: `{PRESENT}(INDEX(adjusted,2))`,
        freeEnded: `{PRESENT}(INDEX(adjusted,3))`,
        reachEnded: `{REACH}(level,freeEnded)*error`,
        chance: `{BOTHTAILS}(ended/error,freeEnded)`,
        effect: `{GROUPEFFECT}(earlyA,lateA,earlyB,lateB)`,
        // Where either group does not spread there is nothing to compare by.
        compared: `IF(offA*offB=0,#N/A,offA)`,
      },
      `0*level+0*ROWS(sides)`,
      `sizeA*sizeB=0`,
      {
        "group A": "nameA",
        "group B": "nameB",
        ...partsOf("A"),
        ...partsOf("B"),
        difference: "gap",
        "standard error": "SQRT(whole)",
        low: "gap-reach",
        high: "gap+reach",
        t: "gap/SQRT(whole)",
        df: "free",
        p: "{BOTHTAILS}(gap/SQRT(whole),free)",
        "adjusted difference": "ended",
        "adjusted standard error": "error",
        "adjusted low": "ended-reachEnded",
        "adjusted high": "ended+reachEnded",
        "adjusted df": "freeEnded",
        "adjusted p": "chance",
        "effect size": "{PRESENT}(INDEX(effect,1))",
        "effect standard error": "{PRESENT}(INDEX(effect,2))",
        "extra spread in A": "IF({ABOVE}(offA,offB),SQRT((offA-offB)*(offA+offB)),#N/A)",
        "extra spread low": "{EXTRASPREAD}(compared,sizeA-1,offB,sizeB-1,level,-1)",
        "extra spread high": "{EXTRASPREAD}(compared,sizeA-1,offB,sizeB-1,level,1)",
        "extra spread p": "{RATIOTAIL}((compared/offB)^2,sizeA-1,sizeB-1)",
        reading: "{GROUPREADING}(nameA,nameB,ended,chance,level)",
      },
    ),
  ),
];
