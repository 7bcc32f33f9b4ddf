import { CardProblem, type Card } from "./card";
import { fileNameFor, withCard } from "./document";
import { linkTo } from "./link";
import { printedCards } from "./printed";

/** A file to hand out. */
export interface CardFile {
  readonly name: string;
  readonly text: string;
}

/** What the coach should know before any card goes out. */
export const PRIVACY =
  "Whoever has a card's file, link or printed code can read the lifter's name and loads.";

/** A file a lifter, which needs nothing else and opens on any phone. `page` is the built page of cards. */
export function cardFiles(page: string, cards: readonly Card[]): CardFile[] {
  const taken = new Set<string>();
  return cards.map((card) => {
    const name = fileNameFor(card, taken);
    taken.add(name);
    return { name, text: withCard(page, card) };
  });
}

/** All the cards on paper, four on a page; with codes where the address of the hosted card page is known. */
export const printedFile = (cards: readonly Card[], address: string | undefined): CardFile => ({
  name: "cards-to-print.html",
  text: printedCards(cards, address),
});

/** A line a lifter: the name, and the link to the card. */
export const linksFile = (cards: readonly Card[], address: string): CardFile => ({
  name: "links.txt",
  text: cards.map((card) => `${card.name}\t${linkTo(address, card)}\n`).join(""),
});

/** An address that a link can be made of: https, or this machine's own server; otherwise why it is none. */
export function checkAddress(address: string): string {
  const url = URL.canParse(address) ? new URL(address) : undefined;
  const local = url?.hostname === "localhost" || url?.hostname === "127.0.0.1";
  if (url?.protocol === "https:" || (url?.protocol === "http:" && local)) return url.href;
  throw new CardProblem(`the card page is "${address}"; expected its address, https://…`);
}
