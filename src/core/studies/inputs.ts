import { BadInput } from "../problem";

/** Sizes past these are slips, not measurements, and their fourth powers overflow. */
const LARGEST = 1e50;
export const SMALLEST = 1e-50;

export function requireNumber(name: string, value: number): void {
  if (!(Math.abs(value) <= LARGEST)) {
    throw new BadInput(`${name} is ${value}; expected a number of at most ${LARGEST} in size`);
  }
}

export function requirePositive(name: string, value: number): void {
  if (!(value > 0)) throw new BadInput(`${name} is ${value}; expected a number above 0`);
  if (value < SMALLEST || value > LARGEST) {
    throw new BadInput(`${name} is ${value}; expected a number from ${SMALLEST} to ${LARGEST}`);
  }
}

/** A group needs two people for a standard deviation. */
export function requireGroupSize(name: string, value: number): void {
  if (!(Number.isSafeInteger(value) && value >= 2)) {
    throw new BadInput(`${name} is ${value}; expected a whole number of at least 2`);
  }
}

export function requireCorrelation(value: number): void {
  if (!(value >= -1 && value <= 1)) {
    throw new BadInput(`correlation is ${value}; expected a number from −1 to 1`);
  }
}

/** An interval runs from low up to high. */
export function requireInterval(low: number, high: number): void {
  requireNumber("low", low);
  requireNumber("high", high);
  if (!(low < high))
    throw new BadInput(`low is ${low} and high is ${high}; expected low below high`);
}

/** Two columns that run side by side, a row a study. */
export function requireSameLength(
  nameA: string,
  a: readonly number[],
  nameB: string,
  b: readonly number[],
): void {
  if (a.length !== b.length) {
    throw new BadInput(
      `${nameA} has ${a.length} values and ${nameB} has ${b.length}; expected as many in both`,
    );
  }
}

/** Checks a column of effects and their standard errors. */
export function requireStudies(
  effects: readonly number[],
  standardErrors: readonly number[],
): void {
  requireSameLength("effects", effects, "standardErrors", standardErrors);
  effects.forEach((effect, i) => {
    requireNumber(`value ${i + 1} of effects`, effect);
  });
  standardErrors.forEach((error, i) => {
    requirePositive(`value ${i + 1} of standardErrors`, error);
  });
}
