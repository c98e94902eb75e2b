import type { Instrument } from "../instrument/instrument.ts";
import { givensOf } from "./givens.ts";
import type { BreakProfile } from "./outcome.ts";
import { chainOnPart } from "./saddle-chain.ts";

/**
 * How much of the fret plane's height over the bridge, mm, comes from the shim's reach in under the
 * rim: what would be lost if a shim of the same thickness touched at the tail end alone. `profile` is
 * the instrument's own. Null where such a shim gives no dome.
 */
export function contactWorth(
  instrument: Instrument,
  { shim, bridgeClearance }: BreakProfile,
): number | null {
  const set = givensOf(instrument);
  if (!set.ok) return null;
  const atTheEnd = chainOnPart({ ...set.givens, contact: 0 }, shim);
  return atTheEnd === null ? null : bridgeClearance - atTheEnd.bridgeClearance;
}
