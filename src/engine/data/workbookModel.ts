import type { IRange, IStyleData, IWorkbookData } from "@univerjs/core";
import { layoutOf } from "../../xlsx/layout";
import type { CellValue, ImageFile, StyleModel, WorkbookModel } from "../../xlsx/model";
import { filtersOf } from "./filters";
import { namesModel } from "./names";
import { pictureModels, picturesOf } from "./pictures";
import type { NamedStyle, StyleNumber } from "./sheetModel";
import { sheetModel } from "./sheetModel";
import { styleModel } from "./style";

/** An open workbook, as far as writing it asks. */
export interface ComputedWorkbook {
  /** The workbook as the spreadsheet keeps it; it does not hold what formulas spilled. */
  save(): IWorkbookData;
  /** The value a cell shows: `read("Test day", "F7")`. */
  read(sheet: string, address: string): CellValue;
  /** The cells that the formula in a cell spills over, its own among them. */
  spill(sheet: string, address: string): IRange | undefined;
}

/** An open workbook as a file keeps one: every formula with the value it computed, in files' spelling. */
export function workbookModel(book: ComputedWorkbook): WorkbookModel {
  const data = book.save();
  const pictures = picturesOf(data);
  const filters = filtersOf(data);
  const images = new Map<string, ImageFile | undefined>();
  const styles = collectStyles(data);
  const sheets = data.sheetOrder.flatMap((id) => {
    const sheet = data.sheets[id];
    if (sheet === undefined) return [];
    const name = sheet.name ?? "";
    const contents = {
      read: (address: string) => book.read(name, address),
      spill: (address: string) => book.spill(name, address),
      filtered: filters.get(id),
    };
    const model = sheetModel(sheet, contents, styles.ofSheet(sheet.defaultStyle));
    const placed = pictureModels(pictures.get(sheet.id ?? "") ?? [], layoutOf(model), images);
    return { ...model, pictures: placed };
  });
  return { sheets, styles: styles.all, names: namesModel(data), tables: [], from1904: false };
}

/** Gives numbers to the styles that cells have, the first to that of cells nobody has touched. */
function collectStyles({ styles, defaultStyle }: IWorkbookData) {
  const lookUp = (style: NamedStyle): IStyleData =>
    (typeof style === "string" ? styles[style] : style) ?? {};
  const ofBook = withoutEmpty(lookUp(defaultStyle));
  const all: StyleModel[] = [styleModel(ofBook)];
  const numbers = new Map<string, number>();

  /** The numbers for a sheet with a style of its own under all its cells. */
  function ofSheet(sheetStyle: NamedStyle): StyleNumber {
    const ground = { ...ofBook, ...withoutEmpty(lookUp(sheetStyle)) };
    const ofLayers = new Map<string, number>();
    return (layers) => {
      const key = JSON.stringify(layers);
      const known = ofLayers.get(key);
      if (known !== undefined) return known;
      const merged = Object.assign({}, ground, ...layers.map((each) => lookUp(each)));
      const style = styleModel(withoutEmpty(merged));
      const number = numberOf(style);
      ofLayers.set(key, number);
      return number;
    };
  }

  function numberOf(style: StyleModel): number {
    const key = JSON.stringify(style);
    const number = numbers.get(key) ?? all.push(style) - 1;
    numbers.set(key, number);
    return number;
  }

  return { all, ofSheet };
}

function withoutEmpty(style: IStyleData): IStyleData {
  return Object.fromEntries(
    Object.entries(style).filter(([, value]) => value !== null && value !== undefined),
  );
}
