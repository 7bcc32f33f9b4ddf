import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { studentCdf, studentQuantile } from "../../../src/core/statistics/distributions";
import { integratedEffects } from "../../../src/core/statistics/integratedEffects";
import type { SpreadInputs } from "../../../src/core/statistics/likelySpreads";
import { normalCdf } from "../../../src/core/statistics/normal";
import {
  mixtureAbove,
  mixtureBelow,
  mixtureInterval,
  mixtureMean,
  mixtureQuantile,
} from "../../../src/core/statistics/normalMixture";
import { bruteForceEffects, type BruteForceGrid } from "./bruteForceEffects";

/** Rubin 1981, J Educ Stat 6:377-400: coaching effects in eight schools, and their standard errors. */
const schools: SpreadInputs = {
  values: [28, 8, -3, 7, -1, 1, 18, 12],
  errorVariances: [15, 10, 16, 11, 9, 11, 10, 18].map((error) => error ** 2),
  sigma: 1,
  scale: 1e4,
};
/** Six changes in a squad, with a typical error of 2.5. */
const squad: SpreadInputs = {
  values: [5, 2.5, 12.5, 0, 2.5, 15],
  errorVariances: [2, 2, 2, 2, 2, 2],
  sigma: 2.5,
  scale: 10,
};

function expectWithin(actual: number, expected: number, distance: number) {
  expect(Math.abs(actual - expected), `${actual} for ${expected}`).toBeLessThanOrEqual(distance);
}

/** Every answer of the model against sums by force: means, and the chances at both ends of the intervals. */
function expectBruteForce(inputs: SpreadInputs, grid: BruteForceGrid, distance = 1e-8) {
  const effects = integratedEffects(inputs);
  const forced = bruteForceEffects(inputs, grid);
  const { low, high } = mixtureInterval(effects.next, 0.95);
  expectWithin(mixtureMean(effects.next), forced.nextMean(), distance * (high - low));
  expectWithin(forced.nextBelow(low), 0.025, distance);
  expectWithin(forced.nextBelow(high), 0.975, distance);
  inputs.values.forEach((_, i) => {
    const effect = effects.effect(i);
    const { low, high } = mixtureInterval(effect, 0.95);
    expectWithin(mixtureMean(effect), forced.effectMean(i), distance * (high - low));
    expectWithin(forced.effectBelow(i, low), 0.025, distance);
    expectWithin(forced.effectBelow(i, high), 0.975, distance);
    expectWithin(mixtureBelow(effect, 0), forced.effectBelow(i, 0), distance);
  });
}

