import type { Instrument } from "../../src/instrument/instrument.ts";
import { readInstrument } from "../../src/instrument/read-instrument.ts";
import { type Givens, givensOf } from "../../src/profile/givens.ts";
import type { Profile } from "../../src/profile/outcome.ts";
import { profileOf } from "../../src/profile/profile.ts";

/** An instrument from plain JSON through the one door, as a file would come. */
export function instrumentFrom(json: unknown): Instrument {
  const reading = readInstrument(JSON.parse(JSON.stringify(json)));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.instrument;
}

/** The profile of an instrument that must have one. */
export function solved(instrument: Instrument, stationEvery = 25): Profile {
  const result = profileOf(instrument, { stationEvery });
  if (!result.ok) throw new Error(JSON.stringify(result.refusal));
  return result.profile;
}

/** The givens and the profile of an instrument that must have both. */
export function planned(instrument: Instrument): { givens: Givens; profile: Profile } {
  const set = givensOf(instrument);
  if (!set.ok) throw new Error(JSON.stringify(set.objection));
  const result = profileOf(instrument);
  if (!result.ok) throw new Error(JSON.stringify(result.refusal));
  return { givens: set.givens, profile: result.profile };
}
