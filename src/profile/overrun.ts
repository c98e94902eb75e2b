import { type Dome, domeZ } from "../geometry/dome.ts";
import { numberAt } from "../geometry/number-at.ts";
import { along, edgeOf, lowestOn } from "../geometry/outline/edge.ts";
import { highest, lowest, peakNear } from "../geometry/peak.ts";
import { rootBetween } from "../geometry/root.ts";
import type { Givens } from "./givens.ts";
import type { Half } from "./halves.ts";
import type { Reach } from "./outcome.ts";
import { domeOfLean, shimUnder } from "./reach.ts";
import { rounding } from "./standing.ts";

export interface Overrun {
  /** From the break to where the board leaves the rim, and how deep it cuts; both 0 when it does not. */
  readonly length: number;
  readonly depth: number;
}

const none: Overrun = { length: 0, depth: 0 };

/**
 * How a flat board cuts into the domed rim tailward of the break. The rim's edge d mm from the break
 * stands over the flat when d(2·lean − κd) + κ(yb − y)(yo + y) > 0, yo the other edge's half width at the
 * break, so when 2·lean exceeds κd − κ(yb − y)(yo + y)/d: a bound free of the dome's tilt, whose least value
 * from the tail to the break is the steepest clean dome at once. None where there is no flat.
 */
export function overrunOf(givens: Givens, dome: Dome): Overrun {
  if (givens.seat !== null) return none;
  return givens.halves
    .map((half) => overrunAlong(givens, dome, half))
    .reduce((bass, treble) => ({
      length: Math.max(bass.length, treble.length),
      depth: Math.max(bass.depth, treble.depth),
    }));
}

function overrunAlong(givens: Givens, dome: Dome, half: Half): Overrun {
  const { outline, sign } = half;
  const edge = edgeOf(outline, givens.breakX);
  const bound = boundOn(givens, half);
  const bounds = along(edge, bound);
  const f = (x: number): number => bound(x, outline.halfWidth(x));
  const { x: worst, value: least } = lowest(f, edge.xs, bounds);
  if (2 * dome.lean <= least) return none;
  const excess = (x: number): number => 2 * dome.lean - f(x);
  const start = firstPositive(
    excess,
    edge.xs,
    bounds.map((value) => 2 * dome.lean - value),
  );
  // A shallow cut may lie between two places of the edge; the bound's lowest place lies in it.
  const xs = [...edge.xs, worst].sort((a, b) => a - b);
  const height = (x: number): number => domeZ(dome, x, sign * outline.halfWidth(x));
  const depth = highest(height, xs, xs.map(height)).value;
  return depth > rounding ? { length: givens.breakX - start, depth } : none;
}

/** The bound at (x, half width) of one edge; toward the break its limit, −κ(yb + yo)·slope. */
function boundOn(givens: Givens, { outline }: Half): (x: number, y: number) => number {
  const { breakX, breakHalfWidth, dishCurvature } = givens;
  const own = outline.halfWidth(breakX);
  const other = 2 * breakHalfWidth - own;
  return (x, y) => {
    const d = breakX - x;
    return d > 0
      ? dishCurvature * (d - ((own - y) * (other + y)) / d)
      : -2 * dishCurvature * breakHalfWidth * outline.slope(breakX);
  };
}

/** Twice the lean of the steepest dome that stays clean. */
export const leastBound = (givens: Givens): number =>
  Math.min(
    ...givens.halves.map(
      (half) =>
        lowestOn(half.outline, edgeOf(half.outline, givens.breakX), boundOn(givens, half)).value,
    ),
  );

/** Where `f`, positive somewhere, first turns so; its peaks between samples count as well. */
function firstPositive(
  f: (x: number) => number,
  xs: readonly number[],
  values: readonly number[],
): number {
  for (let i = 1; i < xs.length; i++) {
    const here = numberAt(values, i);
    const turns = here >= numberAt(values, i - 1) && !(here < numberAt(values, i + 1));
    const top = here <= 0 && turns ? peakNear(f, xs, here, i) : { x: numberAt(xs, i), value: here };
    if (top.value > 0) return rootBetween(f, numberAt(xs, i - 1), top.x);
  }
  return numberAt(xs, xs.length - 1);
}

/** The thinnest shim in reach that does not overrun; null when none is. */
export function cleanShimIn(givens: Givens, reach: Reach): number | null {
  const least = leastBound(givens);
  if (2 * reach.thinnestDome.lean <= least) return reach.thinnest;
  if (2 * reach.thickestDome.lean > least) return null;
  const dome = domeOfLean(givens, least / 2);
  return dome === null ? null : shimUnder(givens, dome);
}
