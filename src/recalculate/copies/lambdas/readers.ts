import { curves } from "./curves";
import { choose, lambda, letting, type Lambda } from "./lambda";

/*
 * How cells are read: as the functions of the add-in read them (src/cells). A reader gives a number, `""`
 * where there is none, or what is wrong with it. What is empty is judged by its length: not every
 * spreadsheet tells 0 from "".
 */

/** The number is `""`, and stays that; or it is judged. */
const judged = (read: string, number: string) =>
  `LET(number,${read},IF(LEN(number)=0,"",${number}))`;

const hasDigit = [..."0123456789½¼¾⅓⅔"].map((digit) => `ISNUMBER(FIND("${digit}",plain))`);
const noNumber = [..."%$€£()'/: "].map((sign) => `ISNUMBER(FIND("${sign}",plain))`);

/** A cell's text without outer blanks, and with the hyphen for the typographer's minus sign. */
const TIDY = `TRIM(SUBSTITUTE(SUBSTITUTE(value,UNICHAR(8722),"-"),UNICHAR(160)," "))`;

/** Units that a number may carry by mistake; "10RM" has none, it is a heading. */
const UNITS =
  "kg kgs kilo kilos kilogram kilograms lb lbs # pound pounds g st cm mm m metre metres meter meters in ft s sec secs " +
  "second seconds min mins minute minutes h hr hrs hour hours w watt watts n % x rep reps set sets rir rpe day days " +
  "week weeks wk wks";

/** The text without what numbers are made of. */
const besideNumbers = [..."0123456789.,'’ "].reduce(
  (text, sign) => `SUBSTITUTE(${text},"${sign}","")`,
  "unsigned",
);

