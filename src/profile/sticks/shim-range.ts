import { rootBetween } from "../../geometry/root.ts";
import type { Instrument, TargetKind, WindowKind } from "../../instrument/instrument.ts";
import { windowKinds } from "../../instrument/outcome-fields.ts";
import { type Givens, givensOf } from "../givens.ts";
import type { Reach } from "../outcome.ts";
import { domeOfLean, reachOf, shimUnder } from "../reach.ts";
import { chainOf } from "../saddle-chain.ts";
import { rangeOver, solve } from "../solve.ts";
import { cleanShimOf } from "../uncertainty/clean-shim.ts";

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

/** Why one is not to be had: it is made without one, it has no plan, or its own limits cross. */
export type NoRange = "no-stick" | "no-plan" | "none-serves";

/**
 * The shims that serve an instrument. Every outcome with a window grows with the shim, so each edge
 * of a window is one shim, found as a target is: in closed form, or as the one root of a rising
 * function.
 */
export function shimRangeOf(instrument: Instrument): ShimRange | NoRange {
  if (instrument.dome.method === "seat") return "no-stick";
  const set = givensOf(instrument);
  if (!set.ok) return "no-plan";
  const { givens } = set;
  const reached = reachOf(givens);
  if (!reached.ok) return "no-plan";
  const { reach } = reached;
  const lows: Limit[] = [{ shim: reach.thinnest, by: "reach" }];
  const highs: Limit[] = [{ shim: reach.thickest, by: "reach" }];
  const clean = cleanShimOf(givens);
  if (!Number.isNaN(clean)) lows.push({ shim: clean, by: "overrun" });
  for (const by of windowKinds) {
    lows.push({ shim: edgeShim(givens, reach, by, 0), by });
    highs.push({ shim: edgeShim(givens, reach, by, 1), by });
  }
  const low = lows.reduce((most, limit) => (limit.shim > most.shim ? limit : most));
  const high = highs.reduce((least, limit) => (limit.shim < least.shim ? limit : least));
  return low.shim <= high.shim ? { low, high } : "none-serves";
}

/** Whether a shim of this thickness serves. */
export const serves = (range: ShimRange | NoRange, shim: number): boolean =>
  typeof range !== "string" && range.low.shim <= shim && shim <= range.high.shim;

/** The shim at which an outcome stands at one end of its window; infinite where no shim in reach brings it there. */
function edgeShim(givens: Givens, reach: Reach, by: WindowKind, end: 0 | 1): number {
  const edge = givens.instrument.windows[by][end];
  return by === "breakAngle"
    ? shimAtBreakAngle(givens, reach, edge)
    : shimAt(givens, reach, by, edge);
}

function shimAt(givens: Givens, reach: Reach, kind: TargetKind, value: number): number {
  const [low, high] = rangeOver(givens, reach, kind);
  if (value < low) return Number.NEGATIVE_INFINITY;
  if (value > high) return Number.POSITIVE_INFINITY;
  const aimed = { ...givens, instrument: { ...givens.instrument, target: { kind, value } } };
  const solution = solve(aimed);
  return solution.ok ? solution.solution.part : Number.NaN;
}

/** Both the saddle and the slope of the top under it turn the strings further as the shim thickens. */
function shimAtBreakAngle(givens: Givens, reach: Reach, breakAngle: number): number {
  const over = (lean: number): number => {
    const dome = domeOfLean(givens, lean);
    return dome === null ? Number.NaN : chainOf(givens, dome, 0).breakAngle - breakAngle;
  };
  const [thin, thick] = [reach.thinnestDome.lean, reach.thickestDome.lean];
  if (over(thin) > 0) return Number.NEGATIVE_INFINITY;
  if (over(thick) < 0) return Number.POSITIVE_INFINITY;
  const dome = domeOfLean(givens, rootBetween(over, thick, thin));
  return dome === null ? Number.NaN : shimUnder(givens, dome);
}
