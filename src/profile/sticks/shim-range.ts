import { radians } from "../../geometry/angle.ts";
import type { Instrument, TargetKind, WindowKind } from "../../instrument/instrument.ts";
import { windowKinds } from "../../instrument/outcome-fields.ts";
import { type Reach, reachOf } from "../reach.ts";
import { type Setting, settingOf } from "../setting.ts";
import { reachableRange, solve } from "../solve.ts";
import { cleanShimOf } from "../uncertainty/clean-shim.ts";
import { stringFall } from "../uncertainty/saddle-chain.ts";

/** What keeps a shim from being thinner or thicker: a window, the overrun, or what the rim can be given at all. */
export type Limiter = WindowKind | "overrun" | "reach";

interface Limit {
  /** mm. */
  readonly shim: number;
  readonly by: Limiter;
}

/** The shims that serve one instrument: every window met and no overrun. */
export interface ShimRange {
  readonly low: Limit;
  readonly high: Limit;
}

/** Why one is not to be had: it has no plan, or its own limits cross. */
export type NoRange = "no-plan" | "none-serves";

/**
 * The shims that serve an instrument. Every outcome with a window grows with the shim, so each edge
 * of a window is one shim, found as a target is: in closed form, or as the one root of a rising
 * function.
 */
export function shimRangeOf(instrument: Instrument): ShimRange | NoRange {
  const set = settingOf(instrument);
  if (!set.ok) return "no-plan";
  const { setting } = set;
  const reached = reachOf(setting);
  if (!reached.ok) return "no-plan";
  const { reach } = reached;
  const lows: Limit[] = [{ shim: reach.thinnest, by: "reach" }];
  const highs: Limit[] = [{ shim: reach.thickest, by: "reach" }];
  const clean = cleanShimOf(setting);
  if (!Number.isNaN(clean)) lows.push({ shim: clean, by: "overrun" });
  for (const by of windowKinds) {
    lows.push({ shim: edgeShim(setting, reach, by, 0), by });
    highs.push({ shim: edgeShim(setting, reach, by, 1), by });
  }
  const low = lows.reduce((most, limit) => (limit.shim > most.shim ? limit : most));
  const high = highs.reduce((least, limit) => (limit.shim < least.shim ? limit : least));
  return low.shim <= high.shim ? { low, high } : "none-serves";
}

/** The shim at which an outcome stands at one end of its window; infinite where no shim in reach brings it there. */
function edgeShim(setting: Setting, reach: Reach, by: WindowKind, end: 0 | 1): number {
  const edge = setting.instrument.windows[by][end];
  const [kind, value] =
    by === "breakAngle"
      ? (["saddleExposure", exposureAt(setting, edge)] as const)
      : ([by, edge] as const);
  return shimAt(setting, reach, kind, value);
}

function shimAt(setting: Setting, reach: Reach, kind: TargetKind, value: number): number {
  const [low, high] = reachableRange(setting, reach, kind);
  if (value < low) return Number.NEGATIVE_INFINITY;
  if (value > high) return Number.POSITIVE_INFINITY;
  const aimed = { ...setting, instrument: { ...setting.instrument, target: { kind, value } } };
  const solution = solve(aimed);
  return solution.ok ? solution.solution.shim : Number.NaN;
}

/** The saddle exposure at which the strings break over it by so many degrees. */
function exposureAt(setting: Setting, breakAngle: number): number {
  const { pinDistance, pinRamp } = setting.instrument.bridge;
  const down = radians(breakAngle) - Math.atan(stringFall(setting));
  if (Math.abs(down) >= Math.PI / 2) return down * Number.POSITIVE_INFINITY;
  return pinDistance * Math.tan(down) - pinRamp;
}
