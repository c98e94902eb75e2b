import type { Instrument, TargetKind } from "../../src/instrument/instrument.ts";
import { readInstrument } from "../../src/instrument/read-instrument.ts";
import { type Givens, givensOf } from "../../src/profile/givens.ts";
import type { BreakProfile, Profile, Refusal, SeatProfile } from "../../src/profile/outcome.ts";
import { profileOf } from "../../src/profile/profile.ts";

/** An instrument from plain JSON through the one door, as a file would come. */
export function instrumentFrom(json: unknown): Instrument {
  const reading = readInstrument(JSON.parse(JSON.stringify(json)));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.instrument;
}

function profileWithin(instrument: Instrument, stationEvery: number): Profile {
  const result = profileOf(instrument, { stationEvery });
  if (!result.ok) throw new Error(JSON.stringify(result.refusal));
  return result.profile;
}

/** The profile of an instrument that must have one, its rim sanded flat from a break. */
export function solved(instrument: Instrument, stationEvery = 25): BreakProfile {
  const profile = profileWithin(instrument, stationEvery);
  if (profile.seat !== null) throw new Error("a seat where a break was expected");
  return profile;
}

/** The profile of an instrument that must have one, its seat sanded on the domed top. */
export function solvedSeat(instrument: Instrument, stationEvery = 25): SeatProfile {
  const profile = profileWithin(instrument, stationEvery);
  if (profile.seat === null) throw new Error("a break where a seat was expected");
  return profile;
}

/** The same instrument, domed all over. */
export const onSeat = (instrument: Instrument): Instrument => ({
  ...instrument,
  dome: { ...instrument.dome, method: "seat" },
});

/** The givens and the profile of an instrument that must have both. */
export function planned(instrument: Instrument): { givens: Givens; profile: BreakProfile } {
  const set = givensOf(instrument);
  if (!set.ok) throw new Error(JSON.stringify(set.objection));
  return { givens: set.givens, profile: solved(instrument) };
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

/** What can be aimed for where the rim has a break. */
export const breakTargets = [
  "pitch",
  "bridgeClearance",
  "saddleExposure",
  "stringHeight",
  "shim",
] as const;
