import { deflateSync, inflateSync, strFromU8, strToU8 } from "fflate";
import { CardProblem, type Card } from "./card";
import { checkCard, listOf } from "./checkCard";

/** A full card of long names takes about 900 letters; ten times that is no card. */
const LONGEST = 8_000;
/** What such a fragment may unfold to. */
const LARGEST = 16_384;

/** The part of a link behind "#": the card, packed. A browser keeps it to itself and sends it nowhere. */
export function fragmentOf(card: Card): string {
  const packed = deflateSync(strToU8(JSON.stringify(listOf(card))), { level: 9 });
  return btoa(String.fromCharCode(...packed))
    .replaceAll("+", "-")
    .replaceAll("/", "_")
    .replace(/=+$/, "");
}

/** The link to a card on the page that shows cards. */
export function linkTo(page: string, card: Card): string {
  const address = new URL(page);
  address.hash = fragmentOf(card);
  return address.href;
}

/** The card in a link's fragment, which may come from anywhere. */
export function cardInFragment(fragment: string): Card {
  const written = fragment.replace(/^#/, "");
  if (written.length > LONGEST) throw new CardProblem("it is too long");
  if (!/^[\w-]+$/.test(written)) throw new CardProblem("it holds signs that no card has");
  return checkCard(unpacked(written));
}

function unpacked(written: string): unknown {
  try {
    const packed = atob(written.replaceAll("-", "+").replaceAll("_", "/"));
    const bytes = Uint8Array.from(packed, (letter) => letter.charCodeAt(0));
    // A buffer of its own keeps a few letters from unfolding to more than a card can hold.
    const room = new Uint8Array(LARGEST);
    return JSON.parse(strFromU8(inflateSync(bytes, { out: room })));
  } catch {
    throw new CardProblem("part of it is missing or changed");
  }
}
