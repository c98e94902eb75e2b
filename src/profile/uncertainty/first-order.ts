import type { Range } from "../../instrument/instrument.ts";
import type { Input, Model } from "./monte-carlo.ts";
import { normal95, slopeAt } from "./perturbed-model.ts";

/** One outcome by the law of propagation of uncertainty. */
export interface FirstOrder {
  readonly value: number;
  /** Combined standard uncertainty. */
  readonly u: number;
  /** Holds 95 %, were the outcome normal. */
  readonly interval: Range;
  /** What each input brings: slope times its standard uncertainty. */
  readonly parts: readonly number[];
}

/**
 * Combined standard uncertainty to first order, the inputs independent: u² is the sum of the squares
 * of slope times standard uncertainty (JCGM 100:2008, 5.1.2). `steps` are those the slopes are taken
 * over. Null where the model has no outcome at or near the inputs' values.
 */
export function firstOrderOf(
  model: Model,
  inputs: readonly Input[],
  steps: readonly number[],
  outcomes: number,
): readonly FirstOrder[] | null {
  const values = Float64Array.from(inputs, ({ value }) => value);
  const found = new Float64Array(outcomes);
  const at = (i: number, outcome: number, value: number): number => {
    const moved = values.slice();
    moved[i] = value;
    return model(moved, found) ? (found[outcome] ?? Number.NaN) : Number.NaN;
  };
  const results = Array.from({ length: outcomes }, (_, outcome) => {
    const parts = inputs.map(
      ({ value, u }, i) => u * slopeAt((x) => at(i, outcome, x), value, steps[i] ?? 1),
    );
    const value = at(-1, outcome, 0);
    const u = Math.hypot(...parts);
    return { value, u, interval: [value - normal95 * u, value + normal95 * u] as const, parts };
  });
  return results.every(({ value, u }) => Number.isFinite(value + u)) ? results : null;
}

/** The chance that a first-order outcome, taken as normal, lies in a window. */
export function chanceWithin({ value, u }: FirstOrder, [low, high]: Range): number {
  if (u === 0) return value >= low && value <= high ? 1 : 0;
  return normalBelow((high - value) / u) - normalBelow((low - value) / u);
}

/**
 * Share of a normal distribution (mean 0, deviation 1) below z: the power series of the error
 * function near the middle, its continued fraction beyond (Handbook of Mathematical Functions, 26.2.10
 * and 26.2.14; from memory).
 */
export function normalBelow(z: number): number {
  if (z === Number.POSITIVE_INFINITY) return 1;
  if (z === Number.NEGATIVE_INFINITY) return 0;
  const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  if (Math.abs(z) < 4) {
    let [term, sum] = [z, z];
    for (let n = 1; Math.abs(term) > 1e-17; n++) {
      term *= (z * z) / (2 * n + 1);
      sum += term;
    }
    return 0.5 + density * sum;
  }
  const size = Math.abs(z);
  let fraction = size;
  for (let n = 40; n > 0; n--) fraction = size + n / fraction;
  return z < 0 ? density / fraction : 1 - density / fraction;
}
