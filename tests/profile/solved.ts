import type { Instrument, TargetKind } from "../../src/instrument/instrument.ts";
import type { Profile, Refusal } from "../../src/profile/outcome.ts";
import { profileOf } from "../../src/profile/profile.ts";

/** The profile of an instrument that has one. */
export function solved(instrument: Instrument): Profile {
  const result = profileOf(instrument);
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.refusal)}`);
  return result.profile;
}

/** The refusal of an instrument that has no profile. */
export function refused(instrument: Instrument): Refusal {
  const result = profileOf(instrument);
  if (result.ok) throw new Error("solved, though it should have been refused");
  return result.refusal;
}

export const solves = (instrument: Instrument): boolean => profileOf(instrument).ok;

/** The same instrument with another target. */
export const aimed = (instrument: Instrument, kind: TargetKind, value: number): Instrument => ({
  ...instrument,
  target: { kind, value },
});

export const withShim = (instrument: Instrument, shim: number): Instrument =>
  aimed(instrument, "shim", shim);

/** Every number of a profile by its path, but for those of its sentences. */
export function numbersOf(profile: Profile): ReadonlyMap<string, number> {
  const { checks: _, ...rest } = profile;
  const found = new Map<string, number>();
  const walk = (node: unknown, path: string): void => {
    if (typeof node === "number") found.set(path, node);
    else if (typeof node === "object" && node !== null)
      for (const [key, value] of Object.entries(node))
        walk(value, path === "" ? key : `${path}.${key}`);
  };
  walk(rest, "");
  return found;
}
