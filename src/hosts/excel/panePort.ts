import { cellAddress, parseArea } from "../../formula/address";
import { partsOf, plainAddress } from "../../pane/formula/reference";
import type { CellValues, ChartColumn, NativeChart, Port } from "../../pane/port";
import { freeName } from "../../pane/sheetName";
import type { ExcelApi, Range, RequestContext } from "./paneOffice";
import { fillSheet } from "./paneSheet";

const WHOLE_SHEET = "A1:XFD1048576";

/** The pane's port to Excel. */
export function excelPort(excel: ExcelApi): Port {
  return {
    readSelection: () =>
      excel.run(async (context) => {
        const range = await inUse(context.workbook.getSelectedRange(), context);
        range.load("values");
        await context.sync();
        const { sheet, address } = partsOf(range.address);
        return {
          sheet: sheet ?? "",
          address: plainAddress(address),
          values: range.values as CellValues,
        };
      }),

    readRange: (reference) =>
      excel.run(async (context) => {
        const range = await inUse(rangeAt(reference, context), context);
        range.load("values");
        await context.sync();
        return range.values as CellValues;
      }),

    readTarget: () =>
      excel.run(async (context) => {
        const cell = context.workbook.getActiveCell();
        cell.load("address, formulas");
        const tables = cell.getTables(false).getCount();
        await context.sync();
        const { sheet, address } = partsOf(cell.address);
        return {
          sheet: sheet ?? "",
          address: plainAddress(address),
          filled: cell.formulas.flat().some((formula) => formula !== ""),
          inTable: tables.value > 0,
        };
      }),

    firstFilled: (reference) =>
      excel.run(async (context) => {
        const range = rangeAt(reference, context);
        // A formula that shows nothing, and the cells that another one spills into, hold something too.
        range.load("formulas, values");
        await context.sync();
        return firstFilledAt(plainAddress(partsOf(reference).address), range);
      }),

    formulasOn: (name) =>
      excel.run(async (context) => {
        const whole = context.workbook.worksheets.getItem(name).getRange(WHOLE_SHEET);
        const used = whole.getUsedRangeOrNullObject(true);
        used.load("address, formulas");
        await context.sync();
        if (used.isNullObject) return [];
        const corner = parseArea(plainAddress(partsOf(used.address).address))!;
        return used.formulas.flatMap((row, down) =>
          row.flatMap((formula, right) => {
            if (typeof formula !== "string" || !formula.startsWith("=")) return [];
            const address = cellAddress(corner.startRow + down, corner.startColumn + right);
            return [{ address, formula }];
          }),
        );
      }),

    insert: ({ sheet, address, formula, headings, formats, widths }) =>
      excel.run(async (context) => {
        const on = context.workbook.worksheets.getItem(sheet);
        for (const { address: at, text } of headings) {
          const heading = on.getRange(at);
          if (text !== undefined) heading.formulas = [[text]];
          heading.format.font.bold = true;
        }
        for (const { address: at, format } of formats) on.getRange(at).numberFormat = format;
        // Alone in its cell it spills, as a formula that was typed does.
        on.getRange(address).formulas = [[formula]];
        await context.sync();
        const columns = Object.entries(widths).map(([column, characters]) => {
          const range = on.getRange(cellAddress(0, Number(column)));
          range.format.load("columnWidth");
          return { range, wanted: characters * CHARACTER + SIDES };
        });
        await context.sync();
        for (const { range, wanted } of columns) {
          if (range.format.columnWidth < wanted) range.format.columnWidth = wanted;
        }
        on.getRange(address).select();
        await context.sync();
      }),

    addSheet: (ready) =>
      excel.run(async (context) => {
        const { worksheets } = context.workbook;
        worksheets.load("items/name");
        await context.sync();
        const name = freeName(
          ready.name,
          worksheets.items.map((sheet) => sheet.name),
        );
        const sheet = worksheets.add(name);
        fillSheet(sheet, ready);
        sheet.activate();
        await context.sync();
        return name;
      }),

    onSelectionChange(listener) {
      void excel.run(async (context) => {
        context.workbook.onSelectionChanged.add(() => {
          listener();
          return Promise.resolve();
        });
        await context.sync();
      });
    },

    addImage: ({ png, width, height, description }) =>
      excel.run(async (context) => {
        const { worksheet, left, top } = await placeToPut(context);
        const shape = worksheet.shapes.addImage(png);
        Object.assign(shape, {
          left,
          top,
          width: width * POINTS,
          height: height * POINTS,
          altTextDescription: description,
        });
        await context.sync();
      }),

    addChart: ({ kind, title, across, up }) =>
      excel.run(async (context) => {
        const { worksheet, left, top } = await placeToPut(context);
        const column = ({ cells }: ChartColumn) => {
          const { sheet, address } = partsOf(cells);
          const { worksheets } = context.workbook;
          const on = sheet === undefined ? worksheet : worksheets.getItem(sheet);
          return on.getRange(belowHeading(plainAddress(address)));
        };
        const [first] = up;
        const chart = worksheet.charts.add(KINDS[kind], column(first), "Columns");
        up.forEach((each, index) => {
          const series =
            index === 0 ? chart.series.getItemAt(0) : chart.series.add(each.name, index);
          if (index === 0) series.name = each.name;
          else series.setValues(column(each));
          series.setXAxisValues(column(across));
        });
        chart.left = left;
        chart.top = top;
        chart.title.text = title;
        chart.axes.categoryAxis.title.text = across.name;
        chart.axes.valueAxis.title.text = first.name;
        await context.sync();
      }),
  };
}

