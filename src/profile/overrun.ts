import { type Dome, domeLeaning, domeZ } from "../geometry/dome.ts";
import { numberAt } from "../geometry/number-at.ts";
import { along, type Edge, edgeOf } from "../geometry/outline/edge.ts";
import { highest, lowest, peakNear } from "../geometry/peak.ts";
import { rootBetween } from "../geometry/root.ts";
import type { Givens } from "./givens.ts";
import type { Reach } from "./outcome.ts";
import { shimUnder } from "./reach.ts";
import { rounding } from "./standing.ts";

export interface Overrun {
  /** From the break to where the board leaves the rim, and how deep it cuts; both 0 when it does not. */
  readonly length: number;
  readonly depth: number;
}

const none: Overrun = { length: 0, depth: 0 };

/**
 * How a flat board cuts into the domed rim tailward of the break. The rim's edge d mm from the break
 * stands over the flat when d(2·lean − κd) + κ(yb² − y²) > 0, so when 2·lean exceeds
 * κd − κ(yb² − y²)/d: a bound free of the dome's tilt, whose least value along `edge` (from the tail to
 * the break) is the steepest clean dome at once. None where there is no flat.
 */
export function overrunOf(givens: Givens, dome: Dome, edge: Edge): Overrun {
  if (givens.seat !== null) return none;
  const bound = (x: number, y = givens.outline.halfWidth(x)): number => boundAt(givens, x, y);
  const bounds = along(edge, bound);
  const { x: worst, value: least } = lowest(bound, edge.xs, bounds);
  if (2 * dome.lean <= least) return none;
  const excess = (x: number): number => 2 * dome.lean - bound(x);
  const start = firstPositive(
    excess,
    edge.xs,
    bounds.map((value) => 2 * dome.lean - value),
  );
  // A shallow cut may lie between two places of the edge; the bound's lowest place lies in it.
  const xs = [...edge.xs, worst].sort((a, b) => a - b);
  const height = (x: number): number => domeZ(dome, x, givens.outline.halfWidth(x));
  const depth = highest(height, xs, xs.map(height)).value;
  return depth > rounding ? { length: givens.breakX - start, depth } : none;
}

/** The bound at (x, y); toward the break its limit, −2κ·yb·slope. */
export function boundAt(givens: Givens, x: number, y: number): number {
  const { outline, breakX, breakHalfWidth, dishCurvature } = givens;
  const d = breakX - x;
  return d > 0
    ? dishCurvature * (d - ((breakHalfWidth - y) * (breakHalfWidth + y)) / d)
    : -2 * dishCurvature * breakHalfWidth * outline.slope(breakX);
}

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
  const edge = edgeOf(givens.outline, givens.breakX);
  const bound = (x: number, y = givens.outline.halfWidth(x)): number => boundAt(givens, x, y);
  const leastBound = lowest(bound, edge.xs, along(edge, bound)).value;
  if (2 * reach.thinnestDome.lean <= leastBound) return reach.thinnest;
  if (2 * reach.thickestDome.lean > leastBound) return null;
  const { dishCurvature, breakX, breakHalfWidth } = givens;
  const dome = domeLeaning(dishCurvature, breakX, breakHalfWidth, leastBound / 2);
  return dome === null ? null : shimUnder(givens, dome);
}
