import type { Card, CardLift } from "./card";
import { codeFor } from "./code";
import { CHART_RESERVES, chartOf, plannedLoad } from "./loads";
import { linkTo } from "./link";

/** Rows of the charts on paper: what a quarter of a page has room for. */
const repsFor = (charts: number) => (charts > 2 ? 8 : 12);

/**
 * The cards on paper, four on a page: name, today's loads, the chart of the first lifts, and the link as a code for the
 * phone's camera. Without an address of the card page there is no code.
 */
export const printedCards = (cards: readonly Card[], page: string | undefined): string =>
  `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>Lifting cards</title>
<style>${STYLE}</style>
</head>
<body>
${cards.flatMap((card) => sidesOf(card, page)).join("\n")}
</body>
</html>
`;

const STYLE = `
@page { size: A4; margin: 8mm; }
* { box-sizing: border-box; }
body { margin: 0; color: #1d2526; font: 9pt/1.25 "Segoe UI", system-ui, "DejaVu Sans", sans-serif; }
body { display: grid; grid-template-columns: repeat(2, minmax(0, 1fr)); }
article { height: 139mm; padding: 4mm; overflow: hidden; border: 1px dashed #7b8a8b; break-inside: avoid; }
h1 { margin: 0; font-size: 15pt; }
h2 { margin: 2mm 0 1mm; font-size: 10pt; }
p { margin: 0 0 1mm; }
.head { display: flex; gap: 3mm; justify-content: space-between; }
.code { flex: none; width: 34mm; height: 34mm; }
.today { margin: 1mm 0 0; padding: 0; list-style: none; }
.charts { display: grid; grid-template-columns: repeat(2, minmax(0, 1fr)); gap: 0 4mm; }
table { width: 100%; table-layout: fixed; border-collapse: collapse; font-size: 7.5pt; line-height: 1.15; font-variant-numeric: tabular-nums; }
th, td { padding: 0.3mm 0.6mm; text-align: right; border-bottom: 0.2mm solid #c9d3d3; }
tbody th { text-align: center; }
.caution { margin-top: 2mm; font-size: 7pt; }
`;

/** A card with more lifts than one quarter holds goes on in the next. */
const LIFTS_A_SIDE = 4;

function sidesOf(card: Card, page: string | undefined): string[] {
  const sides: string[] = [];
  for (let at = 0; at < card.lifts.length; at += LIFTS_A_SIDE) {
    const lifts = card.lifts.slice(at, at + LIFTS_A_SIDE);
    sides.push(sideOf(card, lifts, at === 0, page));
  }
  return sides;
}

function sideOf(
  card: Card,
  lifts: readonly CardLift[],
  first: boolean,
  page: string | undefined,
): string {
  const code = first && page !== undefined ? codeFor(linkTo(page, card)) : "";
  return `<article>
<div class="head"><div>
<h1>${escape(card.name)}${first ? "" : ", continued"}</h1>
<p>Loads in ${card.unit}, in steps of ${card.increment}. Made ${card.made}.</p>
${first ? todayOf(card) : ""}
</div>${code}</div>
<div class="charts">${lifts.map((lift) => chartTable(card, lift, lifts.length)).join("")}</div>
<p class="caution">Reps down, reps left in reserve across. An estimate is not a clearance to lift. Use spotters or
safeties; stop at pain and see a qualified professional.</p>
</article>`;
}

function todayOf(card: Card): string {
  if (card.today.length === 0) return "";
  const lines = card.today.map((planned) => {
    const load = plannedLoad(card, planned);
    const { lift, sets, reps, reserve } = planned;
    const weight = load === undefined ? "" : `: <b>${load} ${card.unit}</b>`;
    return `<li>${escape(lift)} ${sets} × ${reps}, leave ${reserve}${weight}</li>`;
  });
  return `<ul class="today">${lines.join("")}</ul>`;
}

function chartTable(card: Card, lift: CardLift, charts: number): string {
  const heads = CHART_RESERVES.map((reserve) => `<th scope="col">${reserve}</th>`).join("");
  const rows = chartOf(card, lift)
    .slice(0, repsFor(charts))
    .map(({ reps, loads }) => {
      const cells = loads.map((load) => `<td>${load ?? ""}</td>`).join("");
      return `<tr><th scope="row">${reps}</th>${cells}</tr>`;
    });
  return `<section><h2>${escape(lift.name)} ${lift.oneRepMax}</h2>
<table><thead><tr><th scope="col">reps</th>${heads}</tr></thead><tbody>${rows.join("")}</tbody></table></section>`;
}

const escape = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
