import { type AsBuilt, measured, type Offsets } from "../../instrument/as-built/as-built.ts";
import {
  type MeasurementKey,
  measurementField,
  measurementKeys,
} from "../../instrument/as-built/measurement-fields.ts";
import { writeField } from "../../instrument/field-value.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import { anglePart } from "../../instrument/outcome-fields.ts";
import { mm, type Phrase } from "../../instrument/phrase.ts";
import type { Profile, ProfileResult } from "../outcome.ts";
import { profileOf } from "../profile.ts";
import {
  changedBy,
  heightsWithOffsets,
  type MadeInstrument,
  madeOf,
  noOffsets,
  withPlannedPart,
} from "./made-instrument.ts";

/** What the rest of the work will come to, with what is measured in place of what was planned. */
export interface Outlook extends MadeInstrument {
  readonly plan: Profile;
}

export type OutlookResult =
  | { readonly ok: true; readonly outlook: Outlook }
  | {
      readonly ok: false;
      /** The measured value to blame; null when the plan itself has no profile. */
      readonly measurement: MeasurementKey | null;
      readonly why: Phrase;
    };

/** A height at the saddle that a plan can aim for, and be corrected toward. */
export const goals = ["saddleExposure", "stringHeight", "bridgeClearance"] as const;
export type Goal = (typeof goals)[number];

/**
 * The outlook of an instrument from its record. The shim is the plan's until it is measured; later
 * measures supersede earlier ones: a gap under the straightedge takes the shim's place, the glued top's
 * gap the offered one's, the fret plane over the bridge that of neck, fingerboard and bridge together,
 * and the strings' own heights everything. Refuses when a measured value does not go with the rest.
 */
export function outlookOf(
  instrument: Instrument,
  asBuilt: AsBuilt,
  planned: ProfileResult = profileOf(instrument),
): OutlookResult {
  if (!planned.ok) return { ok: false, measurement: null, why: planned.refusal.why };
  const plan = planned.profile;
  const carried = asBuilt.taken.at(-1)?.offsets ?? noOffsets;
  const stated = asMade(instrument, asBuilt, plan, carried.shim);
  const gap = measured(asBuilt.readings, "gapAfter") ?? measured(asBuilt.readings, "gapBefore");
  const bare = madeOf(stated, gap, noOffsets);
  if (!bare.ok) {
    const { field, why } = bare.objection;
    return { ok: false, measurement: measurementToBlame(instrument, asBuilt, field, planned), why };
  }
  const { givens, dome, gap: atSaddle } = bare.made;
  const offsets = offsetsOf(asBuilt, bare.made, stated.target.value, carried);
  const heights = heightsWithOffsets(givens, dome, atSaddle, offsets);
  return { ok: true, outlook: { ...bare.made, heights, offsets, plan } };
}

/** The plan with its shim (or spacer) fixed, the corrections taken, and each stated number as measured. */
function asMade(
  instrument: Instrument,
  { readings, taken }: AsBuilt,
  plan: Profile,
  partOffset: number,
): Instrument {
  const corrected = changedBy(
    withPlannedPart(instrument, plan),
    taken.flatMap(({ changes }) => changes),
  );
  const made = measurementKeys.reduce((before, key) => {
    const { replaces } = measurementField(key);
    const value = measured(readings, key);
    return replaces === null || value === null ? before : writeField(before, replaces, value);
  }, corrected);
  const kind = anglePart[instrument.dome.method];
  const part = measured(readings, kind);
  return part === null ? made : { ...made, target: { kind, value: part - partOffset } };
}

/** By how much each measured height stands off what the geometry makes of all that was measured before it. */
function offsetsOf(
  { readings }: AsBuilt,
  { heights, instrument, dome }: MadeInstrument,
  statedShim: number,
  carried: Offsets,
): Offsets {
  const clearance = measured(readings, "bridgeClearance");
  const fretPlane = clearance === null ? carried.fretPlane : clearance - heights.bridgeClearance;
  const off = (key: "stringHeight" | "saddleExposure"): number | null => {
    const value = measured(readings, key);
    return value === null ? null : value - (heights[key] + fretPlane);
  };
  const [string, saddle] = [off("stringHeight"), off("saddleExposure")];
  const effective = dome === null ? statedShim : instrument.target.value;
  return {
    shim: carried.shim + statedShim - effective,
    fretPlane,
    stringHeight: string ?? saddle ?? carried.stringHeight,
    saddleExposure: saddle ?? string ?? carried.saddleExposure,
  };
}

/** The measured value of the field that objects; else the last one without which nothing objects. */
function measurementToBlame(
  instrument: Instrument,
  asBuilt: AsBuilt,
  field: string,
  planned: ProfileResult,
): MeasurementKey | null {
  const present = measurementKeys.filter((key) => asBuilt.readings[key] !== undefined);
  const own = present.find((key) =>
    key === "shim" || key === "spacer"
      ? field === "target.value"
      : measurementField(key).replaces === field,
  );
  const fits = (key: MeasurementKey): boolean => {
    const { [key]: _, ...readings } = asBuilt.readings;
    return outlookOf(instrument, { ...asBuilt, readings }, planned).ok;
  };
  return own ?? present.findLast(fits) ?? null;
}

/** What the builder's target asks of the saddle; its exposure where the target is another thing. */
export function goalOf({ target }: Instrument): Goal {
  return goals.find((goal) => goal === target.kind) ?? "saddleExposure";
}

const spoken: Readonly<Record<Goal, readonly [will: string, does: string]>> = {
  saddleExposure: ["the saddle will stand ", "the saddle stands "],
  stringHeight: ["the strings will run ", "the strings run "],
  bridgeClearance: ["the fret plane will pass ", "the fret plane passes "],
};

const place: Readonly<Record<Goal, string>> = {
  saddleExposure: "",
  stringHeight: " over the top",
  bridgeClearance: " over the bridge",
};

/** "With what is measured, the saddle will stand 2.9 mm; planned 3.4 mm." */
export function outlookSaid({ heights, plan }: Outlook, asBuilt: AsBuilt, goal: Goal): Phrase {
  const [will, does] = spoken[goal];
  const final = asBuilt.readings[goal] !== undefined;
  const begun = Object.keys(asBuilt.readings).length > 0 || asBuilt.taken.length > 0;
  if (!begun)
    return ["Nothing is measured yet. As planned, ", will, mm(plan[goal]), `${place[goal]}.`];
  const opening = final ? ["As measured, ", does] : ["With what is measured, ", will];
  return [...opening, mm(heights[goal]), place[goal], "; planned ", mm(plan[goal]), "."];
}
