import type { Nullable } from "@univerjs/core";
import type {
  ArrayValueObject,
  BaseReferenceObject,
  BaseValueObject,
} from "@univerjs/engine-formula";
import { FormulaRuntimeService, NumberValueObject } from "@univerjs/engine-formula";

/**
 * A formula that comes to a blank cell shows 0, and so does each blank cell of what it spills: no formula leaves a cell
 * blank. In the engine some did, as `IF(TRUE,A1)`, and `IF(B1="",…)` beside them took the other way. Within a formula a
 * blank stays one: `IF(TRUE,A1)=""` asks about the cell.
 */
export function showBlanksAsZero(): void {
  const { setRuntimeData } = FormulaRuntimeService.prototype;
  FormulaRuntimeService.prototype.setRuntimeData = function (result) {
    setRuntimeData.call(this, shown(result));
  };
}

function shown(result: BaseReferenceObject | BaseValueObject): typeof result {
  if (result.isReferenceObject()) return filled(result as BaseReferenceObject);
  const value = result as BaseValueObject;
  return value.isArray() ? filled(value as ArrayValueObject) : notBlank(value);
}

const notBlank = (value: Nullable<BaseValueObject>): BaseValueObject =>
  value && !value.isNull() ? value : NumberValueObject.create(0);

/** The same cells without blanks; they are asked one by one, since a copy of a long column would be as long. */
function filled<Cells extends BaseReferenceObject | ArrayValueObject>(cells: Cells): Cells {
  const own: Pick<BaseReferenceObject, "iterator" | "getFirstCell"> = {
    iterator: (callback) => {
      cells.iterator((value, row, column) => callback(notBlank(value), row, column));
    },
    getFirstCell: () => notBlank(cells.getFirstCell()),
  };
  return Object.assign(Object.create(cells) as Cells, own);
}
