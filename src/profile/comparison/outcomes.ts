import type { Instrument, Range, WindowKind } from "../../instrument/instrument.ts";
import { anglePart, windowKinds } from "../../instrument/outcome-fields.ts";
import type { Profile } from "../outcome.ts";
import { profileOf } from "../profile.ts";
import { type ChainKey, chainOfInstrument } from "../saddle-chain.ts";

/** The single numbers of a profile, by either method, that can be set side by side and swept, in the order of cause. */
export const outcomeNames = {
  shim: ["Shim", "length"],
  spacer: ["Spacer", "length"],
  tailDrop: ["Drop of the tail end", "length"],
  pitch: ["Pitch", "angle"],
  heelAngle: ["Heel angle", "angle"],
  flatGap: ["Gap under a straightedge at the saddle", "length"],
  projection: ["Fret plane over the top", "length"],
  bridgeClearance: ["Fret plane over the bridge", "length"],
  stringHeight: ["Strings over the top", "length"],
  saddleExposure: ["Saddle exposed", "length"],
  breakAngle: ["Break angle", "angle"],
  overrunLength: ["Overrun past the break", "length"],
  overrunDepth: ["Overrun, depth", "length"],
  cleanShim: ["Thinnest shim without overrun", "length"],
  thicknessLeft: ["Plate left on the seat", "length"],
  rimOffset: ["Whole edge down by", "length"],
  maxRemoval: ["Most off the level rim", "length"],
  stockWidth: ["Side stock", "length"],
  dishNeeded: ["Dish needed", "length"],
} as const;

export type OutcomeKey = keyof typeof outcomeNames;

export const outcomeKeys = Object.keys(outcomeNames) as readonly OutcomeKey[];

const isWindowKind = (key: OutcomeKey): key is OutcomeKey & WindowKind =>
  windowKinds.some((kind) => kind === key);

/** The range a builder accepts for an outcome; null where none is stated. */
export const windowOf = ({ windows }: Instrument, key: OutcomeKey): Range | null =>
  isWindowKind(key) ? windows[key] : null;

const ofRim: readonly OutcomeKey[] = [
  "overrunLength",
  "overrunDepth",
  "cleanShim",
  "thicknessLeft",
  "rimOffset",
  "maxRemoval",
  "stockWidth",
  "dishNeeded",
];

/** Whether an outcome is only had from the whole profile, which takes some hundred times as long. */
export const needsRim = (key: OutcomeKey): boolean => ofRim.includes(key);

/** Far apart, so that only the landmarks are worked out. */
const fewStations = { stationEvery: 1e6 };

/** One outcome of an instrument with its own target met; null where there is none. */
export function outcomeAt(instrument: Instrument, key: OutcomeKey): number | null {
  if (needsRim(key)) {
    const result = profileOf(instrument, fewStations);
    return result.ok ? outcomeIn(result.profile, key) : null;
  }
  const chain = chainOfInstrument(instrument);
  if (chain === null) return null;
  if (key !== "shim" && key !== "spacer") return chain[key as ChainKey];
  return key === anglePart[instrument.dome.method] ? chain.part : null;
}

/** One outcome of a profile; null where its method has none. */
export function outcomeIn(profile: Profile, key: OutcomeKey): number | null {
  if (key === "spacer" || key === "thicknessLeft") return profile.seat?.[key] ?? null;
  return profile[key];
}
