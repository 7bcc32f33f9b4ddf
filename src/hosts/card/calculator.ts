import { numberInText } from "../../cells";
import { BadInput, NoAnswer } from "../../core/problem";
import type { Card, CardLift } from "../../cards/card";
import { answerTo, sideFor } from "../../cards/loads";
import { element } from "../../elements/element";
import { plateWords, shown } from "./words";
import type { Memory } from "./memory";

/** A number the lifter types, and what it may be. */
interface Field {
  readonly id: string;
  readonly label: string;
  readonly low: number;
  readonly high: number;
  readonly expected: string;
  /** By how much a tap on − or + changes it. */
  readonly step: number;
}

/** The set just done gives the maximum behind it, and what to put on the bar next. */
export function calculator(card: Card, lift: CardLift, memory: Memory): HTMLElement {
  const planned = card.today.find((set) => set.lift === lift.name);
  const fields = fieldsOf(card);
  const first: Readonly<Record<string, string>> = {
    load: "",
    reps: "",
    left: "",
    targetReps: String(planned?.reps ?? 5),
    targetLeft: String(planned?.reserve ?? 2),
  };
  const result = element("div", { className: "answer", role: "status" });
  const inputs = fields.map((field) => {
    const name = `${lift.name} ${field.id}`;
    const input = element("input", {
      id: `set-${field.id}`,
      type: "text",
      inputMode: "decimal",
      autocomplete: "off",
      value: memory.recall(name) ?? first[field.id] ?? "",
    });
    input.addEventListener("input", () => {
      memory.keep(name, input.value.slice(0, 20));
      answer();
    });
    return { field, input };
  });

  const answer = (): void => {
    result.replaceChildren(...answerLines(card, inputs));
  };
  answer();
  return element(
    "section",
    { className: "after", "aria-labelledby": "after" },
    element("h2", { id: "after" }, "After a set"),
    element("div", { className: "fields three" }, ...inputs.slice(0, 3).map(fieldElement)),
    element("p", { className: "between" }, "Next set"),
    element("div", { className: "fields" }, ...inputs.slice(3).map(fieldElement)),
    result,
  );
}

function fieldsOf(card: Card): Field[] {
  const reps = { low: 1, high: 30, expected: "1 to 30", step: 1 };
  const left = { low: 0, high: 10, expected: "0 to 10", step: 1 };
  const load = { low: 0.01, high: 2000, expected: "a load above 0", step: card.increment };
  return [
    { id: "load", label: `load, ${card.unit}`, ...load },
    { id: "reps", label: "reps done", ...reps },
    { id: "left", label: "how many left", ...left },
    { id: "targetReps", label: "reps", ...reps },
    { id: "targetLeft", label: "leave", ...left },
  ];
}

interface Input {
  readonly field: Field;
  readonly input: HTMLInputElement;
}

function fieldElement({ field, input }: Input): HTMLElement {
  const stepBy = (change: number, sign: string): HTMLElement => {
    const button = element(
      "button",
      { type: "button", "aria-label": `${field.label}, ${change < 0 ? "less" : "more"}` },
      sign,
    );
    button.addEventListener("click", () => {
      const now = numberInText(input.value) ?? (change > 0 ? field.low - change : field.low);
      const next = Math.min(field.high, Math.max(Math.ceil(field.low), now + change));
      input.value = shown(next);
      input.dispatchEvent(new Event("input"));
    });
    return button;
  };
  return element(
    "div",
    { className: "field" },
    element("label", { htmlFor: input.id }, field.label),
    element(
      "div",
      { className: "stepper" },
      stepBy(-field.step, "−"),
      input,
      stepBy(field.step, "+"),
    ),
  );
}

/** The answer in lines, or the one thing that is still missing or wrong. */
function answerLines(card: Card, inputs: readonly Input[]): Node[] {
  const numbers = new Map<string, number>();
  for (const { field, input } of inputs) {
    const value = numberInText(input.value);
    const fits = value !== undefined && value >= field.low && value <= field.high;
    input.setAttribute("aria-invalid", String(!fits && input.value.trim() !== ""));
    if (fits) numbers.set(field.id, value);
  }
  for (const { field, input } of inputs) {
    if (numbers.has(field.id)) continue;
    const text = input.value.trim();
    if (text === "")
      return [element("p", {}, "Type the set you did: load, reps, how many were left.")];
    return [
      element(
        "p",
        { className: "trouble" },
        `${field.label} is "${text}"; expected ${field.expected}.`,
      ),
    ];
  }
  const value = (id: string) => numbers.get(id) ?? 0;
  try {
    const { low, estimate, high, nextLoad } = answerTo(card, {
      load: value("load"),
      reps: value("reps"),
      reserve: value("left"),
      targetReps: value("targetReps"),
      targetReserve: value("targetLeft"),
    });
    const unit = card.unit;
    return [
      element(
        "p",
        { className: "next" },
        "Next load ",
        element("strong", {}, `${shown(nextLoad)} ${unit}`),
      ),
      element("p", { className: "plates" }, plateWords(sideFor(card, nextLoad))),
      element(
        "p",
        { className: "estimate" },
        `One-rep max behind that set: ${shown(estimate, 1)} ${unit}; ` +
          `${shown(low, 1)} to ${shown(high, 1)} if the call is a rep off.`,
      ),
    ];
  } catch (error) {
    if (error instanceof BadInput || error instanceof NoAnswer) {
      return [element("p", { className: "trouble" }, `${error.message}.`)];
    }
    throw error;
  }
}
