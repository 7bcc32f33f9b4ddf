import { CardProblem, type Card } from "../../cards/card";
import { cardFiles, checkAddress, linksFile, printedFile, PRIVACY } from "../../cards/handOut";
import { readCards, type SheetCards } from "../../cards/readCards";
import { zipped } from "../zipped";
import type { PaneContext, View } from "./context";
import { element } from "../../elements/element";
import { liveLine, newId, tell } from "./elements";

/** As much of a sheet as one could hold a squad's cards. */
const WHOLE_SHEET = "A1:Z400";

/** A card for each lifter's phone, made of the selected cells or of the sheet in sight. */
export const cardsView: View = {
  name: "Cards",
  build: (context) => {
    const said = liveLine("said");
    const made = element("div", {});
    const read = element("button", { type: "button", className: "main" }, "Read the cells");
    read.addEventListener("click", () => {
      said.textContent = "";
      made.replaceChildren();
      readSquad(context).then(
        (squad) => {
          tell(said, [countOf(squad.cards), ...squad.notes].join(" "));
          if (squad.cards.length > 0) made.replaceChildren(handOutForm(squad, context, said));
        },
        (error: unknown) => tell(said, `No card: ${reasonOf(error)}.`, "failed"),
      );
    });
    return element(
      "div",
      {},
      element("h2", {}, "A card for each lifter's phone"),
      element(
        "p",
        {},
        "One small page with the maxima, today's sets, the loads for every reserve and a calculator for the set just " +
          "done. It opens on any phone, needs no account and no network, and sends nothing anywhere.",
      ),
      element(
        "p",
        { className: "quiet" },
        "Select the rows, or show a sheet with them: a heading row lifter, Back squat, kg and so on, and a row a " +
          "lifter. The ready sheet Cards for phones has it all.",
      ),
      read,
      said,
      made,
    );
  },
};

/** The cards of the selected cells; where only a cell is selected, those of the sheet in sight. */
async function readSquad({ port }: PaneContext): Promise<SheetCards> {
  const { values } = await port.readSelection();
  const alone = values.length <= 1 && (values[0]?.length ?? 0) <= 1;
  const cells = alone ? await port.readRange(WHOLE_SHEET) : values;
  return readCards(cells, today());
}

/** Today on this device, "2026-01-05". */
function today(): string {
  const now = new Date();
  const two = (part: number) => String(part).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

const countOf = (cards: readonly Card[]) =>
  cards.length === 1 ? "1 lifter." : `${cards.length} lifters.`;

/** For whom, and by which of the three ways: files, links, paper. */
function handOutForm(squad: SheetCards, context: PaneContext, said: HTMLElement): HTMLElement {
  const whoId = newId("who");
  const who = element(
    "select",
    { id: whoId },
    ...(squad.cards.length > 1 ? [element("option", { value: "" }, "all of them")] : []),
    ...squad.cards.map(({ name }, at) => element("option", { value: String(at) }, name)),
  );
  const addressId = newId("address");
  const address = element("input", {
    id: addressId,
    type: "url",
    autocomplete: "off",
    value: squad.page ?? new URL("card/", context.home).href,
  });
  const chosen = () =>
    squad.cards.filter((_card, at) => who.value === "" || Number(who.value) === at);
  const action = (label: string, act: () => Promise<string>): HTMLElement => {
    const button = element("button", { type: "button" }, label);
    button.addEventListener("click", () => {
      act().then(
        (done) => tell(said, done),
        (error: unknown) => tell(said, `Nothing was made: ${reasonOf(error)}.`, "failed"),
      );
    });
    return button;
  };

  const saveFiles = async (): Promise<string> => {
    const page = await fetchText(new URL("card/index.html", context.home).href);
    const files = cardFiles(page, chosen());
    const [only] = files;
    if (files.length === 1 && only) save(only.name, only.text, "text/html");
    else save("cards.zip", zipped(files), "application/zip");
    return files.length === 1
      ? `Saved ${only?.name}.`
      : `Saved cards.zip with ${files.length} files.`;
  };
  const copyLinks = async (): Promise<string> => {
    const { name, text } = linksFile(chosen(), checkAddress(address.value));
    try {
      await navigator.clipboard.writeText(text);
      return `Copied: a line a lifter, name and link.${reachOf(address.value)}`;
    } catch {
      save(name, text, "text/plain");
      return `Saved ${name}: a line a lifter, name and link.${reachOf(address.value)}`;
    }
  };
  const print = (): Promise<string> => {
    const { name, text } = printedFile(chosen(), checkAddress(address.value));
    save(name, text, "text/html");
    return Promise.resolve(
      `Saved ${name}: open it in a browser and print it.${reachOf(address.value)}`,
    );
  };

  return element(
    "div",
    { className: "cards" },
    element("p", { className: "notice" }, PRIVACY),
    element("label", { htmlFor: whoId }, "For"),
    who,
    action("Save as files", saveFiles),
    element("label", { htmlFor: addressId }, "Address of the card page, for links and codes"),
    address,
    action("Copy the links", copyLinks),
    action("Save a page to print", print),
  );
}

/** A link to this computer's own server opens on no phone, and the coach should hear so. */
function reachOf(address: string): string {
  const { hostname } = new URL(address);
  return hostname === "localhost" || hostname === "127.0.0.1"
    ? " This address is this computer's own: other devices cannot open it."
    : "";
}

async function fetchText(address: string): Promise<string> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`the card page could not be read (${response.status})`);
  return response.text();
}

/** Hands a file to whoever sits in front of the page. */
function save(name: string, content: string | Uint8Array<ArrayBuffer>, type: string): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  element("a", { href: address, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

const reasonOf = (error: unknown) =>
  (error instanceof CardProblem || error instanceof Error ? error.message : String(error)).replace(
    /\.$/,
    "",
  );
