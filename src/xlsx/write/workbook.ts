import { version } from "../../../package.json";
import { endingOf, imageTypeOf } from "../images";
import { layoutOf } from "../layout";
import type { NameModel, SheetModel, WorkbookModel } from "../model";
import { escapeXml, writePackage, writeXml } from "../package";
import { toFileText } from "../strings";
import { filterNames } from "./filter";
import { MAIN_NAMESPACE, RELATIONSHIP_NAMESPACE } from "./namespaces";
import { createMedia, writeDrawing } from "./pictures";
import { writeSheet } from "./sheet";
import { createStyleSheet } from "./styles";

/**
 * Writes a workbook as an .xlsx file. Formulas that spill are marked as such, so that Excel does not
 * cut them to one cell.
 */
export function writeWorkbook({ sheets, styles, names }: WorkbookModel): Uint8Array {
  const visible = sheets.findIndex(({ hidden }) => !hidden);
  const styleSheet = createStyleSheet(styles[0] ?? {});
  const looks = new Map<number, number>();
  const lookOf = (style: number | undefined): number => {
    if (style === undefined) return 0;
    const look = looks.get(style) ?? styleSheet.numberOf(styles[style] ?? {});
    looks.set(style, look);
    return look;
  };
  const strings = createStrings();
  const media = createMedia();

  const parts = new Map<string, string>();
  parts.set(
    "_rels/.rels",
    writeRelationships([
      ["officeDocument", "xl/workbook.xml"],
      ["extended-properties", "docProps/app.xml"],
    ]),
  );
  parts.set("docProps/app.xml", properties);
  parts.set("xl/workbook.xml", writeBook(sheets, visible, names));
  parts.set(
    "xl/_rels/workbook.xml.rels",
    writeRelationships([
      ...sheets.map((_, index): [string, string] => ["worksheet", `worksheets/${fileName(index)}`]),
      ["styles", "styles.xml"],
      ["sharedStrings", "sharedStrings.xml"],
      ["sheetMetadata", "metadata.xml"],
    ]),
  );
  sheets.forEach((sheet, index) => {
    const drawn = sheet.pictures.length > 0;
    if (drawn) {
      const drawing = writeDrawing(sheet.pictures, layoutOf(sheet), media);
      const path = `drawings/drawing${index + 1}.xml`;
      parts.set(`xl/${path}`, drawing.xml);
      parts.set(
        `xl/drawings/_rels/drawing${index + 1}.xml.rels`,
        writeRelationships(drawing.media.map((name) => ["image", `../media/${name}`])),
      );
      parts.set(
        `xl/worksheets/_rels/${fileName(index)}.rels`,
        writeRelationships([["drawing", `../${path}`]]),
      );
    }
    const surroundings = { selected: index === visible, drawing: drawn ? "rId1" : undefined };
    parts.set(`xl/worksheets/${fileName(index)}`, writeSheet(sheet, lookOf, strings, surroundings));
  });
  parts.set("xl/styles.xml", styleSheet.write());
  parts.set("xl/sharedStrings.xml", strings.write());
  parts.set("xl/metadata.xml", metadata);

  const encoder = new TextEncoder();
  const encode = (xml: string) =>
    encoder.encode(`<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n${xml}`);
  const mediaPaths = [...media.files].map(([name, bytes]) => [`xl/media/${name}`, bytes] as const);
  const types = writeContentTypes([...parts.keys()], [...media.files.keys()]);
  return writePackage({
    parts: new Map([
      ["[Content_Types].xml", encode(types)],
      ...[...parts].map(([path, xml]) => [path, encode(xml)] as const),
      ...mediaPaths,
    ]),
  });
}

const fileName = (index: number) => `sheet${index + 1}.xml`;

function writeBook(
  sheets: readonly SheetModel[],
  visible: number,
  names: readonly NameModel[],
): string {
  const listed = sheets.map(({ name, hidden }, index) =>
    writeXml("sheet", {
      name,
      sheetId: index + 1,
      state: hidden ? "hidden" : undefined,
      "r:id": `rId${index + 1}`,
    }),
  );
  const defined = [...names, ...filterNames(sheets)].flatMap(
    ({ name, text, sheet, hidden, comment }) => {
      const local = sheets.findIndex((each) => each.name === sheet);
      if (sheet !== undefined && local < 0) return [];
      const attributes = {
        name,
        comment,
        localSheetId: local < 0 ? undefined : local,
        hidden: hidden ? 1 : undefined,
      };
      return writeXml("definedName", attributes, escapeXml(text));
    },
  );
  return writeXml("workbook", { xmlns: MAIN_NAMESPACE, "xmlns:r": RELATIONSHIP_NAMESPACE }, [
    writeXml("bookViews", {}, writeXml("workbookView", { activeTab: Math.max(0, visible) })),
    writeXml("sheets", {}, listed),
    defined.length > 0 ? writeXml("definedNames", {}, defined) : "",
    writeXml("calcPr", { calcId: 191029 }),
  ]);
}

