import { choose, lambda, letting, type Lambda } from "./lambda";
import { clashOf, inShapeOf, LABEL_IN, lifted, oneLabel } from "./lifted";

/** The grid of a chart under its headings; nothing past the equation's cap. */
const gridOf = (cell: string) =>
  letting(
    {
      down: `{LISTED}(reps,{REPS}(reps),SEQUENCE(12))`,
      across: `TRANSPOSE({LISTED}(reserves,{RESERVE}(reserves),SEQUENCE(5,1,0)))`,
      curve: `{ONE}({EQUATION}(equation))`,
      heads: `IF({ONE}({WORD}(scale,"|reserve|rpe|","reserve"))="rpe",10-across,across)`,
      reach: `down+across`,
    },
    `IF(SUM(reach)*0+0*LEN(curve)+SUM(0*LEN(heads))+SUM(1*(reach<1))>0,#VALUE!,` +
      `VSTACK(HSTACK("",heads),HSTACK(down,IF(reach>{CAP}(curve),"",${cell}))))`,
  );

const WARM_UP_INPUTS = ["load", "bar", "increment"];

export const load: readonly Lambda[] = [
  lifted(
    "LOADFOR",
    'oneRepMax reps reserve=0 increment=0 equation="epley"',
    {
      most: `{POSITIVE}(oneRepMax)`,
      target: `{REPS}(reps)`,
      spare: `{RESERVE}(reserve)`,
      step: `{SETTING}(increment,0)`,
      curve: `{EQUATION}(equation)`,
    },
    `{TOLOAD}(most*{FRACTION}(target+spare,curve),most,step)`,
  ),
  lifted(
    "NEXTLOAD",
    'load reps reserve targetReps targetReserve increment=0 equation="epley"',
    {
      weight: `{POSITIVE}(load)`,
      done: `{REPS}(reps)`,
      spare: `{RESERVE}(reserve)`,
      target: `{REPS}(targetReps)`,
      left: `{RESERVE}(targetReserve)`,
      step: `{SETTING}(increment,0)`,
      curve: `{EQUATION}(equation)`,
    },
    letting(
      { most: `weight/{FRACTION}(done+spare,curve)` },
      `IF({ABOVE}(spare,5),#VALUE!,{TOLOAD}(most*{FRACTION}(target+left,curve),most,step))`,
    ),
  ),
  lifted(
    "ROUNDLOAD",
    'load increment direction="nearest"',
    {
      weight: `{POSITIVE}(load)`,
      step: `{SETTING}(increment,0)`,
      way: `{WORD}(direction,"|nearest|down|up|","nearest")`,
    },
    `{TOMULTIPLE}(weight,step,way)`,
  ),
  lambda(
    "PERCENTCHART",
    'reps="" reserves="" equation="epley" scale=""',
    gridOf(`{FRACTION}(reach,curve)`),
  ),
  lambda(
    "LOADCHART",
    'oneRepMax reps="" reserves="" increment=0 equation="epley" scale=""',
    letting(
      {
        most: `{ONE}({POSITIVE}(oneRepMax))`,
        step: `{ONE}({SETTING}(increment,0))`,
      },
      `IF((LEN(most)=0)+0*LEN(step)>0,"",${gridOf(`{TOLOAD}(most*{FRACTION}(reach,curve),most,step)`)})`,
    ),
  ),
  // The loads of a ladder of steps, never below the bar; one that is as heavy as the work set is none.
  lambda(
    "STEPLOADS",
    "weight bar step fractions",
    letting(
      { rounded: `{TOMULTIPLE}(weight*fractions,step,"nearest")` },
      `IF({ABOVE}(bar,weight),#VALUE!,{GREATER}(rounded,bar))`,
    ),
  ),
  // The steps of a warm-up, fraction and reps, without a heading and blank rows.
  lambda(
    "LADDER",
    "steps",
    letting(
      {
        headed: `IF({TALL}(steps)=1,0,IF({UNTITLED}(steps)>0,0,1))`,
        fractions: `IF(SEQUENCE(ROWS(steps))>headed,{POSITIVE}(INDEX(steps,0,1)),"")`,
        times: `IF(SEQUENCE(ROWS(steps))>headed,{REPS}(INDEX(steps,0,2)),"")`,
        filled: `LEN(fractions)+LEN(times)`,
        half: `(LEN(fractions)=0)<>(LEN(times)=0)`,
      },
      `IF({GIVEN}(steps)=0,{0.4,8;0.6,5;0.75,3;0.9,1},IF({WIDE}(steps)<>2,#VALUE!,` +
        `IF(SUM(1*ISERROR(filled))>0,#VALUE!,IF(SUM(1*half)>0,#VALUE!,` +
        `IF(SUM(filled)=0,{0.4,8;0.6,5;0.75,3;0.9,1},` +
        `FILTER(HSTACK(fractions,times),filled>0))))))`,
    ),
  ),
  // What the named part says of one work set's ladder.
  lambda(
    "WARMUP",
    "weight bar step ladder what",
    letting(
      {
        loads: `{STEPLOADS}(weight,bar,step,INDEX(ladder,0,1))`,
        times: `INDEX(ladder,0,2)`,
        light: `{ABOVE}(weight,loads)`,
      },
      choose(
        [
          [`{UNFIT}(ladder)>0`, "#VALUE!"],
          [`what=""`, `IF(ISERROR(SUM(loads)),#VALUE!,"")`],
          [`what="summary"`, `TEXTJOIN(", ",TRUE,IF(light,loads&" x "&times,""))`],
          [`what="sets"`, `SUM(1*light)+0*SUM(loads)`],
          [`what="volume load"`, `SUM(light*loads*times)`],
        ],
        "#VALUE!",
      ),
    ),
  ),
  // How many steps are heavier than the work set, or no whole number of reps.
  lambda(
    "UNFIT",
    "ladder",
    `LET(times,INDEX(ladder,0,2),SUM((INDEX(ladder,0,1)>1)+(times<>INT(times))+(times<1)+(times>100)))`,
  ),
  lambda(
    "WARMUPSETS",
    'load bar=0 increment=0 steps="" part=""',
    letting(
      {
        label: LABEL_IN,
        named: oneLabel(["summary", "sets", "volume load"]),
        ladder: `{LADDER}(steps)`,
        weight: `{POSITIVE}(load)`,
        least: `{SETTING}(bar,0)`,
        step: `{SETTING}(increment,0)`,
        waits: `(LEN(weight)=0)+0*LEN(least)+0*LEN(step)`,
        // A table is made of one load: the first argument that is a range, or bad, is the error.
        alone: `(LEN({ONE}(weight))=0)+0*LEN({ONE}(least))+0*LEN({ONE}(step))`,
        each: `ISERROR(waits)+ISERROR(label)>=0`,
        chosen:
          `MAP(IF(each,waits),IF(each,weight),IF(each,least),IF(each,step),IF(each,label),` +
          `LAMBDA(wait,work,from,by,what,IF(wait>0,"",{WARMUP}(work,from,by,ladder,what))))`,
      },
      `IF(ISERROR(SUM(ladder)),#VALUE!,IF(named,IF(${clashOf(WARM_UP_INPUTS)}>0,#VALUE!,${inShapeOf(WARM_UP_INPUTS, "chosen")}),` +
        `IF(alone>0,"",{WARMUPROWS}({STEPLOADS}(weight,least,step,INDEX(ladder,0,1)),weight,ladder))))`,
    ),
  ),
  lambda(
    "WARMUPROWS",
    "loads weight ladder",
    letting(
      { light: `{ABOVE}(weight,loads)`, top: `{"load","reps"}` },
      `IF({UNFIT}(ladder)>0,#VALUE!,IF(SUM(1*light)=0,top,` +
        `VSTACK(top,FILTER(HSTACK(loads,INDEX(ladder,0,2)),light))))`,
    ),
  ),
  lifted(
    "RPETORIR",
    "rpe",
    { effort: `{POSITIVE}(rpe)` },
    `IF((effort<5)+(effort>10)>0,#VALUE!,10-effort)`,
  ),
  lifted("RIRTORPE", "reserve", { spare: `{RESERVE}(reserve)` }, `IF(spare>5,#VALUE!,10-spare)`),
];
