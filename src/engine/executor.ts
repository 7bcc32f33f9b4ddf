import type { BaseValueObject } from "@univerjs/engine-formula";
import { BaseFunction } from "@univerjs/engine-formula";
import type { Implementations } from "./metadata";
import type { Messages } from "./messages";
import { readArguments, writeGrid } from "./values";

/**
 * One of our functions as the formula engine calls it.
 *
 * The engine's simple way of registering a function shows it blanks as 0, errors as text and every
 * cell of a whole column, so this takes the engine's own objects and reads them itself.
 */
export class CellFunction extends BaseFunction {
  override needsReferenceObject = true;

  constructor(
    name: string,
    private readonly implementation: Implementations[string],
    private readonly messages: Messages,
  ) {
    super(name);
  }

  override calculate(...values: BaseValueObject[]): BaseValueObject {
    const result = this.implementation(...readArguments(values));
    this.messages.record(
      {
        unitId: this.unitId ?? "",
        sheetId: this.subUnitId ?? "",
        row: this.row,
        column: this.column,
      },
      result,
    );
    return writeGrid(result);
  }
}
