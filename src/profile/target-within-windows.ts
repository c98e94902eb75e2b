import { rootBetween } from "../geometry/root.ts";
import type { Instrument, Range } from "../instrument/instrument.ts";
import { windowKinds } from "../instrument/outcome-fields.ts";
import { type Givens, givensOf } from "./givens.ts";
import type { Profile } from "./outcome.ts";
import { type ChainKey, chainOnShim } from "./saddle-chain.ts";

/**
 * The values of an instrument's target with which every outcome lies within its window and the flat
 * board does not cut past the break, in the target's own unit (mm or degrees); null where there are
 * none. `profile` is the instrument's own. Every outcome grows with the shim, so that what lies in one
 * window is one interval of shims, and what is left of all of them is one too.
 */
export function targetWithinWindows(instrument: Instrument, profile: Profile): Range | null {
  const set = givensOf(instrument);
  if (!set.ok) return null;
  const { givens } = set;
  const { kind } = instrument.target;
  const shims = shimsWithinWindows(givens, profile);
  if (shims === null || kind === "shim") return shims;
  const [low, high] = shims.map((t) => outcomeAt(givens, t, kind, profile.shim));
  return low !== undefined && high !== undefined ? [low, high] : null;
}

function shimsWithinWindows(givens: Givens, { reachable, cleanShim, shim }: Profile): Range | null {
  const { windows } = givens.instrument;
  let [low, high] = reachable.shim;
  if (cleanShim === null) return null;
  low = Math.max(low, cleanShim);
  for (const kind of windowKinds) {
    const [least, most] = windows[kind];
    const over = (limit: number) => (t: number) => outcomeAt(givens, t, kind, shim) - limit;
    if (over(most)(low) > 0 || over(least)(high) < 0) return null;
    if (over(least)(low) < 0) low = rootBetween(over(least), low, high);
    if (over(most)(high) > 0) high = rootBetween(over(most), low, high);
  }
  return low <= high ? [low, high] : null;
}

/** Past an end of the reach by rounding, where there is no dome, it is past any window: `within` is a shim of the reach. */
const outcomeAt = (givens: Givens, t: number, kind: ChainKey, within: number): number =>
  chainOnShim(givens, t)?.[kind] ??
  (t < within ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY);
