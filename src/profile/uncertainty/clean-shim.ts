import { type Givens, withBreak } from "../givens.ts";
import { leastBound } from "../overrun.ts";
import { domeOfLean, shimUnder } from "../reach.ts";

/** The thinnest shim that does not overrun, within reach or not; NaN where no dome leans so. */
export function cleanShimOf(givens: Givens): number {
  return shimLeaning(givens, leastBound(givens) / 2);
}

function shimLeaning(givens: Givens, lean: number): number {
  const dome = domeOfLean(givens, lean);
  return dome === null ? Number.NaN : shimUnder(givens, dome);
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
  const farthest = Math.min(...base.halves.map(({ outline }) => outline.foldX));
  const step = (Math.min(farthest, base.breakX + spread) - from) / nodes;
  const table = Float64Array.from({ length: nodes + 1 }, (_, i) => {
    return leastBound(withBreak(base, from + i * step)) / base.dishCurvature;
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
