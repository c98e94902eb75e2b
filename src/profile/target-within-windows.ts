import { rootBetween } from "../geometry/root.ts";
import type { Instrument, Range } from "../instrument/instrument.ts";
import { anglePart, windowKinds } from "../instrument/outcome-fields.ts";
import { type Givens, givensOf } from "./givens.ts";
import { type Profile, targetIn } from "./outcome.ts";
import { type ChainKey, chainOnPart } from "./saddle-chain.ts";

/**
 * The values of an instrument's target with which every outcome lies within its window and the flat
 * board does not cut past the break (with a seat: some plate is left), in the target's own unit (mm or degrees); null where there are
 * none. `profile` is the instrument's own. Every outcome grows with the shim (or spacer), so that what lies
 * in one window is one interval of them, and what is left of all of them is one too.
 */
export function targetWithinWindows(instrument: Instrument, profile: Profile): Range | null {
  const set = givensOf(instrument);
  if (!set.ok) return null;
  const { givens } = set;
  const { kind } = instrument.target;
  const parts = partsWithinWindows(givens, profile);
  if (parts === null || kind === "shim" || kind === "spacer") return parts;
  const own = profile.seat?.spacer ?? profile.shim ?? 0;
  const [low, high] = parts.map((t) => outcomeAt(givens, t, kind, own));
  return low !== undefined && high !== undefined ? [low, high] : null;
}

function partsWithinWindows(givens: Givens, profile: Profile): Range | null {
  const { windows, dome } = givens.instrument;
  const kind = anglePart[dome.method];
  const own = targetIn(profile, kind);
  const reach = profile.reachable[kind];
  if (own === null || reach === null) return null;
  let [low, high] = reach;
  if (profile.seat === null) {
    if (profile.cleanShim === null) return null;
    low = Math.max(low, profile.cleanShim);
  }
  for (const window of windowKinds) {
    const [least, most] = windows[window];
    const over = (limit: number) => (t: number) => outcomeAt(givens, t, window, own) - limit;
    if (over(most)(low) > 0 || over(least)(high) < 0) return null;
    if (over(least)(low) < 0) low = rootBetween(over(least), low, high);
    if (over(most)(high) > 0) high = rootBetween(over(most), low, high);
  }
  return low <= high ? [low, high] : null;
}

/** Past an end of the reach by rounding, where there is no dome, it is past any window: `within` is a part of the reach. */
const outcomeAt = (givens: Givens, t: number, kind: ChainKey, within: number): number =>
  chainOnPart(givens, t)?.[kind] ??
  (t < within ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY);
