import type { Instrument } from "../../instrument/instrument.ts";
import { givensOf } from "../givens.ts";
import type { Profile } from "../outcome.ts";
import { chainOnPart } from "../saddle-chain.ts";

/**
 * How much higher the saddle stands for `more` mm of the shim, or of the spacer; `profile` is the
 * instrument's own. Null where that gives no plan.
 */
export function raisedBy(instrument: Instrument, profile: Profile, more: number): number | null {
  const set = givensOf(instrument);
  if (!set.ok) return null;
  const part = profile.seat === null ? profile.shim : profile.seat.spacer;
  const chain = chainOnPart(set.givens, part + more);
  return chain === null ? null : chain.saddleExposure - profile.saddleExposure;
}
