import fc from "fast-check";

/** One row of a random log; `null` where nothing is written down. */
interface RandomRow {
  readonly lifter: string;
  readonly week: number;
  readonly load: number | null;
  readonly reps: number | null;
  readonly reserve: number | null;
  readonly sets: number | null;
}

const orNothing = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null, freq: 4 });

const row: fc.Arbitrary<RandomRow> = fc.record({
  lifter: fc.constantFrom("Ines", "Marit", "Joana", "Tuva"),
  week: fc.integer({ min: 1, max: 3 }),
  load: orNothing(fc.integer({ min: 1, max: 200 }).map((steps) => steps * 1.25)),
  reps: orNothing(fc.integer({ min: 1, max: 35 })),
  reserve: orNothing(fc.integer({ min: 0, max: 14 }).map((halves) => halves / 2)),
  sets: orNothing(fc.integer({ min: 1, max: 6 })),
});

/** Random logs of a few lifters and weeks, with gaps in every column of numbers. */
export const randomLog = fc.array(row, { minLength: 1, maxLength: 80 }).map((rows) => {
  const column = <K extends keyof RandomRow>(key: K) => rows.map((one) => one[key]);
  return {
    keys: { lifter: column("lifter"), week: column("week") },
    load: column("load"),
    reps: column("reps"),
    reserve: column("reserve"),
    sets: column("sets"),
  };
});
