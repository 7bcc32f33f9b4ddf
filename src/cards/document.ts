import type { Card } from "./card";
import { listOf } from "./checkCard";

/** What the built page of a card is made of; scripts and styles stand in it, so that it needs nothing else. */
export interface CardParts {
  readonly script: string;
  readonly style: string;
  /** Both as "sha256-…", so that nothing but them can run or show. */
  readonly scriptHash: string;
  readonly styleHash: string;
  /** What must be said of the code of others in it. */
  readonly notices: string;
}

/** Where a card's own data goes; empty in the page that reads it from a link. */
const EMPTY = '<script type="application/json" id="card"></script>';

/** The page that shows a card, from a link or, once `withCard` has filled it in, by itself. */
export const cardPage = ({ script, style, scriptHash, styleHash, notices }: CardParts): string =>
  `<!doctype html>
<!--
${notices.replaceAll("--", "–")}
-->
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta name="referrer" content="no-referrer">
<meta name="robots" content="noindex">
<meta http-equiv="Content-Security-Policy" content="${policyOf(scriptHash, styleHash)}">
<title>Lifting card</title>
<style>${style}</style>
</head>
<body>
<main id="page"><noscript>The card needs JavaScript.</noscript></main>
${EMPTY}
<script>${script}</script>
</body>
</html>
`;

/** Nothing is fetched, sent or framed; the worker is what keeps the hosted page at hand without a network. */
function policyOf(scriptHash: string, styleHash: string): string {
  return [
    "default-src 'none'",
    `script-src '${scriptHash}'`,
    `style-src '${styleHash}'`,
    "worker-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
}

/** The page with a lifter's card in it: one file that needs nothing else. */
export function withCard(page: string, card: Card): string {
  // Nothing in the data can end its element: "<" is spelled out.
  const data = JSON.stringify(listOf(card)).replaceAll("<", "\\u003c");
  const filled = EMPTY.replace("></", () => `>${data}</`);
  return page.replace(EMPTY, () => filled).replace("<title>Lifting card", () => titleOf(card));
}

function titleOf({ name }: Card): string {
  return `<title>${name.replaceAll("&", "&amp;").replaceAll("<", "&lt;")}: lifting card`;
}

/** A file name for a card, in letters that every system takes; `taken` names get a number. */
export function fileNameFor(card: Card, taken: ReadonlySet<string>): string {
  const plain = card.name
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-+|-+$/g, "")
    .toLowerCase();
  const stem = `card-${plain || "lifter"}`;
  for (let count = 1; ; count++) {
    const name = count === 1 ? `${stem}.html` : `${stem}-${count}.html`;
    if (!taken.has(name)) return name;
  }
}
