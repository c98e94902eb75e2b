import { numberAt } from "../number-at.ts";
import type { Place } from "../polyline.ts";

/**
 * A smooth curve through places, in pieces of x(t) and y(t), both cubics in t from 0 to 1. Neighbours
 * share their direction and speed at the place between, so it has no corner.
 */
export interface Spline {
  /** The places, x rising. */
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  /** dx/dt and dy/dt per mm of chord at each place. */
  readonly dxs: readonly number[];
  readonly dys: readonly number[];
  /** Length of the chord of each piece. */
  readonly chords: readonly number[];
}

/** How an end of the curve runs: as the places suggest, or square to x. */
export type SplineEnd = "free" | "square";

/**
 * The curve through `places`, at least three, x strictly rising. At each place it has the direction of
 * the parabola through it and its neighbours, by length of chord; dx/dt is held within bounds that keep
 * x rising (F. N. Fritsch and R. E. Carlson, "Monotone Piecewise Cubic Interpolation", SIAM J. Numer.
 * Anal. 17 (1980) 238–246; from memory), so that y stays a function of x.
 */
export function splineThrough(
  places: readonly Place[],
  first: SplineEnd = "free",
  last: SplineEnd = "free",
): Spline {
  const xs = places.map(([x]) => x);
  const ys = places.map(([, y]) => y);
  const chords = xs
    .slice(1)
    .map((x, i) => Math.hypot(x - numberAt(xs, i), numberAt(ys, i + 1) - numberAt(ys, i)));
  const dxs = held(xs, chords, tangents(xs, chords));
  const dys = tangents(ys, chords);
  if (first === "square") dxs[0] = 0;
  if (last === "square") dxs[dxs.length - 1] = 0;
  return { xs, ys, dxs, dys, chords };
}

/** Slopes at each place of the parabolas through three neighbours. */
function tangents(values: readonly number[], chords: readonly number[]): number[] {
  const slopes = chords.map((chord, i) => (numberAt(values, i + 1) - numberAt(values, i)) / chord);
  const n = values.length;
  const inner = (i: number): number => {
    const [before, after] = [numberAt(chords, i - 1), numberAt(chords, i)];
    return (numberAt(slopes, i - 1) * after + numberAt(slopes, i) * before) / (before + after);
  };
  return values.map((_, i) => {
    if (i > 0 && i < n - 1) return inner(i);
    return i === 0
      ? 2 * numberAt(slopes, 0) - inner(1)
      : 2 * numberAt(slopes, n - 2) - inner(n - 2);
  });
}

/** Slopes between 0 and three times the lesser of the neighbouring chords' keep a cubic rising. */
function held(values: readonly number[], chords: readonly number[], slopes: number[]): number[] {
  const rises = chords.map((chord, i) => (numberAt(values, i + 1) - numberAt(values, i)) / chord);
  return slopes.map((slope, i) => {
    const before = rises[i - 1] ?? Number.POSITIVE_INFINITY;
    const after = rises[i] ?? Number.POSITIVE_INFINITY;
    return Math.min(Math.max(0, slope), 3 * Math.min(before, after));
  });
}

/** The piece that x falls in. */
export function pieceAt({ xs }: Spline, x: number): number {
  let [low, high] = [0, xs.length - 2];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (numberAt(xs, middle) <= x) low = middle;
    else high = middle - 1;
  }
  return low;
}

export const splineX = ({ xs, dxs, chords }: Spline, piece: number, t: number): number =>
  hermite(xs, dxs, chords, piece, t);

export const splineY = ({ ys, dys, chords }: Spline, piece: number, t: number): number =>
  hermite(ys, dys, chords, piece, t);

export const splineDx = ({ xs, dxs, chords }: Spline, piece: number, t: number): number =>
  hermiteRate(xs, dxs, chords, piece, t);

export const splineDy = ({ ys, dys, chords }: Spline, piece: number, t: number): number =>
  hermiteRate(ys, dys, chords, piece, t);

function hermite(
  values: readonly number[],
  slopes: readonly number[],
  chords: readonly number[],
  piece: number,
  t: number,
): number {
  const [from, rise] = [
    numberAt(values, piece),
    numberAt(values, piece + 1) - numberAt(values, piece),
  ];
  const leave = numberAt(slopes, piece) * numberAt(chords, piece);
  const arrive = numberAt(slopes, piece + 1) * numberAt(chords, piece);
  return from + t * (leave + t * (3 * rise - 2 * leave - arrive + t * (leave + arrive - 2 * rise)));
}

function hermiteRate(
  values: readonly number[],
  slopes: readonly number[],
  chords: readonly number[],
  piece: number,
  t: number,
): number {
  const rise = numberAt(values, piece + 1) - numberAt(values, piece);
  const leave = numberAt(slopes, piece) * numberAt(chords, piece);
  const arrive = numberAt(slopes, piece + 1) * numberAt(chords, piece);
  return leave + t * (2 * (3 * rise - 2 * leave - arrive) + 3 * t * (leave + arrive - 2 * rise));
}

/** The t at which a piece stands at x: halving made faster by Newton's steps, to the last digits. */
export function parameterAtX(spline: Spline, piece: number, x: number): number {
  const [from, to] = [numberAt(spline.xs, piece), numberAt(spline.xs, piece + 1)];
  if (x <= from) return 0;
  if (x >= to) return 1;
  let [low, high] = [0, 1];
  let t = (x - from) / (to - from);
  for (let step = 0; step < 60; step++) {
    const error = splineX(spline, piece, t) - x;
    if (Math.abs(error) <= 8 * Number.EPSILON * x) return t;
    if (error > 0) high = t;
    else low = t;
    const next = t - error / splineDx(spline, piece, t);
    t = next > low && next < high ? next : (low + high) / 2;
  }
  return t;
}
