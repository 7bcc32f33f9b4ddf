import type { CatalogueFunction } from "../../functions/catalogue";
import { firstSentence } from "../../functions/firstSentence";
import type { PaneData, Phrases, SheetOffer } from "../data";
import { pictures, type Picture } from "../pictures";

/** What the box finds: a function, a ready sheet or a picture. */
export interface Findable {
  readonly kind: "function" | "sheet" | "picture";
  readonly id: string;
  /** What it is called where it is shown. */
  readonly name: string;
  /** What it is for, in a sentence. */
  readonly summary: string;
  /** All that it says about itself. */
  readonly about: string;
  /** How people ask for it. */
  readonly phrases: readonly string[];
}

/** How a kind is called in the list of what was found. */
export const KINDS: Readonly<Record<Findable["kind"], string>> = {
  function: "Function",
  sheet: "Ready sheet",
  picture: "Picture",
};

/** All that the pane has to offer, in its own order. */
export function findables({ catalogue, phrases, sheets }: PaneData): Findable[] {
  return [
    ...catalogue.functions.map((entry) => ofFunction(entry, phrases)),
    ...sheets.map((offer) => ofSheet(offer, phrases)),
    ...pictures.map((picture) => ofPicture(picture, phrases)),
  ];
}

function ofFunction(entry: CatalogueFunction, phrases: Phrases): Findable {
  const { id, description, family, parameters, source } = entry;
  const names = parameters.map(({ name }) => name.replace(/([A-Z])/g, " $1"));
  return {
    kind: "function",
    id,
    name: id,
    summary: firstSentence(description),
    about: [description, family, ...names, source].join(" "),
    phrases: phrases[id] ?? [],
  };
}

const ofSheet = ({ id, title, purpose }: SheetOffer, phrases: Phrases): Findable => ({
  kind: "sheet",
  id,
  name: title,
  summary: purpose,
  about: purpose,
  phrases: phrases[id] ?? [],
});

const ofPicture = ({ id, title, describe }: Picture, phrases: Phrases): Findable => ({
  kind: "picture",
  id,
  name: title,
  summary: describe,
  about: describe,
  phrases: phrases[id] ?? [],
});
