import type { CustomEnum, Parameter } from "../../functions/catalogue";
import { argumentWords } from "../formula/argumentWords";
import { element } from "../../elements/element";
import { newId } from "./elements";

/** The field of one argument. */
export interface Field {
  readonly name: string;
  readonly element: HTMLElement;
  readonly read: () => string;
  readonly write: (text: string) => void;
  /** Calls back when the selection is to fill this field. */
  readonly onSelectionWanted: (listener: () => void) => void;
}

export function field(parameter: Parameter, enums: readonly CustomEnum[]): Field {
  const choices = enums.find(({ id }) => id === parameter.customEnumId);
  return choices ? choiceField(parameter, choices) : textField(parameter);
}

function textField(parameter: Parameter): Field {
  const inputId = newId(parameter.name);
  const input = textInput(inputId);
  const button = selectionButton(parameter.name);
  return {
    name: parameter.name,
    element: frame(parameter, inputId, input, element("div", { className: "row" }, input, button)),
    read: () => input.value,
    write: (text) => {
      input.value = text;
    },
    onSelectionWanted: (listener) => button.addEventListener("click", listener),
  };
}

/** Where the argument may be something else than the words it offers, a number or cells. */
const OTHER = "…";

function choiceField(parameter: Parameter, choices: CustomEnum): Field {
  const selectId = newId(parameter.name);
  const nothing = parameter.optional ? "not given" : "choose";
  const select = element(
    "select",
    { id: selectId },
    element("option", { value: "" }, nothing),
    ...choices.values.map(({ stringValue }) =>
      element("option", { value: stringValue }, stringValue),
    ),
    element("option", { value: OTHER }, "something else"),
  );
  const input = textInput(newId(parameter.name));
  input.setAttribute("aria-label", `${argumentWords(parameter.name)}: something else`);
  const button = selectionButton(parameter.name);
  const other = element("div", { className: "row", hidden: true }, input, button);
  const meaning = element("p", { className: "quiet", id: newId("meaning") });
  const show = () => {
    other.hidden = select.value !== OTHER;
    meaning.textContent =
      choices.values.find(({ stringValue }) => stringValue === select.value)?.tooltip ?? "";
  };
  select.addEventListener("change", show);
  return {
    name: parameter.name,
    element: frame(parameter, selectId, select, select, other, meaning),
    read: () => (select.value === OTHER ? input.value : select.value),
    write: (text) => {
      const word = text.replace(/^"(.*)"$/s, "$1");
      const offered = choices.values.some(({ stringValue }) => stringValue === word);
      select.value = word === "" || offered ? word : OTHER;
      input.value = offered ? "" : text;
      show();
    },
    onSelectionWanted: (listener) => button.addEventListener("click", listener),
  };
}

const textInput = (id: string) =>
  element("input", { id, type: "text", autocomplete: "off", spellcheck: false });

const selectionButton = (name: string) =>
  element(
    "button",
    { type: "button", "aria-label": `Selection for ${argumentWords(name)}` },
    "Selection",
  );

/** Label and description around the control that they belong to. */
function frame(
  { name, description, optional }: Parameter,
  controlId: string,
  control: HTMLElement,
  ...parts: HTMLElement[]
): HTMLElement {
  const aboutId = newId("about");
  control.setAttribute("aria-describedby", aboutId);
  if (!optional) control.setAttribute("aria-required", "true");
  return element(
    "div",
    { className: "field" },
    element(
      "label",
      { htmlFor: controlId },
      argumentWords(name),
      optional ? element("span", { className: "quiet" }, " (optional)") : "",
    ),
    ...parts,
    element("p", { className: "quiet", id: aboutId }, description),
  );
}
