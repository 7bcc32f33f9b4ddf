import { CellValueType } from "@univerjs/core";
import { FontCache, Text } from "@univerjs/preset-sheets-core";
import { fitNumber } from "./fitNumber";

/** A cell keeps a little space at its sides; a number may use it before it has no room. */
const TOLERANCE = 2;

const draw = Text.drawWith.bind(Text);

/** Lets no cell draw a part of a number that is wider than it. */
Text.drawWith = (context, options, skeleton) => {
  const { text, width, cellValueType, fontStyle } = options;
  if (cellValueType !== CellValueType.NUMBER) return draw(context, options, skeleton);
  const widthOf = (part: string) => FontCache.getMeasureText(part, fontStyle).width;
  const fitting = fitNumber(text, width + TOLERANCE, widthOf);
  return draw(
    context,
    fitting === text ? options : { ...options, text: fitting, warp: false },
    skeleton,
  );
};
