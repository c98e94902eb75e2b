import type { DomeMethod } from "./dome-fields.ts";
import type { Field } from "./field.ts";

/** What each target may be, and what it is unless stated. Defaults agree with one another to 0.1 mm on the default instrument. */
export const targetFields = {
  pitch: {
    label: "Pitch",
    quantity: "angle",
    min: -45,
    max: 45,
    default: 1.4,
    step: 0.05,
    howTo: "Angle between the flat and the level rim's top edge.",
  },
  bridgeClearance: {
    label: "Fret plane over the bridge",
    quantity: "length",
    min: -200,
    max: 200,
    default: 0.5,
    step: 0.1,
    howTo: "Straightedge along the frets to the saddle line: from the bridge's top up to its edge.",
  },
  saddleExposure: {
    label: "Saddle exposed",
    quantity: "length",
    min: -200,
    max: 200,
    default: 3.4,
    step: 0.1,
    howTo: "On the centreline, from the bridge's top to the top of the saddle.",
  },
  stringHeight: {
    label: "String height over the top",
    quantity: "length",
    min: -200,
    max: 200,
    default: 12,
    step: 0.1,
    howTo: "On the centreline at the saddle, from the top to the underside of the strings.",
  },
  shim: {
    label: "Shim",
    quantity: "length",
    min: -200,
    max: 200,
    default: 8.4,
    step: 0.1,
    howTo: "Thickness of the shim under the tail, at the edge the rim rests on.",
  },
  spacer: {
    label: "Spacer",
    quantity: "length",
    min: -200,
    max: 200,
    default: 5.1,
    step: 0.1,
    howTo: "Thickness of the spacer under the bar at the saddle line, while the seat is sanded.",
  },
} as const satisfies Readonly<Record<string, Field>>;

/** One outcome asked for; it fixes the shim, or the spacer. */
export type TargetKind = keyof typeof targetFields;

export const targetKinds = [
  "pitch",
  "bridgeClearance",
  "saddleExposure",
  "stringHeight",
  "shim",
  "spacer",
] as const satisfies readonly TargetKind[];

/** The part at the bench that sets the angle, by method; each is a target of its own method only. */
export const anglePart = { break: "shim", seat: "spacer" } as const satisfies Record<
  DomeMethod,
  TargetKind
>;

/** What may be aimed for with a method. */
export const targetKindsOf = (method: DomeMethod): readonly TargetKind[] =>
  targetKinds.filter((kind) => kind !== anglePart[method === "break" ? "seat" : "break"]);

/** The outcomes a builder states a window for. */
export const windowKinds = [
  "bridgeClearance",
  "saddleExposure",
  "stringHeight",
  "breakAngle",
  "pitch",
] as const;

export type WindowKind = (typeof windowKinds)[number];

const pitch = {
  quantity: "angle",
  min: -45,
  max: 45,
  step: 0.1,
  howTo: "Angle between the flat and the level rim's top edge.",
} as const;

const breakAngle = {
  quantity: "angle",
  min: -90,
  max: 180,
  step: 1,
  howTo: "How far the string turns down over the saddle to its pin.",
} as const;

const height = (kind: TargetKind & WindowKind) =>
  ({
    quantity: "length",
    min: -200,
    max: 200,
    step: 0.1,
    howTo: targetFields[kind].howTo,
  }) as const;

const clearance = height("bridgeClearance");
const exposure = height("saddleExposure");
const string = height("stringHeight");

/**
 * Defaults. Fret plane over the bridge: from just clearing it, common practice, no source, to 1/16 in, and
 * string height about 1/2 in, as a published builders' tip has them; the saddle and the break angle from
 * memory; pitch common practice, no source.
 */
export const windowFields = {
  "windows.bridgeClearance.0": {
    label: "Fret plane over the bridge, least",
    default: 0,
    ...clearance,
  },
  "windows.bridgeClearance.1": {
    label: "Fret plane over the bridge, most",
    default: 1.6,
    ...clearance,
  },
  "windows.saddleExposure.0": { label: "Saddle exposed, least", default: 2.5, ...exposure },
  "windows.saddleExposure.1": { label: "Saddle exposed, most", default: 5, ...exposure },
  "windows.stringHeight.0": { label: "String height over the top, least", default: 11, ...string },
  "windows.stringHeight.1": { label: "String height over the top, most", default: 14, ...string },
  "windows.breakAngle.0": { label: "Break angle, least", default: 20, ...breakAngle },
  "windows.breakAngle.1": { label: "Break angle, most", default: 35, ...breakAngle },
  "windows.pitch.0": { label: "Pitch, least", default: 1, ...pitch },
  "windows.pitch.1": { label: "Pitch, most", default: 2, ...pitch },
} as const satisfies Readonly<Record<string, Field>>;
