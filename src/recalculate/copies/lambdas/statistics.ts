import { lambda, letting, type Lambda } from "./lambda";

/*
 * The distributions. A spreadsheet's own t functions cut degrees of freedom to whole numbers, which those of
 * Welch's test are not; its beta distribution takes any, and t is made of it. Degrees of freedom of 0 stand for
 * none, the normal distribution.
 */
export const statistics: readonly Lambda[] = [
  // The chance of a value above t. The page's engine does not know a LAMBDA's own name behind a minus sign: 0-t.
  lambda(
    "TAIL",
    "t df",
    letting(
      { half: `BETA.DIST(df/(df+t^2),df/2,0.5,TRUE)/2` },
      `IF((df=0)+(df>10000000000)>0,NORM.S.DIST(0-t,TRUE),IF(t<0,1-half,half))`,
    ),
  ),
  lambda("BOTHTAILS", "t df", `2*{TAIL}(ABS(t),df)`),
  // How many standard errors an interval reaches each way; from the end of the beta distribution that keeps its digits.
  lambda(
    "REACH",
    "level df",
    letting(
      {
        near: `BETA.INV(level,0.5,df/2)`,
        far: `BETA.INV(1-level,df/2,0.5)`,
      },
      `IF((df=0)+(df>10000000000)>0,-NORM.S.INV((1-level)/2),` +
        `IF(far<0.5,SQRT(df*(1-far)/far),SQRT(df*near/(1-near))))`,
    ),
  ),
  // A spreadsheet's own chi-square cuts degrees of freedom to whole numbers as well; its gamma distribution takes any.
  lambda("CHISQUARE", "chance df", `GAMMA.INV(chance,df/2,2)`),
  // The chance of a ratio of variances at least this large; that below the line is known where it has no degrees of freedom.
  lambda(
    "RATIOTAIL",
    "ratio df dfBelow",
    `IF(dfBelow=0,1-GAMMA.DIST(df*ratio,df/2,2,TRUE),` +
      `BETA.DIST(dfBelow/(dfBelow+df*ratio),dfBelow/2,df/2,TRUE))`,
  ),
  // Hedges' correction for small samples, exact; beyond 1,000 by its series, where logarithms lose digits.
  lambda(
    "HEDGES",
    "df",
    letting(
      { half: `(df-1)/2` },
      `IF(df<=1,#N/A,IF(df<1000,EXP(GAMMALN(df/2)-LN(df/2)/2-GAMMALN(half)),` +
        `SQRT((df-1)/df)*(1-1/(8*half)+1/(128*half^2)+5/(1024*half^3))))`,
    ),
  ),
  // The mean, averaged twice, the second time about the first result, so that rounding cancels.
  lambda(
    "MIDDLE",
    "values",
    `LET(rough,AVERAGE(values),rough+AVERAGE(IF(ISNUMBER(values),values-rough,"")))`,
  ),
  // The sum of squares of how far values are off what was fitted to them; exactly 0 where the fit is perfect.
  lambda(
    "SQUARES",
    "off values",
    `IF(MAX(ABS(off))<=0.00000000000001*MAX(ABS(values)),0,SUM(off^2))`,
  ),
  // The sample standard deviation; exactly 0 where all values are the same.
  lambda(
    "SPREAD",
    "values",
    `LET(centre,{MIDDLE}(values),off,IF(ISNUMBER(values),values-centre,0),` +
      `SQRT({SQUARES}(off,IF(ISNUMBER(values),values,0))/(COUNT(values)-1)))`,
  ),
  // Wilson's interval of a share.
  lambda(
    "WILSONLOW",
    "count total level",
    `LET(z,{REACH}(level,0),share,count/total,IF(count=0,0,` +
      `(count+z^2/2-z*SQRT(total*share*(1-share)+z^2/4))/(total+z^2)))`,
  ),
  lambda("WILSONHIGH", "count total level", `1-{WILSONLOW}(total-count,total,level)`),
  // Fisher's exact test, two-sided, of single values.
  lambda(
    "FISHER",
    "countA nA countB nB",
    letting(
      {
        marked: `countA+countB`,
        least: `MAX(0,marked-nB)`,
        chances: `HYPGEOM.DIST(SEQUENCE(MIN(marked,nA)-least+1,1,least),nA,marked,nA+nB,FALSE)`,
        seen: `HYPGEOM.DIST(countA,nA,marked,nA+nB,FALSE)`,
      },
      `MIN(1,SUM(IF(chances<=seen*1.0000001,chances,0)))`,
    ),
  ),
];
