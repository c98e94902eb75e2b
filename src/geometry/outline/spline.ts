import { numberAt } from "../number-at.ts";
import type { Place } from "../polyline.ts";

/**
 * A smooth curve through places, in pieces of x(t) and y(t), both cubics in t from 0 to 1. Neighbours
 * share their direction and speed at the place between, so it has no corner but where one was drawn.
 */
export interface Spline {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  /** dx/dt and dy/dt per mm of chord, at each piece's start and end. */
  readonly dxs: Slopes;
  readonly dys: Slopes;
  /** Length of the chord of each piece. */
  readonly chords: readonly number[];
}

interface Slopes {
  readonly starts: readonly number[];
  readonly ends: readonly number[];
}

/** How an end of the curve runs: as the places suggest, or square to x. */
export type SplineEnd = "free" | "square";

/** A line that turns by more than this at one place has a corner there, where it also runs back somewhere, degrees. */
const corner = 60;

/**
 * The curve through `places`, at least three. At each place it has the direction of the parabola through
 * it and its neighbours, by length of chord; dx/dt is held within bounds that keep x rising or falling
 * from each place to the next (F. N. Fritsch and R. E. Carlson, "Monotone Piecewise Cubic Interpolation",
 * SIAM J. Numer. Anal. 17 (1980) 238–246; from memory), so that x turns back at places only, and where
 * the places' x rises y is a function of it. A line that runs back may have corners, as a pointed horn
 * has; there each piece ends as its own side suggests.
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
  const corners = xs.some((x, i) => x <= (xs[i - 1] ?? Number.NEGATIVE_INFINITY))
    ? cornersOf(xs, ys, chords)
    : none;
  const dxs = held(xs, chords, corners, tangents(xs, chords, corners));
  const dys = tangents(ys, chords, corners);
  if (first === "square") dxs.starts[0] = 0;
  if (last === "square") dxs.ends[chords.length - 1] = 0;
  return { xs, ys, dxs, dys, chords };
}

const none: ReadonlySet<number> = new Set();

function cornersOf(
  xs: readonly number[],
  ys: readonly number[],
  chords: readonly number[],
): ReadonlySet<number> {
  const least = Math.cos((corner * Math.PI) / 180);
  const along = (i: number): Place => [
    (numberAt(xs, i + 1) - numberAt(xs, i)) / numberAt(chords, i),
    (numberAt(ys, i + 1) - numberAt(ys, i)) / numberAt(chords, i),
  ];
  const inner = Array.from({ length: xs.length - 2 }, (_, i) => i + 1);
  return new Set(
    inner.filter((i) => {
      const [before, after] = [along(i - 1), along(i)];
      return before[0] * after[0] + before[1] * after[1] < least;
    }),
  );
}

interface PieceSlopes {
  readonly starts: number[];
  readonly ends: number[];
}

/** Slopes at each piece's ends of the parabolas through three neighbours on one side of every corner. */
function tangents(
  values: readonly number[],
  chords: readonly number[],
  corners: ReadonlySet<number>,
): PieceSlopes {
  const slopes = chords.map((chord, i) => (numberAt(values, i + 1) - numberAt(values, i)) / chord);
  const last = values.length - 1;
  const isEnd = (i: number): boolean => i === 0 || i === last || corners.has(i);
  const inner = (i: number): number => {
    const [before, after] = [numberAt(chords, i - 1), numberAt(chords, i)];
    return (numberAt(slopes, i - 1) * after + numberAt(slopes, i) * before) / (before + after);
  };
  /** The slope at place i of the piece whose other end is place j. */
  const slope = (i: number, j: number): number => {
    if (!isEnd(i)) return inner(i);
    const own = numberAt(slopes, Math.min(i, j));
    return isEnd(j) ? own : 2 * own - inner(j);
  };
  return {
    starts: slopes.map((_, piece) => slope(piece, piece + 1)),
    ends: slopes.map((_, piece) => slope(piece + 1, piece)),
  };
}

/** Slopes between 0 and three times the lesser of the neighbouring chords' keep a cubic rising, or falling; where they part it stands. */
function held(
  values: readonly number[],
  chords: readonly number[],
  corners: ReadonlySet<number>,
  { starts, ends }: PieceSlopes,
): PieceSlopes {
  const rises = chords.map((chord, i) => (numberAt(values, i + 1) - numberAt(values, i)) / chord);
  const within = (slope: number, before: number | undefined, after: number | undefined): number => {
    const [one, two] = [before ?? after ?? 0, after ?? before ?? 0];
    if (one > 0 && two > 0) return Math.min(Math.max(0, slope), 3 * Math.min(one, two));
    return one < 0 && two < 0 ? Math.max(Math.min(0, slope), 3 * Math.max(one, two)) : 0;
  };
  return {
    starts: starts.map((slope, piece) =>
      within(slope, corners.has(piece) ? undefined : rises[piece - 1], rises[piece]),
    ),
    ends: ends.map((slope, piece) =>
      within(slope, rises[piece], corners.has(piece + 1) ? undefined : rises[piece + 1]),
    ),
  };
}

/** The piece that x falls in, of those before place `end`, up to which the places' x rises. */
export function pieceAt({ xs }: Spline, x: number, end = xs.length - 1): number {
  let [low, high] = [0, end - 1];
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
  slopes: Slopes,
  chords: readonly number[],
  piece: number,
  t: number,
): number {
  const [from, rise] = [
    numberAt(values, piece),
    numberAt(values, piece + 1) - numberAt(values, piece),
  ];
  const leave = numberAt(slopes.starts, piece) * numberAt(chords, piece);
  const arrive = numberAt(slopes.ends, piece) * numberAt(chords, piece);
  return from + t * (leave + t * (3 * rise - 2 * leave - arrive + t * (leave + arrive - 2 * rise)));
}

function hermiteRate(
  values: readonly number[],
  slopes: Slopes,
  chords: readonly number[],
  piece: number,
  t: number,
): number {
  const rise = numberAt(values, piece + 1) - numberAt(values, piece);
  const leave = numberAt(slopes.starts, piece) * numberAt(chords, piece);
  const arrive = numberAt(slopes.ends, piece) * numberAt(chords, piece);
  return leave + t * (2 * (3 * rise - 2 * leave - arrive) + 3 * t * (leave + arrive - 2 * rise));
}

/** The t at which a piece stands at x, rising or falling to it: halving made faster by Newton's steps, to the last digits. */
export function parameterAtX(spline: Spline, piece: number, x: number): number {
  const [from, to] = [numberAt(spline.xs, piece), numberAt(spline.xs, piece + 1)];
  const way = to > from ? 1 : -1;
  if ((x - from) * way <= 0) return 0;
  if ((x - to) * way >= 0) return 1;
  let [low, high] = [0, 1];
  let t = (x - from) / (to - from);
  for (let step = 0; step < 60; step++) {
    const error = splineX(spline, piece, t) - x;
    if (Math.abs(error) <= 8 * Number.EPSILON * x) return t;
    if (error * way > 0) high = t;
    else low = t;
    const next = t - error / splineDx(spline, piece, t);
    t = next > low && next < high ? next : (low + high) / 2;
  }
  return t;
}
