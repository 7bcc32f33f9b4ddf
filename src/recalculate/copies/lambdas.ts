import { pickCurve } from "./curves";

/*
 * The functions that a formula can express, as formulas: what a copy for people without the add-in
 * calculates with. Each works on single cells and, by the rules of spreadsheets for arithmetic on
 * ranges, on whole ranges at once, so conditions are sums and products (AND and OR would make one
 * answer of a whole range). What is empty is judged by its length: not every spreadsheet tells 0
 * from "".
 */

/** A function of the copy: a name in the workbook that stands for a LAMBDA. */
export interface Lambda {
  readonly name: string;
  readonly parameters: readonly Parameter[];
  /** The formula; other functions of the copy are written as `{NAME}`. */
  readonly body: string;
}

/** A parameter, and what stands for it in a call that leaves it out. */
export interface Parameter {
  readonly name: string;
  readonly omitted?: string;
}

const lambda = (name: string, parameters: string, body: string): Lambda => ({
  name,
  parameters: parameters.split(" ").map((parameter) => {
    const [parameterName, omitted] = parameter.split("=");
    return { name: parameterName, ...(omitted !== undefined && { omitted }) };
  }),
  body,
});

/** `""` while any of these is missing, and any error they hold passed on; else the formula. */
function unless(missing: string, formula: string): string {
  const each = missing.split(" ").map((name) => `(LEN(${name})=0)`);
  // A single condition stays one: TRUE and FALSE are both above 0 to a spreadsheet.
  return `IF(${each.length > 1 ? `${each.join("+")}>0` : each[0]},"",${formula})`;
}

const hasDigit = Array.from({ length: 10 }, (_, digit) => `ISNUMBER(FIND("${digit}",plain))`);
const noNumber = [..."%$€£() "].map((sign) => `ISNUMBER(FIND("${sign}",plain))`);

/** How cells are read: as the functions of the add-in read them. */
const readers: readonly Lambda[] = [
  // "1,250" is 1.25 to one reader and 1250 to the next: it is refused. "2,5" can only be one.
  lambda(
    "NUMBER",
    "value strict",
    `LET(plain,SUBSTITUTE(TRIM(value),UNICHAR(8722),"-"),comma,IFERROR(FIND(",",plain),0),` +
      `ambiguous,(comma>1)*(comma<5)*(LEN(plain)-comma=3)*(LEFT(plain)<>"0"),` +
      `number,IF(ambiguous+${noNumber.join("+")}>0,"",` +
      `IFERROR(NUMBERVALUE(SUBSTITUTE(plain,",","."),".","'"),"")),` +
      `IF(ISNUMBER(value),value,IF(ISLOGICAL(value),#VALUE!,IF(plain="","",` +
      `IF(ISNUMBER(number),number,IF(strict+${hasDigit.join("+")}>0,#VALUE!,""))))))`,
  ),
  lambda(
    "POSITIVE",
    "value",
    `LET(number,{NUMBER}(value,0),IF(LEN(number)=0,"",IF(number=0,"",IF(number<0,#VALUE!,number))))`,
  ),
  // Nobody has done 40,000 reps: such a number is a date in the wrong column.
  lambda(
    "REPS",
    "value",
    `LET(number,{POSITIVE}(value),IF(LEN(number)=0,"",IF(number>=40000,#VALUE!,number)))`,
  ),
  lambda(
    "RESERVE",
    "value",
    `LET(number,{NUMBER}(value,0),IF(LEN(number)=0,"",IF((number<0)+(number>=40000)>0,#VALUE!,number)))`,
  ),
  lambda(
    "WHOLE",
    "value most",
    `LET(number,{POSITIVE}(value),IF(LEN(number)=0,"",` +
      `IF((number<>INT(number))+(number>most)>0,#VALUE!,number)))`,
  ),
  // A setting has a usual value, which a blank stands for; a word in its place is a mistake.
  lambda(
    "SETTING",
    "value usual",
    `LET(number,{NUMBER}(value,1),IF(LEN(number)=0,usual,IF(number<0,#VALUE!,number)))`,
  ),
  lambda("USUAL", "number usual", `IF(number=0,usual,number)`),
  lambda(
    "EQUATION",
    "value",
    `LET(number,IFERROR({NUMBER}(value,1),"word"),word,LOWER(TRIM(value)),` +
      `IF(number="word",IF(ISNUMBER({CURVE}(2,word)),word,#VALUE!),IF(LEN(number)=0,"epley",IF(number=0,"epley",` +
      `IF(number<0,#VALUE!,number)))))`,
  ),
  lambda(
    "DIRECTION",
    "value",
    `LET(word,LOWER(TRIM(value)),IF((word="")+(word="0")>0,"nearest",` +
      `IF((word="nearest")+(word="down")+(word="up")>0,word,#VALUE!)))`,
  ),
];

