import { readReference, type ExpectedError, type Match, type Row } from "./data";

interface Step {
  readonly rpe: number;
  readonly printed: string;
  readonly reserve: number | ExpectedError;
}

interface EffortScale {
  readonly source: string;
  readonly reserveMark: string;
  readonly match: Match;
  readonly scale: readonly Step[];
}

const read = () => readReference("effort-scale") as EffortScale;

/** The scale of effort: RPE, what is printed beside it, and the reserve it stands for. */
export const effortScale = {
  read,
  /** The scale as calls of the two functions that go up and down it. */
  rows(): Row[] {
    const { scale, source, reserveMark: mark, match } = read();
    const common = { match, source, mark };
    return scale.flatMap(({ rpe, printed, reserve }) => {
      const down = { ...common, function: "RPETORIR", arguments: [rpe], expected: reserve };
      const up = { ...common, function: "RIRTORPE", arguments: [reserve], expected: rpe };
      const note = `printed: ${printed}`;
      return typeof reserve === "number"
        ? [
            { ...down, note },
            { ...up, note },
          ]
        : [{ ...down, note }];
    });
  },
};
