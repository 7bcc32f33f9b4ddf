import type { Catalogue } from "../../functions/catalogue";
import type { TrendSetting } from "../../functions/strength/trendOptions";
import { typedIn } from "../formula/call";
import { isReference } from "../formula/reference";
import type { Port } from "../port";

/** How a trend is told to judge a log, as cells. */
export type TrendSettings = Readonly<Partial<Record<TrendSetting, unknown[][]>>>;

/** Settings, and the cell of the formula that has them. */
export interface FoundSettings {
  readonly address: string;
  readonly settings: TrendSettings;
}

/** The functions that have them, the likeliest first. */
const TRENDS = ["STRENGTHTREND", "SQUADTREND", "RISECOMPARE"];

const SETTINGS: readonly TrendSetting[] = [
  "reserveBias",
  "reserveSd",
  "maxReps",
  "equation",
  "confidence",
  "curveSd",
];

/** The settings that a trend on this sheet has, so that a picture of its log says the same. */
export async function trendSettings(
  sheet: string,
  { functions }: Catalogue,
  port: Pick<Port, "formulasOn" | "readRange">,
): Promise<FoundSettings | undefined> {
  const formulas = (await port.formulasOn?.(sheet)) ?? [];
  for (const id of TRENDS) {
    const entry = functions.find((each) => each.id === id);
    for (const { address, formula } of formulas) {
      const typed = entry && typedIn(entry, formula);
      const texts = typed && SETTINGS.map((name) => [name, typed[name] ?? ""] as const);
      if (!texts?.every(([, text]) => text === "" || isReference(text) || isLiteral(text)))
        continue;
      const given = texts.filter(([, text]) => text !== "");
      const read = given.map(async ([name, text]) => [name, await cellsOf(text, port)] as const);
      return { address, settings: Object.fromEntries(await Promise.all(read)) };
    }
  }
  return undefined;
}

const isLiteral = (text: string) => /^"[^"]*"$/.test(text) || Number.isFinite(Number(text));

const cellsOf = async (text: string, port: Pick<Port, "readRange">): Promise<unknown[][]> =>
  isReference(text)
    ? (await port.readRange(text)).map((row) => [...row])
    : [[text.startsWith('"') ? text.slice(1, -1) : Number(text)]];
