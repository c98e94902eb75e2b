import { domeLeaning } from "../../geometry/dome.ts";
import { along, edgeOf } from "../../geometry/outline/edge.ts";
import { lowest } from "../../geometry/peak.ts";
import type { Givens } from "../givens.ts";
import { boundAt } from "../overrun.ts";
import { shimUnder } from "../reach.ts";

/** The thinnest shim that does not overrun, within reach or not; NaN where no dome leans so. */
export function cleanShimOf(givens: Givens): number {
  return shimLeaning(givens, leastBound(givens) / 2);
}

function shimLeaning(givens: Givens, lean: number): number {
  const { dishCurvature, breakX, breakHalfWidth } = givens;
  const dome = domeLeaning(dishCurvature, breakX, breakHalfWidth, lean);
  return dome === null ? Number.NaN : shimUnder(givens, dome);
}

/** Twice the lean of the steepest dome that stays clean. */
function leastBound(givens: Givens): number {
  const edge = edgeOf(givens.outline, givens.breakX);
  const bound = (x: number, y = givens.outline.halfWidth(x)): number => boundAt(givens, x, y);
  return lowest(bound, edge.xs, along(edge, bound)).value;
}

const nodes = 256;

/**
 * `cleanShimOf` for many givens of one outline whose break lies within `spread` mm of this one's.
 * The bound is the dish's curvature times a function of the break alone; that one is read off a table
 * in straight lines, which bends the shim by less than a thousandth of a millimetre.
 */
export function cleanShimTable(base: Givens, spread: number): (givens: Givens) => number {
  if (base.dishCurvature === 0) return cleanShimOf;
  const from = Math.max(1, base.breakX - spread);
  const step = (Math.min(base.outline.length, base.breakX + spread) - from) / nodes;
  const table = Float64Array.from({ length: nodes + 1 }, (_, i) => {
    const breakX = from + i * step;
    const breakHalfWidth = base.outline.halfWidth(breakX);
    return leastBound({ ...base, breakX, breakHalfWidth }) / base.dishCurvature;
  });
  return (givens) => {
    const place = step > 0 ? (givens.breakX - from) / step : 0;
    const i = Math.floor(place);
    const [low, high] = [table[i], table[Math.min(i + 1, nodes)]];
    if (low === undefined || high === undefined) return cleanShimOf(givens);
    const bound = givens.dishCurvature * (low + (high - low) * (place - i));
    return shimLeaning(givens, bound / 2);
  };
}
