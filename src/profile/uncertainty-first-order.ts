import type { Range } from "../instrument/instrument.ts";
import type { Input, Model } from "./draw.ts";
import { normal95 } from "./draw-model.ts";
import { slopeAt } from "./sensitivity-slope.ts";
import { normalBelow } from "./uncertainty-normal.ts";

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