/** Collects the texts of a workbook's cells, each once. */
function createStrings() {
  const numbers = new Map<string, number>();
  return {
    numberOf(text: string): number {
      const number = numbers.get(text) ?? numbers.size;
      numbers.set(text, number);
      return number;
    },
    write(): string {
      const items = [...numbers.keys()].map((text) => {
        const kept = escapeXml(toFileText(text));
        return `<si><t xml:space="preserve">${kept}</t></si>`;
      });
      return writeXml("sst", { xmlns: MAIN_NAMESPACE, uniqueCount: items.length }, items);
    },
  };
}

const PACKAGE_NAMESPACE = "http://schemas.openxmlformats.org/package/2006";

function writeRelationships(related: readonly (readonly [type: string, target: string])[]): string {
  return writeXml(
    "Relationships",
    { xmlns: `${PACKAGE_NAMESPACE}/relationships` },
    related.map(([type, Target], index) =>
      writeXml("Relationship", {
        Id: `rId${index + 1}`,
        Type: `${RELATIONSHIP_NAMESPACE}/${type}`,
        Target,
      }),
    ),
  );
}

/** What the parts at these paths hold, and the pictures under these names. */
function writeContentTypes(paths: readonly string[], media: readonly string[]): string {
  const endings = [...new Set(media.map(endingOf))];
  const typed = paths.flatMap((path) => {
    const type = PART_TYPES.find(([pattern]) => pattern.test(path))?.[1];
    return type === undefined ? [] : { PartName: `/${path}`, ContentType: type };
  });
  return writeXml("Types", { xmlns: `${PACKAGE_NAMESPACE}/content-types` }, [
    ...endings.map((Extension) =>
      writeXml("Default", { Extension, ContentType: imageTypeOf(Extension) }),
    ),
    writeXml("Default", {
      Extension: "rels",
      ContentType: "application/vnd.openxmlformats-package.relationships+xml",
    }),
    writeXml("Default", { Extension: "xml", ContentType: "application/xml" }),
    ...typed.map((attributes) => writeXml("Override", attributes)),
  ]);
}

const OFFICE = "application/vnd.openxmlformats-officedocument";
const PART_TYPES: readonly (readonly [path: RegExp, type: string])[] = [
  [/^xl\/workbook\.xml$/, `${OFFICE}.spreadsheetml.sheet.main+xml`],
  [/^xl\/worksheets\/sheet\d+\.xml$/, `${OFFICE}.spreadsheetml.worksheet+xml`],
  [/^xl\/drawings\/drawing\d+\.xml$/, `${OFFICE}.drawing+xml`],
  [/^xl\/styles\.xml$/, `${OFFICE}.spreadsheetml.styles+xml`],
  [/^xl\/sharedStrings\.xml$/, `${OFFICE}.spreadsheetml.sharedStrings+xml`],
  [/^xl\/metadata\.xml$/, `${OFFICE}.spreadsheetml.sheetMetadata+xml`],
  [/^docProps\/app\.xml$/, `${OFFICE}.extended-properties+xml`],
];

/*
 * LibreOffice shows the values in a file only where it trusts the program that wrote it, which it
 * tells by this name's first word; else it computes, and it does not know our functions. The version
 * stands here too, for AppVersion holds a number of the form 16.0300 and nothing else.
 */
const properties = writeXml(
  "Properties",
  { xmlns: "http://schemas.openxmlformats.org/officeDocument/2006/extended-properties" },
  writeXml("Application", {}, `Microsoft Excel compatible: Reps to Spare ${version}`),
);

/*
 * What marks a cell's formula as one that spills: entry 1 of the cell metadata, which says "dynamic
 * array". Without it Excel takes the formula for one of the old arrays, which keep to their cells.
 */
const DYNAMIC_ARRAY = {
  name: "XLDAPR",
  namespace: "http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray",
  extension: "{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}",
};

const metadata = writeXml(
  "metadata",
  { xmlns: MAIN_NAMESPACE, "xmlns:xda": DYNAMIC_ARRAY.namespace },
  [
    writeXml(
      "metadataTypes",
      { count: 1 },
      writeXml("metadataType", {
        name: DYNAMIC_ARRAY.name,
        ...{ minSupportedVersion: 120000, copy: 1, pasteAll: 1, pasteValues: 1, merge: 1 },
        ...{ splitFirst: 1, rowColShift: 1, clearFormats: 1, clearComments: 1, assign: 1 },
        ...{ coerce: 1, cellMeta: 1 },
      }),
    ),
    writeXml(
      "futureMetadata",
      { name: DYNAMIC_ARRAY.name, count: 1 },
      writeXml(
        "bk",
        {},
        writeXml(
          "extLst",
          {},
          writeXml(
            "ext",
            { uri: DYNAMIC_ARRAY.extension },
            writeXml("xda:dynamicArrayProperties", { fDynamic: 1, fCollapsed: 0 }),
          ),
        ),
      ),
    ),
    writeXml("cellMetadata", { count: 1 }, writeXml("bk", {}, writeXml("rc", { t: 1, v: 0 }))),
  ],
);
