import * as cells from "../cells";
import { BadInput, NoAnswer } from "../core/problem";

/** What went wrong, as a cell shows it. Anything we did not foresee is an error too, never a bare exception. */
export function toCellError(error: unknown): cells.CellError {
  if (error instanceof cells.CellError) return error;
  if (error instanceof BadInput) return cells.invalid(inCells(error.message));
  if (error instanceof NoAnswer) return cells.notAvailable(inCells(error.message));
  return cells.invalid(`this could not be computed (${String(error)})`);
}

/** The core counts the rows that it is given, "row 7: …"; of a range that is its 7th row. */
const inCells = (message: string) =>
  message.replace(/^row (\d+)\b/, (_row, number: string) => cells.nthRow(Number(number)));

/** Lets the core's refusals reach the cell layer as cell errors, each in its own position. */
export function answering<V, R>(compute: (values: V) => R): (values: V) => R {
  return (values) => {
    try {
      return compute(values);
    } catch (error) {
      throw toCellError(error);
    }
  };
}

/** The cell layer's `lift`, for computations in the core. */
export const lift = <A extends cells.Arguments>(
  inputs: A,
  compute: (values: cells.Values<A>) => cells.Content,
) => cells.lift(inputs, answering(compute));

/** The cell layer's `liftRow`, for computations in the core. */
export const liftRow = <A extends cells.Arguments, C extends cells.Choices>(
  inputs: A,
  labels: C,
  part: unknown,
  compute: (values: cells.Values<A>) => cells.Parts<C>,
) => cells.liftRow(inputs, labels, part, answering(compute));

/** The cell layer's `liftReport`, for computations in the core. */
export const liftReport = <A extends cells.Arguments, C extends cells.Choices>(
  inputs: A,
  labels: C,
  part: unknown,
  compute: (values: cells.Values<A>) => cells.Parts<C>,
) => cells.liftReport(inputs, labels, part, answering(compute));
