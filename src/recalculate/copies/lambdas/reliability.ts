import { lambda, letting, type Lambda } from "./lambda";
import { columnReport } from "./columnReport";

/** The intraclass correlations of one trial: how it ranks the athletes, and how it agrees with another. */
const CONSISTENCY = {
  apart: `between+(k-1)*error`,
  consistency: `IF(apart=0,#N/A,(between-error)/apart)`,
  ratio: `IF(error=0,#N/A,between/error)`,
  leastRatio: `ratio/{FRATIO}((1+level)/2,n-1,df)`,
  mostRatio: `ratio*{FRATIO}((1+level)/2,df,n-1)`,
} as const;
const AGREEMENT = {
  noise: `k*shifts+(k*n-k-n)*error`,
  whole: `n*between+noise`,
  agreement: `IF(whole=0,#N/A,n*(between-error)/whole)`,
  odds: `k*agreement/(n*(1-agreement))`,
  errorPart: `(1+odds*(n-1))*error`,
  freedom: `(odds*shifts+errorPart)^2/((odds*shifts)^2/(k-1)+errorPart^2/df)`,
  // Below 1 the approximation has nothing left to stand on.
  free: `IF(error+shifts=0,#N/A,IF(IFERROR(freedom,0)<1,#N/A,freedom))`,
  below: `{FRATIO}((1+level)/2,n-1,free)`,
  above: `{FRATIO}((1+level)/2,free,n-1)`,
} as const;

export const reliability: readonly Lambda[] = [
  // The ratio of variances that chance stays below, from the end of the beta distribution that keeps its digits.
  lambda(
    "FRATIO",
    "chance df dfBelow",
    letting(
      {
        near: `BETA.INV(chance,df/2,dfBelow/2)`,
        far: `BETA.INV(1-chance,dfBelow/2,df/2)`,
      },
      `IF(far<0.5,dfBelow*(1-far)/(df*far),dfBelow*near/(df*(1-near)))`,
    ),
  ),
  // How many cells of each row hold anything, of cells where 0 is a blank; a single row stands for all and is in none.
  lambda(
    "FILLED",
    "range",
    `IF({TALL}(range)=1,0,MMULT({SOMETHING}(range),SEQUENCE({WIDE}(range),1,1,0)))`,
  ),
  lambda(
    "RELIABILITY",
    'trials confidence=0.95 part=""',
    columnReport(
      {
        total: `{TALL}(trials)`,
        k: `{WIDE}(trials)`,
        headed: `IF(total=1,0,IF({UNTITLED}(trials)>0,0,1))`,
        found: `IF(SEQUENCE(total)>headed,{SCORE}(trials),"")`,
        bad: `SUM(1*ISERROR(found))`,
        level: `{ONE}({SHARE}(confidence,0.95))`,
        every: `1*(MMULT(1*ISNUMBER(found),SEQUENCE(k,1,1,0))=k)`,
        lost: `IF(SEQUENCE(total)>headed,(1-every)*({FILLED}(trials)>0),0)`,
        n: `SUM(every)`,
        df: `(n-1)*(k-1)`,
        scores: `FILTER(found,every)`,
        centre: `{MIDDLE}(scores)`,
        byAthlete: `MMULT(scores-centre,SEQUENCE(k,1,1,0))/k`,
        byTrial: `MMULT(SEQUENCE(1,n,1,0),scores-centre)/n`,
        between: `k*{SQUARES}(byAthlete,scores)/(n-1)`,
        shifts: `n*{SQUARES}(byTrial,scores)/(k-1)`,
        error: `{SQUARES}(scores-centre-byAthlete-byTrial,scores)/df`,
        typical: `SQRT(error)`,
        changes: `{DIFFERENCE}(INDEX(scores,0,k),INDEX(scores,0,1))`,
        shift: `{MIDDLE}(changes)`,
        off: `{SPREAD}(changes)/SQRT(n)`,
        reach: `IF(off=0,#N/A,{REACH}(level,n-1)*off)`,
        ...CONSISTENCY,
        ...AGREEMENT,
      },
      `0*level`,
      `n<2`,
      {
        n: "n",
        dropped: "SUM(lost)",
        trials: "k",
        shift: "shift",
        "shift low": "shift-reach",
        "shift high": "shift+reach",
        "detectable change": "IF(error=0,0,typical*SQRT(2)*{REACH}(level,df))",
        "typical error": "typical",
        df: "df",
        "error low": "IF(error=0,#N/A,SQRT(df*error/{CHISQUARE}((1+level)/2,df)))",
        "error high": "IF(error=0,#N/A,SQRT(df*error/{CHISQUARE}((1-level)/2,df)))",
        "error percent": "IF(centre>0,typical/centre,#N/A)",
        "icc consistency": "consistency",
        "icc consistency low": "IF(apart=0,#N/A,(leastRatio-1)/(leastRatio+k-1))",
        "icc consistency high": "IF(apart=0,#N/A,(mostRatio-1)/(mostRatio+k-1))",
        "icc agreement": "agreement",
        "icc agreement low": "n*(between-below*error)/(below*noise+n*between)",
        "icc agreement high": "n*(above*between-error)/(noise+n*above*between)",
      },
      `k<2`,
    ),
  ),
];
