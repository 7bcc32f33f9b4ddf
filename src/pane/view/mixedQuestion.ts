import type { CatalogueFunction } from "../../functions/catalogue";
import type { MixedColumn } from "../formula/mixed";
import { element } from "../../elements/element";
import { newId } from "./elements";

/** Which rows are meant, where the selected ones are of several lifters or lifts. */
export interface MixedQuestion {
  readonly element: HTMLElement;
  /** Asks about these columns; without any there is no question. */
  readonly ask: (columns: readonly MixedColumn[]) => void;
  /** Whether an answer is still wanted. */
  readonly isOpen: () => boolean;
  /** The columns that are answered for, each with the chosen name. */
  readonly answers: () => Answer[];
}

export interface Answer extends MixedColumn {
  readonly is: string | number;
}

/** Never are the sets of different lifters put into one trend unseen: the person says whose, or takes all one by one. */
export function mixedQuestion(
  forAll: CatalogueFunction | undefined,
  open: ((id: string) => void) | undefined,
  onAnswer: () => void,
): MixedQuestion {
  const box = element("fieldset", { className: "whose", hidden: true });
  let asked: { column: MixedColumn; select: HTMLSelectElement }[] = [];

  function ask(columns: readonly MixedColumn[]): void {
    asked = columns.map((column) => ({ column, select: choice(column) }));
    box.hidden = columns.length === 0;
    const other = element("button", { type: "button", className: "plain" }, "Each of them: ");
    if (forAll) {
      other.textContent += forAll.id;
      other.addEventListener("click", () => open?.(forAll.id));
    }
    box.replaceChildren(
      element("legend", {}, "Which of them?"),
      element("p", {}, sentence(columns)),
      ...asked.map(({ column, select }) =>
        element("div", {}, element("label", { htmlFor: select.id }, column.heading), select),
      ),
      ...(forAll ? [other] : []),
    );
  }

  function choice({ names }: MixedColumn): HTMLSelectElement {
    const select = element(
      "select",
      { id: newId("whose") },
      element("option", { value: "" }, "choose"),
      ...names.map((name, index) => element("option", { value: String(index) }, String(name))),
    );
    select.addEventListener("change", onAnswer);
    return select;
  }

  return {
    element: box,
    ask,
    isOpen: () => asked.some(({ select }) => select.value === ""),
    answers: () =>
      asked.flatMap(({ column, select }) => {
        const is = select.value === "" ? undefined : column.names[Number(select.value)];
        return is === undefined ? [] : [{ ...column, is }];
      }),
  };
}

const sentence = (columns: readonly MixedColumn[]) =>
  columns
    .map(({ heading, names }) => {
      const some = names.slice(0, 3).join(", ");
      return `“${heading}” holds ${names.length} names (${some}${names.length > 3 ? ", …" : ""}).`;
    })
    .join(" ") + " One answer would mix them.";
