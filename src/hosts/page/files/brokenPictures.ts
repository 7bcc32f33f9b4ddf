import type { IWorkbookData } from "@univerjs/core";
import { picturesOf, withPictures } from "../../../engine/data/pictures";

/**
 * A workbook without the pictures that the browser cannot decode, and whether it had any. One of
 * those would stop the spreadsheet from drawing anything at all.
 */
export async function withoutBrokenPictures(
  data: IWorkbookData,
): Promise<{ data: IWorkbookData; broken: boolean }> {
  const pictures = picturesOf(data);
  const sources = [...new Set([...pictures.values()].flat().map(({ source }) => source))];
  const decoded = await Promise.all(sources.map(isDecodable));
  const broken = new Set(sources.filter((_, index) => !decoded[index]));
  if (broken.size === 0) return { data, broken: false };
  const shown = [...pictures].map(([sheet, ofSheet]) => {
    return [sheet, ofSheet.filter(({ source }) => !broken.has(source))] as const;
  });
  return { data: withPictures(data, new Map(shown)), broken: true };
}

function isDecodable(source: string): Promise<boolean> {
  const image = new Image();
  image.src = source;
  return image.decode().then(
    () => true,
    () => false,
  );
}
