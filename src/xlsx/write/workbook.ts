import type { IRange, IWorkbookData, IWorksheetData } from "@univerjs/core";
import { BooleanNumber } from "@univerjs/core";
import { toFile } from "../../formula/future";
import { endingOf, imageTypeOf } from "../images";
import { layoutOf } from "../layout";
import { escapeXml, writePackage, writeXml } from "../package";
import { picturesOf } from "../pictures";
import { toFileText } from "../strings";
import type { DefinedName } from "../names";
import { namesResource, wholeWorkbook } from "../names";
import type { Value } from "./cells";
import { mainNamespace, relationshipNamespace } from "./namespaces";
import { createMedia, writeDrawing } from "./pictures";
import { writeSheet } from "./sheet";
import { createStyleSheet } from "./styles";

/** An open workbook, as far as writing it asks. */
export interface ComputedWorkbook {
  /** The workbook as the spreadsheet keeps it; it does not hold what formulas spilled. */
  save(): IWorkbookData;
  /** The value a cell shows: `read("Test day", "F7")`. */
  read(sheet: string, address: string): Value;
  /** The cells that the formula in a cell spills over, its own among them. */
  spill(sheet: string, address: string): IRange | undefined;
}

/**
 * Writes an open workbook as an .xlsx file. Our functions are in the spelling Excel keeps in files,
 * every formula has the value it computed, and formulas that spill are marked as such, so that
 * Excel does not cut them to one cell.
 */
export function writeWorkbook(book: ComputedWorkbook): Uint8Array {
  const data = book.save();
  const sheets = data.sheetOrder
    .map((id) => data.sheets[id])
    .filter((sheet) => sheet !== undefined);
  const visible = sheets.findIndex((sheet) => sheet.hidden !== BooleanNumber.TRUE);
  const styleOf = (style: IWorkbookData["defaultStyle"]) =>
    typeof style === "string" ? data.styles[style] : style;
  const styleSheet = createStyleSheet(styleOf(data.defaultStyle));
  const strings = createStrings();

  const pictures = picturesOf(data);
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
  parts.set("xl/workbook.xml", writeBook(sheets, visible, namesOf(data)));
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
    const contents = {
      read: (address: string) => book.read(sheet.name ?? "", address),
      spill: (address: string) => book.spill(sheet.name ?? "", address),
    };
    const drawing = writeDrawing(pictures.get(sheet.id ?? "") ?? [], layoutOf(sheet), media);
    const drawn = drawing.media.length > 0;
    if (drawn) {
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
    parts.set(
      `xl/worksheets/${fileName(index)}`,
      writeSheet(sheet, data, contents, styleSheet, strings, surroundings),
    );
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
  sheets: readonly Partial<IWorksheetData>[],
  visible: number,
  names: readonly DefinedName[],
): string {
  const listed = sheets.map(({ name, hidden }, index) =>
    writeXml("sheet", {
      name,
      sheetId: index + 1,
      state: hidden === BooleanNumber.TRUE ? "hidden" : undefined,
      "r:id": `rId${index + 1}`,
    }),
  );
  const defined = names.flatMap(({ name, formulaOrRefString, localSheetId, hidden, comment }) => {
    const local = sheets.findIndex(({ id }) => id === localSheetId);
    if (local < 0 && localSheetId !== undefined && localSheetId !== wholeWorkbook) return [];
    const attributes = {
      name,
      comment,
      localSheetId: local < 0 ? undefined : local,
      hidden: hidden ? 1 : undefined,
    };
    const formula = toFile(formulaOrRefString.replace(/^=/, ""));
    return writeXml("definedName", attributes, escapeXml(formula));
  });
  return writeXml("workbook", { xmlns: mainNamespace, "xmlns:r": relationshipNamespace }, [
    writeXml("bookViews", {}, writeXml("workbookView", { activeTab: Math.max(0, visible) })),
    writeXml("sheets", {}, listed),
    defined.length > 0 ? writeXml("definedNames", {}, defined) : "",
    writeXml("calcPr", { calcId: 191029 }),
  ]);
}

function namesOf({ resources }: IWorkbookData): DefinedName[] {
  const data = resources?.find(({ name }) => name === namesResource)?.data;
  return data ? Object.values(JSON.parse(data) as Record<string, DefinedName>) : [];
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
      return writeXml("sst", { xmlns: mainNamespace, uniqueCount: items.length }, items);
    },
  };
}

