import { choice, expectRoomFor, isGiven, readList, readOne, table, type Grid } from "../../cells";
import { reserveToRpe } from "../../core/load/effortScale";
import type { Equation } from "../../core/strength/equations";
import { ScaleChoice } from "../choices";
import { equationOf } from "../equation";
import * as quantities from "../quantities";

const USUAL_REPS = Array.from({ length: 12 }, (_rep, index) => index + 1);
const USUAL_RESERVES = [0, 1, 2, 3, 4];

/** Reps down, reserves across, and in each cell what `cell` makes of their sum; "" past the equation's cap. */
export function chart(
  reps: unknown,
  reserves: unknown,
  equation: unknown,
  scale: unknown,
  cell: (repsToFailure: number, equation: Equation) => number,
): Grid {
  const down = listOr(reps, quantities.reps(), USUAL_REPS);
  const across = listOr(reserves, quantities.reserve("reserves"), USUAL_RESERVES);
  expectRoomFor({ rows: down.length + 1, columns: across.length + 1 });
  const curve = readOne(equationOf(equation))!;
  const headings = readOne(choice(scale, "scale", ScaleChoice, ScaleChoice.reserve));
  return table(
    [
      "",
      ...across.map((reserve) => (headings === ScaleChoice.rpe ? reserveToRpe(reserve) : reserve)),
    ],
    down.map((reps) => [
      reps,
      ...across.map((reserve) => {
        const t = reps + reserve;
        return t > curve.cap ? "" : cell(t, curve);
      }),
    ]),
  );
}

function listOr(
  given: unknown,
  quantity: ReturnType<typeof quantities.reps>,
  usual: readonly number[],
): readonly number[] {
  if (!isGiven(given)) return usual;
  const list = readList(given, quantity);
  return list.length === 0 ? usual : list;
}