export const readers: readonly Lambda[] = [
  // The number that a text is. "1,250" is 1.25 to one reader and 1250 to the next; "2,5" can only be one.
  lambda(
    "SPOKEN",
    "plain",
    letting(
      {
        bare: `IF((LEFT(plain)="-")+(LEFT(plain)="+")>0,MID(plain,2,99),plain)`,
        comma: `IFERROR(FIND(",",bare),0)`,
        ambiguous:
          `(comma>1)*(comma<5)*(LEN(bare)-comma=3)*(LEFT(bare)<>"0")*` +
          `(1-ISNUMBER(SEARCH("e",bare)))`,
      },
      `IF((LEN(plain)=0)+ambiguous+${noNumber.join("+")}>0,"",` +
        `IFERROR(NUMBERVALUE(SUBSTITUTE(plain,",","."),".","'"),""))`,
    ),
  ),
  // A number of no proportion is refused, and so is an error that no function of the add-in gives.
  lambda(
    "NUMBER",
    "value strict",
    letting(
      {
        plain: TIDY,
        number: `IF(ISNUMBER(value),value,{SPOKEN}(plain))`,
      },
      choose(
        [
          ["ISERROR(value)", `IF((ERROR.TYPE(value)>3)*(ERROR.TYPE(value)<6)>0,#VALUE!,value)`],
          ["ISLOGICAL(value)", "#VALUE!"],
          [`plain=""`, `""`],
          [
            "ISNUMBER(number)",
            `IF((ABS(number)>1E+100)+(number<>0)*(ABS(number)<1E-100)>0,#VALUE!,number)`,
          ],
          [`strict+${hasDigit.join("+")}>0`, "#VALUE!"],
        ],
        `""`,
      ),
    ),
  ),
  // A number that cannot be 0: there 0 is a blank.
  lambda("SCORE", "value", judged(`{NUMBER}(value,0)`, `IF(number=0,"",number)`)),
  lambda("POSITIVE", "value", judged(`{SCORE}(value)`, `IF(number<0,#VALUE!,number)`)),
  lambda("UPTO", "value most", judged(`{POSITIVE}(value)`, `IF(number>most,#VALUE!,number)`)),
  lambda("NOTBELOW", "value", judged(`{NUMBER}(value,0)`, `IF(number<0,#VALUE!,number)`)),
  // Nobody has done 40,000 reps: such a number is a date in the wrong column.
  lambda("REPS", "value", judged(`{POSITIVE}(value)`, `IF(number>=40000,#VALUE!,number)`)),
  lambda("RESERVE", "value", judged(`{NOTBELOW}(value)`, `IF(number>=40000,#VALUE!,number)`)),
  lambda(
    "WHOLE",
    "value least most",
    judged(
      `{POSITIVE}(value)`,
      `IF((number<>INT(number))+(number<least)+(number>most)>0,#VALUE!,number)`,
    ),
  ),
  lambda(
    "HOWMANY",
    "value",
    judged(`{NUMBER}(value,0)`, `IF((number<>INT(number))+(number<0)>0,#VALUE!,number)`),
  ),
  lambda("CORRELATION", "value", judged(`{NUMBER}(value,0)`, `IF(ABS(number)>1,#VALUE!,number)`)),
  // A setting has a usual value, which a blank stands for; a word in its place is a mistake.
  lambda(
    "SETTING",
    "value usual",
    `LET(number,{NUMBER}(value,1),IF(LEN(number)=0,usual,IF(number<0,#VALUE!,number)))`,
  ),
  lambda("USUALLY", "value usual", `LET(number,{SETTING}(value,usual),IF(number=0,usual,number))`),
  // How a table leaves a cell out: a sign, and no word, which may mean something.
  lambda(
    "LEFTOUT",
    "value",
    `IF(ISTEXT(value),LET(plain,value&"",EXACT(LOWER(plain),UPPER(plain))*(${hasDigit.join("+")}=0)),0)`,
  ),
  // A share between 0 and 1, such as a confidence.
  lambda("SHARE", "value usual", `LET(number,{USUALLY}(value,usual),IF(number>=1,#VALUE!,number))`),
  lambda(
    "EQUATION",
    "value",
    letting(
      { number: `IFERROR({NUMBER}(value,1),"word")`, word: `LOWER(TRIM(value))` },
      choose(
        [
          [`ISERROR(value)`, `{NUMBER}(value,1)`],
          [`ISLOGICAL(value)`, "#VALUE!"],
          [
            `number="word"`,
            `IF(${Object.keys(curves)
              .map((name) => `(word="${name}")`)
              .join("+")}>0,word,#VALUE!)`,
          ],
          [`LEN(number)=0`, `"epley"`],
          [`number=0`, `"epley"`],
          [`number<0`, "#VALUE!"],
        ],
        "number",
      ),
    ),
  ),
  // One of the words in a list that bars part and surround; a blank stands for the first of them.
  lambda(
    "WORD",
    "value list usual",
    letting(
      { word: `LOWER(TRIM(value))` },
      choose(
        [
          [`ISERROR(value)`, `{NUMBER}(value,1)`],
          [`LEN(word)=0`, "usual"],
          [`IF(ISNUMBER(value),value=0,FALSE)`, "usual"],
          [`ISNUMBER(FIND("|",word))`, "#VALUE!"],
          [`ISNUMBER(FIND("|"&word&"|",list))`, "word"],
        ],
        "#VALUE!",
      ),
    ),
  ),
  // Text that can head a column: anything but a number, or a number followed by a unit.
  lambda(
    "HEADING",
    "value",
    letting(
      {
        plain: `LOWER(${TIDY})`,
        unsigned: `IF((LEFT(plain)="-")+(LEFT(plain)="+")>0,MID(plain,2,999),plain)`,
        rest: besideNumbers,
        digits: hasDigit.slice(0, 10).join("+"),
        startsAsNumber: `ISNUMBER(FIND(LEFT(unsigned),"0123456789.,'’"))`,
        endsAsNumber: `ISNUMBER(FIND(RIGHT(plain),"0123456789"))`,
        isUnit: `(LEN(rest)=0)+ISNUMBER(FIND("|"&rest&"|","|${UNITS.replaceAll(" ", "|")}|"))*(1-endsAsNumber)`,
      },
      choose(
        [
          ["ISERROR(value)", "0"],
          ["1-ISTEXT(value)", "0"],
          ["LEN(plain)=0", "0"],
          ["digits=0", "1"],
          [`ISNUMBER({SPOKEN}(plain))`, "0"],
          ["startsAsNumber*(isUnit>0)", "0"],
        ],
        "1",
      ),
    ),
  ),
];
