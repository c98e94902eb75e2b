import { domeLeaning } from "../../geometry/dome.ts";
import { along, edgeOf } from "../../geometry/outline/edge.ts";
import { lowest } from "../../geometry/peak.ts";
import { boundAt } from "../overrun.ts";
import { shimUnder } from "../reach.ts";
import type { Setting } from "../setting.ts";

/** The thinnest shim that does not overrun, within reach or not; NaN where no dome leans so. */
export function cleanShimOf(setting: Setting): number {
  return shimLeaning(setting, leastBound(setting) / 2);
}

function shimLeaning(setting: Setting, lean: number): number {
  const { dishCurvature, breakX, breakHalfWidth } = setting;
  const dome = domeLeaning(dishCurvature, breakX, breakHalfWidth, lean);
  return dome === null ? Number.NaN : shimUnder(setting, dome);
}

/** Twice the lean of the steepest dome that stays clean. */
function leastBound(setting: Setting): number {
  const edge = edgeOf(setting.outline, setting.breakX);
  const bound = (x: number, y = setting.outline.halfWidth(x)): number => boundAt(setting, x, y);
  return lowest(bound, edge.xs, along(edge, bound)).value;
}

const nodes = 256;

/**
 * `cleanShimOf` for many settings of one outline whose break lies within `spread` mm of this one's.
 * The bound is the dish's curvature times a function of the break alone; that one is read off a table
 * in straight lines, which bends the shim by less than a thousandth of a millimetre.
 */
export function cleanShimTable(base: Setting, spread: number): (setting: Setting) => number {
  if (base.dishCurvature === 0) return cleanShimOf;
  const from = Math.max(1, base.breakX - spread);
  const step = (Math.min(base.outline.length, base.breakX + spread) - from) / nodes;
  const table = Float64Array.from({ length: nodes + 1 }, (_, i) => {
    const breakX = from + i * step;
    const breakHalfWidth = base.outline.halfWidth(breakX);
    return leastBound({ ...base, breakX, breakHalfWidth }) / base.dishCurvature;
  });
  return (setting) => {
    const place = step > 0 ? (setting.breakX - from) / step : 0;
    const i = Math.floor(place);
    const [low, high] = [table[i], table[Math.min(i + 1, nodes)]];
    if (low === undefined || high === undefined) return cleanShimOf(setting);
    const bound = setting.dishCurvature * (low + (high - low) * (place - i));
    return shimLeaning(setting, bound / 2);
  };
}
