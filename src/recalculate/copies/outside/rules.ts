import type { ReadSheet } from "../../../xlsx/read/sheet";
import {
  attributeOf,
  childOf,
  childrenOf,
  escapeXml,
  parseXml,
  type Package,
  type XmlElement,
} from "../../../xlsx/package";
import { withChange } from "../../../xlsx/patch/editPackage";
import { applyEdits, type Edit } from "../../../xlsx/patch/edits";
import { inside } from "./elements";
import { settle, type Outside } from "./place";

/*
 * Conditional formats and validations. A sheet has them in the manner of 2007, and those that read other sheets
 * in the manner of 2010 among its extensions: `x14:cfRule` with its formula in `xm:f`.
 */

/** A formula of a rule, and how it is changed. */
interface Formula {
  readonly text: string;
  readonly edit: (text: string) => Edit;
}

/** The rules of a sheet rewritten, or taken away with what holds nothing else. */
export function editRules(file: Package, sheet: ReadSheet, outside: Outside): Package {
  return withChange(file, sheet.path, (xml) => {
    if (!/conditionalFormatting|dataValidation/.test(xml)) return xml;
    const root = parseXml(xml, sheet.path, "sheetData/row", () => undefined);
    const gone = new Set<XmlElement>();
    const edits: Edit[] = [];
    const rules = [...rulesIn(root)];
    for (const rule of rules) judgeRule(rule);
    removeTwins();
    removeEmpty(root);
    for (const element of gone) {
      edits.push({ start: element.start, end: element.end, text: "" });
    }
    return applyEdits(xml, withoutNested(edits));

    function judgeRule({ rule, area, of }: Rule): void {
      const where = { sheet: sheet.name, place: area, of };
      const formulas = [...formulasOf(xml, rule)];
      const lost = formulas.find(({ text }) => {
        const verdict = outside.judge.verdictOn(text);
        return verdict && "lost" in verdict;
      });
      for (const { text, edit } of lost ? [lost] : formulas) {
        const became = settle(outside, where, text);
        if (became && "text" in became) edits.push(edit(became.text));
      }
      if (lost) gone.add(rule);
    }

    /** A rule of 2010 that only adds to one of 2007 goes with it, and the other way round. */
    function removeTwins(): void {
      for (const { rule } of rules) {
        const id = twinOf(rule);
        const twin = rules.find(
          (other) => id !== undefined && other.rule.attributes.id === id,
        )?.rule;
        if (!twin || gone.has(rule) === gone.has(twin)) continue;
        gone.add(rule).add(twin);
      }
    }

    /** Takes away what held nothing but rules that are gone. */
    function removeEmpty(element: XmlElement): void {
      for (const child of element.children) removeEmpty(child);
      const held = HOLDS[element.name];
      if (held === undefined) return;
      const items = held === "" ? element.children : childrenOf(element, held);
      const left = items.filter((item) => !gone.has(item)).length;
      if (left === items.length) return;
      if (left === 0) gone.add(element);
      else if (attributeOf(element, "count") !== undefined) edits.push(countEdit(element, left));
    }

    function countEdit({ start, contentStart }: XmlElement, left: number): Edit {
      const tag = xml.slice(start, contentStart);
      const said = /\scount\s*=\s*["']\d+["']/.exec(tag)!;
      const from = start + said.index;
      return { start: from, end: from + said[0].length, text: ` count="${left}"` };
    }
  });
}

/** What each of these elements holds; any element, where nothing is said. */
const HOLDS: Readonly<Record<string, string>> = {
  conditionalFormatting: "cfRule",
  conditionalFormattings: "conditionalFormatting",
  dataValidations: "dataValidation",
  ext: "",
  extLst: "ext",
};

interface Rule {
  readonly rule: XmlElement;
  /** The cells it is for. */
  readonly area: string;
  readonly of: string;
}

function* rulesIn(element: XmlElement): Generator<Rule> {
  for (const child of element.children) {
    if (child.name === "conditionalFormatting") {
      const area = areaOf(child);
      for (const rule of childrenOf(child, "cfRule"))
        yield { rule, area, of: "a conditional format" };
    } else if (child.name === "dataValidation") {
      yield { rule: child, area: areaOf(child), of: "a data validation" };
    } else yield* rulesIn(child);
  }
}

const areaOf = (element: XmlElement) =>
  attributeOf(element, "sqref") ?? childOf(element, "sqref")?.text.trim() ?? "";

/** The id of the rule of 2010 that adds to this one. */
function twinOf(rule: XmlElement): string | undefined {
  const extensions = childrenOf(childOf(rule, "extLst"), "ext");
  return extensions.map((extension) => childOf(extension, "id")?.text).find(Boolean);
}

/** The formulas of a rule, those among the limits of a colour scale, a bar or icons included. */
function* formulasOf(xml: string, element: XmlElement): Generator<Formula> {
  for (const child of element.children) {
    if (/^(?:formula[12]?|f)$/.test(child.name)) {
      const inner = childOf(child, "f");
      if (inner) yield* formulasOf(xml, child);
      else {
        yield {
          text: child.text,
          edit: (text) => ({ ...inside(xml, child), text: escapeXml(text) }),
        };
      }
    } else if (child.name === "cfvo" && child.attributes.type === "formula") {
      const { val } = child.attributes;
      if (val !== undefined) yield limitOf(xml, child, val);
      yield* formulasOf(xml, child);
    } else yield* formulasOf(xml, child);
  }
}

function limitOf(xml: string, { start, contentStart }: XmlElement, text: string): Formula {
  const said = /\sval\s*=\s*(?:"[^"]*"|'[^']*')/.exec(xml.slice(start, contentStart))!;
  const from = start + said.index;
  return {
    text,
    edit: (text) => ({
      start: from,
      end: from + said[0].length,
      text: ` val="${escapeXml(text)}"`,
    }),
  };
}

/** Edits that lie in a stretch which another takes away say nothing more. */
function withoutNested(edits: readonly Edit[]): Edit[] {
  const removals = edits.filter(({ text }) => text === "");
  return edits.filter(
    (edit) =>
      !removals.some(
        (other) => other !== edit && other.start <= edit.start && edit.end <= other.end,
      ),
  );
}