/** The load-repetition curve and rounding; what is judged equal is equal to a relative 1e-9. */
const shared: readonly Lambda[] = [
  lambda(
    "CURVE",
    "t equation",
    pickCurve(({ at }) => at("t")),
  ),
  lambda(
    "CURVEREPS",
    "fraction equation",
    pickCurve(({ inverse }) => inverse("fraction")),
  ),
  lambda("CAP", "equation", `IF((equation="brzycki")+(equation="lander")>0,15,30)`),
  lambda(
    "FRACTION",
    "t equation",
    `IF((t<1)+(t>{CAP}(equation))>0,#VALUE!,IF(ISNUMBER(equation),1/(1+(t-1)/equation),` +
      `IF(t>=2,{CURVE}(t,equation),1-(1-{CURVE}(2,equation))*(t-1))))`,
  ),
  lambda(
    "REPSTOFAILURE",
    "fraction equation",
    `IF(ISNUMBER(equation),1+equation*(1/fraction-1),` +
      `IF(fraction<={CURVE}(2,equation),{CURVEREPS}(fraction,equation),` +
      `1+(1-fraction)/(1-{CURVE}(2,equation))))`,
  ),
  lambda(
    "TOMULTIPLE",
    "value multiple direction",
    `LET(steps,value/multiple,whole,ROUND(steps,0),lower,INT(steps),over,steps-lower-0.5,` +
      `dust,0.000000001*ABS(steps),IF(multiple=0,value,multiple*IF(ABS(steps-whole)<=dust,whole,` +
      `IF(direction="down",lower,IF(direction="up",lower+1,` +
      `IF(direction="nearest",lower+(over>dust),lower+(over+dust>=0)))))))`,
  ),
  // Rounded to the nearest, but never above the maximum.
  lambda(
    "TOLOAD",
    "value most multiple",
    `LET(nearest,{TOMULTIPLE}(value,multiple,"nearest"),` +
      `IF(nearest-most>0.000000001*nearest,{TOMULTIPLE}(value,multiple,"down"),nearest))`,
  ),
];