describe("true values behind noisy ones, their spread integrated", () => {
  it("gives the eight schools of Rubin 1981 as R does, and BDA's table 5.3 within its 200 draws", () => {
    const { effect, middle } = integratedEffects(schools);
    expectWithin(mixtureMean(middle), 7.932375, 1e-6);
    const means = [11.40026, 7.894552, 6.130748, 7.644679, 5.126425, 6.138537, 10.66698, 8.456817];
    means.forEach((mean, i) => {
      expectWithin(mixtureMean(effect(i)), mean, 1e-5);
    });
    const { low, high } = mixtureInterval(effect(0), 0.95);
    expectWithin(low, -2.105, 1e-3);
    expectWithin(high, 31.623, 1e-3);
    // From memory: school A from -2 to 31 with median 10, school C from -11 to 19.
    expectWithin(mixtureQuantile(effect(0), 0.5), 10, 1);
    expectWithin(mixtureQuantile(effect(2), 0.025), -11, 3);
    expectWithin(mixtureQuantile(effect(2), 0.975), 19, 3);

    const narrower = integratedEffects({ ...schools, scale: 5 });
    expectWithin(mixtureMean(narrower.middle), 7.786873, 1e-6);
    expectWithin(mixtureMean(narrower.effect(0)), 9.060115, 1e-6);
  });

  it("is the sum by force where the errors are known", () => {
    expectBruteForce({ ...schools, scale: 5 }, { mostOmega: 60, omegaSteps: 2000 });
    expectBruteForce(squad, { mostOmega: 100, omegaSteps: 3000 });
    const two = { values: [0.2, 0.4], errorVariances: [0.0225, 0.04], sigma: 1, scale: 0.5 };
    expectBruteForce(two, { mostOmega: 5, omegaSteps: 3000 });
  });

  it("is the sum by force where the errors are estimated, even on 1 degree of freedom", () => {
    const three: SpreadInputs = {
      values: [1.25, 0.625, 1.125],
      errorVariances: [0.125, 0.2, 0.1],
      sigma: 0.4,
      scale: 0.4,
    };
    const omega = { mostOmega: 3, omegaSteps: 240 };
    expectBruteForce({ ...three, df: 9 }, { ...omega, logSigma: [-1.4, 3], sigmaSteps: 120 });
    expectBruteForce({ ...three, df: 1 }, { ...omega, logSigma: [-2.3, 9], sigmaSteps: 300 });
  });

  it("is the sum by force where the prior is far narrower or far wider than the errors", () => {
    const narrow = { ...squad, scale: 0.01 };
    expectBruteForce(narrow, { mostOmega: 0.1, omegaSteps: 1000 });
    expectBruteForce(
      { ...narrow, df: 1 },
      { mostOmega: 0.1, omegaSteps: 40, logSigma: [-2.3, 8], sigmaSteps: 300 },
    );
    const wide = { ...squad, values: [5, 250, -125, 0, 70, 15], scale: 400 };
    expectBruteForce(wide, { mostOmega: 2500, omegaSteps: 5000 });
  });

  it("is the sum by force where values and prior contradict each other", () => {
    const contrary = { ...squad, values: [0, 1000, -300], errorVariances: [1, 1, 1], sigma: 1 };
    expectBruteForce({ ...contrary, scale: 4 }, { mostOmega: 200, omegaSteps: 6000 });
    // Sigma can only be estimated, and wrong by far: the peak lies at 200 times the estimate, beyond a valley.
    expectBruteForce(
      { ...contrary, scale: 0.1, df: 20 },
      { mostOmega: 1, omegaSteps: 40, logSigma: [3, 9], sigmaSteps: 400 },
    );
  });

  it("is the sum by force where all values are the same", () => {
    expectBruteForce({ ...squad, values: [3, 3, 3, 3, 3, 3] }, { mostOmega: 60, omegaSteps: 3000 });
  });

  it("takes a sigma on more degrees of freedom than can be told from infinitely many as known", () => {
    const known = integratedEffects(squad).effect(0);
    for (const df of [1e9, 1e11, 1e100]) {
      const estimated = integratedEffects({ ...squad, df }).effect(0);
      expectWithin(mixtureMean(estimated), mixtureMean(known), 1e-7);
    }
  });

  it("takes one value as it is: normal where its error is known, Student's t where it is estimated", () => {
    const one = { values: [11], errorVariances: [2], sigma: 3, scale: 12 };
    const error = 3 * Math.SQRT2;
    const known = integratedEffects(one).effect(0);
    expectWithin(mixtureMean(known), 11, 1e-9);
    expectWithin(mixtureQuantile(known, 0.975), 11 + 1.959963984540054 * error, 1e-9);
    expectWithin(mixtureBelow(known, 0), normalCdf(-11 / error), 1e-12);
    for (const scale of [12, 0.001]) {
      for (const df of [1, 2, 5, 30, 1e4]) {
        const { effect } = integratedEffects({ ...one, scale, df });
        const end = 11 + studentQuantile(0.975, df) * error;
        expectWithin(mixtureQuantile(effect(0), 0.975) / end, 1, 1e-9);
        expectWithin(mixtureBelow(effect(0), 0), studentCdf(-11 / error, df), 1e-10);
      }
    }
  });

  it("draws a value far away by as much, however far, where its error is known, and to the middle where that is estimated", () => {
    const farthest = (far: number, df?: number) =>
      mixtureMean(
        integratedEffects({
          values: [0, 1, far],
          errorVariances: [1, 1, 1],
          sigma: 1,
          df,
          scale: 4,
        }).effect(2),
      );
    for (const far of [1e6, 1e8, 1e10]) {
      expectWithin(far - farthest(far), 1e5 - farthest(1e5), 1e-3);
      expectWithin(farthest(far, 3) / far, 1 / 3, 1e-6);
    }
  });

  it("comes to the known error as the degrees of freedom grow", () => {
    const known = mixtureInterval(integratedEffects(squad).effect(0), 0.95);
    const nearlyKnown = mixtureInterval(integratedEffects({ ...squad, df: 1e9 }).effect(0), 0.95);
    expectWithin(nearlyKnown.low, known.low, 1e-7);
    expectWithin(nearlyKnown.high, known.high, 1e-7);
  });

  it("moves and stretches with the values, in any unit", () => {
    const answers = (inputs: SpreadInputs) => {
      const { effect, next } = integratedEffects(inputs);
      const ends = mixtureInterval(effect(1), 0.9);
      return [mixtureMean(effect(1)), ends.low, ends.high, mixtureQuantile(next, 0.1)];
    };
    const plain = answers(squad);
    fc.assert(
      fc.property(
        fc.double({ min: -1000, max: 1000, noNaN: true }),
        fc.integer({ min: -40, max: 40 }),
        (shift, exponent) => {
          const unit = 10 ** exponent;
          const moved = answers({
            ...squad,
            values: squad.values.map((value) => (value + shift) * unit),
            sigma: squad.sigma * unit,
            scale: squad.scale * unit,
          });
          moved.forEach((value, k) => {
            expectWithin(value / unit - shift, plain[k]!, 1e-9);
          });
        },
      ),
      { numRuns: 20 },
    );
  });

  it("has chances above and below that leave nothing over, and reach far into both tails", () => {
    const effect = integratedEffects(squad).effect(0);
    for (const x of [-10, 0, 5, 20]) {
      expectWithin(mixtureAbove(effect, x) + mixtureBelow(effect, x), 1, 1e-14);
    }
    expect(mixtureAbove(effect, 60)).toBeGreaterThan(0);
    expect(mixtureAbove(effect, 60)).toBeLessThan(1e-30);
  });

  it("refuses spreads and scales that are none", () => {
    expect(() => integratedEffects({ ...squad, scale: 0 })).toThrow("scale is 0; expected above 0");
    expect(() => integratedEffects({ ...squad, sigma: -1 })).toThrow("sigma is -1");
    expect(() => integratedEffects({ ...squad, df: 0 })).toThrow("df is 0");
    expect(() => integratedEffects({ ...squad, values: [] })).toThrow("there are 0 values");
  });
});
