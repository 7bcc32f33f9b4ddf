import { LOGGED, NONE, readColumns, whereGood } from "./columns";
import { lambda, letting, type Lambda } from "./lambda";

export const muscleSets: readonly Lambda[] = [
  // What two exercises share that are the same; "" for a blank.
  lambda(
    "LABELKEY",
    "cells",
    `IF(LEN(TRIM(cells))=0,"",IF(ISNUMBER(cells),IF(cells=0,"",cells&""),LOWER(TRIM(cells))))`,
  ),
  // A table of shares, each a number and 0 in the first row and column; what is wrong with it is its error.
  lambda(
    "SHARES",
    "shares titled keys",
    letting(
      {
        down: `SEQUENCE({TALL}(shares))`,
        across: `SEQUENCE(1,{WIDE}(shares))`,
        filled: `{SOMETHING}(shares)`,
        stray: `(across>1)*(titled=0)*MMULT(0*TRANSPOSE(down)+1,1*filled)`,
        read: `IF({LEFTOUT}(shares),0,{SETTING}(shares,0))`,
        rows: `IF((down>1)*(titled>0),IF(read>1,#VALUE!,read),0)`,
        nobodys: `(keys=${NONE})*MMULT(rows,0*TRANSPOSE(across)+1)`,
        twice: `(keys<>${NONE})*(XMATCH(keys,keys)<>down)`,
      },
      `IF(({TALL}(shares)<2)+(SUM(titled)=0)>0,#VALUE!,IF(SUM(1*ISERROR(keys))+SUM(1*ISERROR(rows))+SUM(stray)>0,#VALUE!,` +
        `IF(SUM(nobodys)+SUM(twice)>0,#VALUE!,rows)))`,
    ),
  ),
  lambda(
    "MUSCLESETS",
    'exercise reps shares reserve=0 sets=1 within=4 by=""',
    letting(
      {
        ...readColumns(
          { done: LOGGED.done, spare: LOGGED.spare, times: LOGGED.times },
          "by",
          "exercise",
        ),
        titled: `IF(SEQUENCE(1,{WIDE}(shares))>1,{HEADING}(INDEX(shares,1,0)),0)`,
        named: `IF(SEQUENCE({TALL}(shares))>1,{LABELKEY}(INDEX(shares,0,1)),"")`,
        keys: `IF(LEN(named)=0,${NONE},named)`,
        rows: `{SHARES}(shares,titled,keys)`,
        lifts: `{TURNED}(exercise,total)`,
        counted: `ISNUMBER(done)`,
        places: `IF(counted,XMATCH({LABELKEY}(lifts),keys),0)`,
        near: `{ONE}({SETTING}(within,4))`,
        amounts: `IF(counted*ISNUMBER(spare),IF(LEN(times)=0,1,times)*(1-{ABOVE}(spare,near)),0)`,
        found: `IF(({WIDE}(lifts)>1)+SUM(1*ISERROR(rows))+SUM(1*ISERROR(places))>0,#VALUE!,IF(near>=40000,#VALUE!,0))`,
      },
      whereGood(
        `IF(found=0,LET(muscles,FILTER(INDEX(shares,1,0),titled>0),` +
          `parts,MMULT(amounts*(places=SEQUENCE(1,{TALL}(shares))),FILTER(rows,titled>0)),` +
          `IF(keyed>0,{BYMUSCLE}(by,total,headed,counted,muscles,parts),` +
          `VSTACK({"muscle","close sets"},HSTACK(TRANSPOSE(muscles),TRANSPOSE(MMULT(0*SEQUENCE(1,total)+1,parts)))))))`,
      ),
    ),
  ),
  // A table with a row for each key and a column for each muscle.
  lambda(
    "BYMUSCLE",
    "by total headed counted muscles parts",
    letting(
      {
        keys: `{KEYCELLS}(by,total,headed)`,
        same: `{SAMEKEYS}(keys,counted)`,
        fresh: `{FIRSTS}(same,counted)`,
        top: `HSTACK({KEYHEADS}(by,total,headed),muscles)`,
      },
      `IF(SUM(1*ISERROR(same))>0,#VALUE!,IF(SUM(fresh)=0,top,VSTACK(top,` +
        `HSTACK(FILTER(keys,fresh),MMULT(1*(FILTER(same,fresh)=TRANSPOSE(same)),parts)))))`,
    ),
  ),
];
