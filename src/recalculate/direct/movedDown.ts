import type {
  CellReference,
  DirectArgument,
  DirectFormula,
  DirectRead,
  Expression,
  OurCall,
} from "./expression";

/** A formula as it reads so many rows further down, where none of its references' rows change places. */
export const movedDown = ({ expression, reads }: DirectFormula, rows: number): DirectFormula => ({
  expression: moved(expression, rows),
  reads: reads.map((read) => movedRange(read, rows)),
});

function moved(expression: Expression, rows: number): Expression {
  switch (expression.kind) {
    case "value":
      return expression;
    case "cell":
      return movedCell(expression, rows);
    case "ours":
      return movedCall(expression, rows);
    case "negative":
    case "percent":
      return { ...expression, of: moved(expression.of, rows) };
    case "operator": {
      const { left, right } = expression;
      return { ...expression, left: moved(left, rows), right: moved(right, rows) };
    }
    case "wrapper":
      return { ...expression, given: expression.given.map((part) => moved(part, rows)) };
  }
}

const movedCell = (cell: CellReference, rows: number): CellReference =>
  cell.moves ? { ...cell, row: cell.row + rows } : cell;

const movedCall = (call: OurCall, rows: number): OurCall => ({
  ...call,
  given: call.given.map((argument) => movedArgument(argument, rows)),
});

function movedArgument(argument: DirectArgument, rows: number): DirectArgument {
  switch (argument.kind) {
    case "omitted":
    case "value":
    case "array":
      return argument;
    case "computed":
      return { ...argument, expression: moved(argument.expression, rows) };
    case "range":
      return movedRange(argument, rows);
  }
}

function movedRange<Range extends DirectRead>(range: Range, rows: number): Range {
  const { area, moves } = range;
  if (moves === "none") return range;
  const startRow = moves === "both" ? area.startRow + rows : area.startRow;
  return { ...range, area: { ...area, startRow, endRow: area.endRow + rows } };
}
