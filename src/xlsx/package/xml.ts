import { SaxesParser } from "saxes";
import { LIMITS } from "../limits";
import { UnreadableFile } from "./unreadable";

/**
 * An element of a part's XML. Namespaces are left aside: a workbook's parts each hold elements of
 * one, under whatever prefix its program likes, and `name` is without it.
 */
export interface XmlElement {
  readonly name: string;
  /** The prefix of its name with the colon, for programs that use one. */
  readonly prefix: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: XmlElement[];
  /** The text directly inside, without that of the children. */
  text: string;
  /** Where the element starts and ends in the text it was read from. */
  readonly start: number;
  end: number;
  /** Where what is inside it starts. */
  readonly contentStart: number;
}

/**
 * Reads a part's XML into elements. Elements called `streamed`, "row" or, inside one parent only,
 * "sheetData/row", are handed to `visit` as each one ends and then let go, so that a worksheet of many
 * rows is never in memory as a whole.
 */
export function parseXml(
  xml: string,
  path: string,
  streamed?: string,
  visit?: (element: XmlElement) => void,
): XmlElement {
  const parser = new SaxesParser();
  const open: XmlElement[] = [];
  const [streamedName, streamedParent] = (streamed ?? "").split("/").reverse();
  let root: XmlElement | undefined;
  let start = 0;
  parser.on("doctype", () => {
    throw new UnreadableFile(`"${path}" declares a document type, which no workbook does`);
  });
  parser.on("error", ({ message }) => {
    throw new UnreadableFile(`"${path}" is not well-formed: ${message.replace(/\.$/, "")}`);
  });
  parser.on("opentagstart", () => {
    start = xml.lastIndexOf("<", parser.position - 1);
  });
  parser.on("opentag", ({ name, attributes }) => {
    if (open.length >= LIMITS.elementDepth)
      throw new UnreadableFile(`"${path}" is nested too deeply`);
    const local = name.indexOf(":") + 1;
    open.push({
      name: name.slice(local),
      prefix: name.slice(0, local),
      attributes,
      children: [],
      text: "",
      start,
      end: start,
      contentStart: parser.position,
    });
  });
  const addText = (text: string) => {
    const innermost = open.at(-1);
    if (innermost) innermost.text += text;
  };
  parser.on("text", addText);
  parser.on("cdata", addText);
  parser.on("closetag", () => {
    const element = open.pop()!;
    element.end = parser.position;
    const parent = open.at(-1);
    if (!parent) root = element;
    else if (visit && isStreamed(element, parent)) visit(element);
    else parent.children.push(element);
  });
  const isStreamed = ({ name }: XmlElement, parent: XmlElement) =>
    name === streamedName && (streamedParent === undefined || parent.name === streamedParent);
  parser.write(xml).close();
  if (!root) throw new UnreadableFile(`"${path}" is empty`);
  return root;
}

/** The first child of that name, if there is one. */
export function childOf(element: XmlElement | undefined, name: string): XmlElement | undefined {
  return element?.children.find((child) => child.name === name);
}

/** All children of that name. */
export function childrenOf(element: XmlElement | undefined, name: string): XmlElement[] {
  return element?.children.filter((child) => child.name === name) ?? [];
}

/** An attribute by its name without a prefix: `attributeOf(sheet, "id")` finds `r:id`. */
export function attributeOf(element: XmlElement, name: string): string | undefined {
  const written = element.attributes[name];
  if (written !== undefined) return written;
  const prefixed = Object.keys(element.attributes).find((key) => key.endsWith(`:${name}`));
  return prefixed === undefined ? undefined : element.attributes[prefixed];
}

/** A number attribute; nothing where it is missing or not a number. */
export function numberOf(element: XmlElement, name: string): number | undefined {
  const written = element.attributes[name];
  if (written === undefined || written.trim() === "") return undefined;
  const number = Number(written);
  return Number.isFinite(number) ? number : undefined;
}

/** A yes-or-no attribute, which programs write as 1 or true. */
export function flagOf(element: XmlElement, name: string, otherwise = false): boolean {
  const written = element.attributes[name];
  return written === undefined ? otherwise : ["1", "true", "on"].includes(written);
}

/** What an element is written from; `undefined` attributes are left out. */
export type XmlAttributes = Readonly<Record<string, string | number | undefined>>;

/** Writes an element; its content is XML already, a piece or a list of them. */
export function writeXml(
  name: string,
  attributes: XmlAttributes = {},
  content: string | readonly string[] = "",
): string {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${escapeXml(String(value))}"`)
    .join("");
  const inside = typeof content === "string" ? content : content.join("");
  return inside === "" ? `<${name}${written}/>` : `<${name}${written}>${inside}</${name}>`;
}

/** Text as it stands in XML, between tags or in a double-quoted attribute. */
export function escapeXml(text: string): string {
  return text.replace(SPECIAL, (character) => ENTITIES[character] ?? "\ufffd");
}

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  // Written plainly, these would be read back as a space or a line feed.
  "\r": "&#13;",
  "\n": "&#10;",
  "\t": "&#9;",
};

// What XML cannot hold in any spelling is matched as well, and becomes the replacement character.
const SPECIAL =
  /[&<>"\t\n\r\u0000-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;
