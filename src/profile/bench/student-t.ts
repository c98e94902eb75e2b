import { rootBetween } from "../../geometry/root.ts";

/**
 * Chance that Student's t with `dof` degrees of freedom (a whole number, 1 or more) lies within
 * ±√dof·tan(angle): the finite sums in powers of the cosine that whole degrees of freedom allow
 * (Abramowitz and Stegun, *Handbook of Mathematical Functions*, 26.7.3 and 26.7.4; from memory).
 */
function chanceWithin(angle: number, dof: number): number {
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
  const odd = dof % 2;
  let term = odd === 1 ? cos : 1;
  let sum = dof === 1 ? 0 : term;
  for (let power = 2 + odd; power <= dof - 2; power += 2) {
    term *= ((power - 1) / power) * cos * cos;
    sum += term;
  }
  return odd === 1 ? (2 / Math.PI) * (angle + sin * sum) : sin * sum;
}

/**
 * The t that Student's distribution with `dof` degrees of freedom stays within, either way, with the
 * chance `confidence` (between 0 and 1, both excluded). The one root of a rising function.
 */
export function studentWithin(confidence: number, dof: number): number {
  const short = (angle: number): number => chanceWithin(angle, dof) - confidence;
  return Math.sqrt(dof) * Math.tan(rootBetween(short, 0, Math.PI / 2));
}

export interface Interval {
  readonly mean: number;
  /** Sample standard deviation, from n − 1. */
  readonly spread: number;
  readonly low: number;
  readonly high: number;
}

/** Mean, spread and the interval that holds the true mean with `confidence`, by Student's t; null for fewer than two values. */
export function intervalOf(values: readonly number[], confidence = 0.95): Interval | null {
  const n = values.length;
  if (n < 2) return null;
  const mean = meanOf(values);
  const spread = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (n - 1));
  const half = (studentWithin(confidence, n - 1) * spread) / Math.sqrt(n);
  return { mean, spread, low: mean - half, high: mean + half };
}

const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/**
 * Whether a value lies farther from the others than one in a hundred would, were it one of them: outside
 * the 99 % prediction interval that the others make. Fewer than three others cannot tell.
 */
export function isOutlier(values: readonly number[], i: number): boolean {
  const others = values.filter((_, other) => other !== i);
  const among = others.length < 3 ? null : intervalOf(others);
  const value = values[i];
  if (among === null || value === undefined) return false;
  const reach = studentWithin(0.99, others.length - 1) * among.spread;
  return Math.abs(value - among.mean) > reach * Math.sqrt(1 + 1 / others.length);
}
