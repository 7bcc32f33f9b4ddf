import { pickCurve } from "./curves";
import { lambda, type Lambda } from "./lambda";

/** The load-repetition curve and rounding; what is judged equal is equal to a relative 1e-9. */
export const curve: readonly Lambda[] = [
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
  // Whether one number is above another by more than a relative 1e-9.
  lambda("ABOVE", "one other", `one-other>0.000000001*IF(ABS(one)>ABS(other),ABS(one),ABS(other))`),
  lambda("LESSER", "one other", `IF(one<other,one,other)`),
  lambda("GREATER", "one other", `IF(one>other,one,other)`),
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
      `IF({ABOVE}(nearest,most),{TOMULTIPLE}(value,multiple,"down"),nearest))`,
  ),
  // The difference without binary dust, so that 10.3 - 5.3 is 5.
  lambda(
    "DIFFERENCE",
    "one other",
    `LET(scale,{GREATER}(ABS(one),ABS(other)),decimals,14+INT(-LOG10(scale)),` +
      `IF(scale=0,0,IF((decimals>0)*(decimals<=100)>0,ROUND(one-other,decimals),one-other)))`,
  ),
];
