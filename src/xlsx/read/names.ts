import type { NameModel } from "../model";
import type { XmlElement } from "../package";
import { childOf, childrenOf, flagOf, numberOf } from "../package";

/** The names of a workbook. */
export function readNames(workbook: XmlElement): NameModel[] {
  const sheets = childrenOf(childOf(workbook, "sheets"), "sheet").map(
    ({ attributes }) => attributes.name,
  );
  return childrenOf(childOf(workbook, "definedNames"), "definedName").map((element) => {
    const { name = "", comment } = element.attributes;
    const sheet = sheets[numberOf(element, "localSheetId") ?? -1];
    return {
      name,
      text: element.text,
      ...(sheet !== undefined && { sheet }),
      ...(flagOf(element, "hidden") && { hidden: true }),
      ...(comment && { comment }),
    };
  });
}