/** The add-in's functions, each under its own name and with its own arguments. */
const functions: readonly Lambda[] = [
  lambda(
    "E1RM",
    'load reps reserve=0 equation="epley"',
    `LET(weight,{POSITIVE}(load),done,{REPS}(reps),spare,{RESERVE}(reserve),` +
      `curve,{EQUATION}(equation),` +
      unless("weight done spare curve", `weight/{FRACTION}(done+spare,curve)`) +
      `)`,
  ),
  lambda(
    "PERCENT1RM",
    'reps reserve=0 equation="epley"',
    `LET(done,{REPS}(reps),spare,{RESERVE}(reserve),curve,{EQUATION}(equation),` +
      unless("done spare curve", `{FRACTION}(done+spare,curve)`) +
      `)`,
  ),
  lambda(
    "REPSAT",
    'load oneRepMax reserve=0 equation="epley"',
    `LET(weight,{POSITIVE}(load),most,{POSITIVE}(oneRepMax),spare,{RESERVE}(reserve),` +
      `curve,{EQUATION}(equation),share,weight/most,` +
      `total,IFERROR({REPSTOFAILURE}(IF(share>1,1,share),curve),` +
      `IF(ISERROR({FRACTION}(1,curve)),#VALUE!,#N/A)),` +
      unless(
        "weight most spare curve",
        `IF(share-1>0.000000001*share,0,IF(total>{CAP}(curve)*1.000000001,#N/A,` +
          `IF(total>spare,total-spare,0)))`,
      ) +
      `)`,
  ),
  lambda(
    "RELATIVESTRENGTH",
    "load bodyMass exponent=1",
    `LET(weight,{POSITIVE}(load),mass,{POSITIVE}(bodyMass),` +
      `power,{USUAL}({SETTING}(exponent,1),1),` +
      unless("weight mass power", `weight/mass^power`) +
      `)`,
  ),
  lambda(
    "LOADFOR",
    'oneRepMax reps reserve=0 increment=0 equation="epley"',
    `LET(most,{POSITIVE}(oneRepMax),target,{REPS}(reps),spare,{RESERVE}(reserve),` +
      `step,{SETTING}(increment,0),curve,{EQUATION}(equation),` +
      unless(
        "most target spare step curve",
        `{TOLOAD}(most*{FRACTION}(target+spare,curve),most,step)`,
      ) +
      `)`,
  ),
  lambda(
    "NEXTLOAD",
    'load reps reserve targetReps targetReserve increment=0 equation="epley"',
    `LET(weight,{POSITIVE}(load),done,{REPS}(reps),spare,{RESERVE}(reserve),` +
      `target,{REPS}(targetReps),left,{RESERVE}(targetReserve),` +
      `step,{SETTING}(increment,0),curve,{EQUATION}(equation),` +
      unless(
        "weight done spare target left step curve",
        `LET(most,weight/{FRACTION}(done+spare,curve),IF(spare-5>0.000000001*spare,#VALUE!,` +
          `{TOLOAD}(most*{FRACTION}(target+left,curve),most,step)))`,
      ) +
      `)`,
  ),
  lambda(
    "ROUNDLOAD",
    'load increment direction="nearest"',
    `LET(weight,{POSITIVE}(load),step,{SETTING}(increment,0),way,{DIRECTION}(direction),` +
      unless("weight step way", `{TOMULTIPLE}(weight,step,way)`) +
      `)`,
  ),
  lambda(
    "RPETORIR",
    "rpe",
    `LET(effort,{POSITIVE}(rpe),` +
      unless("effort", `IF((effort<5)+(effort>10)>0,#VALUE!,10-effort)`) +
      `)`,
  ),
  lambda(
    "RIRTORPE",
    "reserve",
    `LET(spare,{RESERVE}(reserve),` + unless("spare", `IF(spare>5,#VALUE!,10-spare)`) + `)`,
  ),
  lambda(
    "RESERVETAPER",
    "weeks from to week step=1",
    `LET(length,{WHOLE}(weeks,520),first,{RESERVE}(from),last,{RESERVE}(to),` +
      `number,{WHOLE}(week,length),multiple,{SETTING}(step,1),` +
      `spare,IF(length=1,last,first+(last-first)*(number-1)/(length-1)),` +
      unless("length first last number multiple", `{TOMULTIPLE}(spare,multiple,"tie up")`) +
      `)`,
  ),
  // Without a week: all of them, one below the other.
  lambda(
    "RESERVEWEEKS",
    "weeks from to step=1",
    `LET(length,{WHOLE}(weeks,520),` +
      unless("length", `{RESERVETAPER}(length,from,to,SEQUENCE(length),step)`) +
      `)`,
  ),
  lambda(
    "MDC",
    "typicalError confidence=0.95 df=0",
    `LET(error,{POSITIVE}(typicalError),level,{USUAL}({SETTING}(confidence,0.95),0.95),` +
      `degrees,{SETTING}(df,0),reach,IF(level>=1,#VALUE!,IF(degrees=0,NORMSINV((1+level)/2),` +
      `IF(degrees=INT(degrees),TINV(1-level,degrees),#N/A))),` +
      unless("error reach", `error*SQRT(2)*reach`) +
      `)`,
  ),
];

/** Everything a copy may need, by name. */
export const lambdas: ReadonlyMap<string, Lambda> = new Map(
  [...readers, ...shared, ...functions].map((lambda) => [lambda.name, lambda]),
);

/** The add-in's functions that a copy can do without the add-in. */
export const closedForms: ReadonlySet<string> = new Set(functions.map(({ name }) => name));

/** What the names of these functions start with in a workbook. */
export const prefix = "PORTABLE_";

/** A function's formula as a person reads it: the LAMBDA that its name stands for. */
export function lambdaText({ parameters, body }: Lambda): string {
  const names = parameters.map(({ name }) => name).join(",");
  return `LAMBDA(${names},${body.replace(reference, (_, name: string) => prefix + name)})`;
}

const reference = /\{([A-Z0-9]+)\}/g;

/** The names of the functions that these use, themselves among them, each after those it uses. */
export function withHelpers(names: Iterable<string>): string[] {
  const found = new Set<string>();
  const visit = (name: string) => {
    if (found.has(name)) return;
    for (const [, used] of lambdas.get(name)!.body.matchAll(reference)) visit(used);
    found.add(name);
  };
  for (const name of names) visit(name);
  return [...found];
}