const packageNamespace = "http://schemas.openxmlformats.org/package/2006";

function writeRelationships(related: readonly (readonly [type: string, target: string])[]): string {
  return writeXml(
    "Relationships",
    { xmlns: `${packageNamespace}/relationships` },
    related.map(([type, Target], index) =>
      writeXml("Relationship", {
        Id: `rId${index + 1}`,
        Type: `${relationshipNamespace}/${type}`,
        Target,
      }),
    ),
  );
}

/** What the parts at these paths hold, and the pictures under these names. */
function writeContentTypes(paths: readonly string[], media: readonly string[]): string {
  const endings = [...new Set(media.map(endingOf))];
  const typed = paths.flatMap((path) => {
    const type = partTypes.find(([pattern]) => pattern.test(path))?.[1];
    return type === undefined ? [] : { PartName: `/${path}`, ContentType: type };
  });
  return writeXml("Types", { xmlns: `${packageNamespace}/content-types` }, [
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

const office = "application/vnd.openxmlformats-officedocument";
const partTypes: readonly (readonly [path: RegExp, type: string])[] = [
  [/^xl\/workbook\.xml$/, `${office}.spreadsheetml.sheet.main+xml`],
  [/^xl\/worksheets\/sheet\d+\.xml$/, `${office}.spreadsheetml.worksheet+xml`],
  [/^xl\/drawings\/drawing\d+\.xml$/, `${office}.drawing+xml`],
  [/^xl\/styles\.xml$/, `${office}.spreadsheetml.styles+xml`],
  [/^xl\/sharedStrings\.xml$/, `${office}.spreadsheetml.sharedStrings+xml`],
  [/^xl\/metadata\.xml$/, `${office}.spreadsheetml.sheetMetadata+xml`],
  [/^docProps\/app\.xml$/, `${office}.extended-properties+xml`],
];

/*
 * LibreOffice shows the values in a file only where it trusts the program that wrote it, which it
 * tells by this name's first word; else it computes, and it does not know our functions.
 */
const properties = writeXml(
  "Properties",
  { xmlns: "http://schemas.openxmlformats.org/officeDocument/2006/extended-properties" },
  writeXml("Application", {}, "Microsoft Excel compatible: Reps to Spare"),
);

/*
 * What marks a cell's formula as one that spills: entry 1 of the cell metadata, which says "dynamic
 * array". Without it Excel takes the formula for one of the old arrays, which keep to their cells.
 */
const dynamicArray = {
  name: "XLDAPR",
  namespace: "http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray",
  extension: "{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}",
};

const metadata = writeXml(
  "metadata",
  { xmlns: mainNamespace, "xmlns:xda": dynamicArray.namespace },
  [
    writeXml(
      "metadataTypes",
      { count: 1 },
      writeXml("metadataType", {
        name: dynamicArray.name,
        ...{ minSupportedVersion: 120000, copy: 1, pasteAll: 1, pasteValues: 1, merge: 1 },
        ...{ splitFirst: 1, rowColShift: 1, clearFormats: 1, clearComments: 1, assign: 1 },
        ...{ coerce: 1, cellMeta: 1 },
      }),
    ),
    writeXml(
      "futureMetadata",
      { name: dynamicArray.name, count: 1 },
      writeXml(
        "bk",
        {},
        writeXml(
          "extLst",
          {},
          writeXml(
            "ext",
            { uri: dynamicArray.extension },
            writeXml("xda:dynamicArrayProperties", { fDynamic: 1, fCollapsed: 0 }),
          ),
        ),
      ),
    ),
    writeXml("cellMetadata", { count: 1 }, writeXml("bk", {}, writeXml("rc", { t: 1, v: 0 }))),
  ],
);
