export type { Package, Relationship } from "./package";
export {
  findWorkbook,
  missing,
  partAt,
  pathIn,
  readPackage,
  relationshipsOf,
  relationshipsPath,
  textAt,
  writePackage,
  xmlAt,
} from "./package";
export { UnreadableFile } from "./unreadable";
export type { XmlAttributes, XmlElement } from "./xml";
export {
  attributeOf,
  childOf,
  childrenOf,
  escapeXml,
  flagOf,
  numberOf,
  parseXml,
  writeXml,
} from "./xml";
