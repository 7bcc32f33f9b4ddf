import type { XmlElement } from "../../../xlsx/package";

/** Where an element's content stands in the text it was read from. */
export function inside(xml: string, { start, contentStart, end }: XmlElement) {
  const isEmpty = xml[contentStart - 2] === "/" && contentStart === end;
  return isEmpty
    ? { start, end: start }
    : { start: contentStart, end: xml.lastIndexOf("</", end - 1) };
}