/** A screen's pixel in Excel's points. */
const POINTS = 0.75;

/** A character of Excel's usual font and the room at a cell's sides, in points. */
const CHARACTER = 5.5;
const SIDES = 9;

/** The cells of a reference; without a sheet's name, on the active sheet. */
function rangeAt(reference: string, { workbook: { worksheets } }: RequestContext): Range {
  const { sheet, address } = partsOf(reference);
  const on = sheet === undefined ? worksheets.getActiveWorksheet() : worksheets.getItem(sheet);
  return on.getRange(plainAddress(address));
}

/** The first cell of a range, row by row, that holds something. */
function firstFilledAt(address: string, { formulas, values }: Range): string | undefined {
  const area = parseArea(address);
  for (const [down, row] of formulas.entries()) {
    for (const [right, formula] of row.entries()) {
      const isFilled = formula !== "" || (values[down]?.[right] ?? "") !== "";
      if (area && isFilled) return cellAddress(area.startRow + down, area.startColumn + right);
    }
  }
  return undefined;
}

const KINDS: Readonly<Record<NativeChart["kind"], string>> = {
  line: "Line",
  columns: "ColumnClustered",
  points: "XYScatter",
};

/** "B1:B20" is "B2:B20": the heading is a name, not a value. */
const belowHeading = (address: string) =>
  address.replace(/\d+(?=:)/, (row) => String(Number(row) + 1));

/** Where a picture goes: to a single selected cell, else to the right of the selection. */
async function placeToPut(context: RequestContext) {
  const range = context.workbook.getSelectedRange();
  range.load("left, top, width, cellCount");
  await context.sync();
  const { worksheet, top } = range;
  return { worksheet, top, left: range.cellCount === 1 ? range.left : range.left + range.width };
}

/** More cells than anybody selects by hand: these are whole columns or rows. */
const MANY = 200_000;

/** The range itself; of whole columns and rows, the part down to the last cell that holds something. */
async function inUse(range: Range, context: RequestContext): Promise<Range> {
  range.load("address, cellCount");
  await context.sync();
  // Excel counts to 2 ** 31 and answers -1 for more.
  if (range.cellCount >= 0 && range.cellCount <= MANY) return range;
  const used = range.getUsedRangeOrNullObject(true);
  used.load("address");
  await context.sync();
  if (used.isNullObject) throw new Error(`${range.address} is blank`);
  return used;
}
