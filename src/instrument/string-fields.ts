import type { Field } from "./field.ts";

/** Defaults from memory and common practice; pin distance and ramp give a break angle near 25 degrees. */
export const bridgeFields = {
  "bridge.thickness": {
    label: "Bridge thickness",
    quantity: "length",
    min: 0,
    max: 100,
    default: 8.6,
    step: 0.1,
    howTo: "On the centreline at the saddle slot, underside to top.",
  },
  "bridge.compensation": {
    label: "Compensation",
    quantity: "length",
    min: 0,
    max: 20,
    default: 3.5,
    step: 0.1,
    howTo: "How far the saddle line lies beyond the scale length on the centreline.",
  },
  "bridge.pinDistance": {
    label: "Saddle to pins",
    quantity: "length",
    min: 1,
    max: 200,
    default: 14,
    step: 0.5,
    howTo: "From the saddle line to where the strings leave the pin slots, along the strings.",
  },
  "bridge.pinRamp": {
    label: "Pin slot depth",
    quantity: "length",
    min: 0,
    max: 50,
    default: 3,
    step: 0.1,
    howTo: "How far below the bridge's top the string leaves the pin slot.",
  },
} as const satisfies Readonly<Record<string, Field>>;

/** Defaults: action as common setup instructions have it; the rest common practice, no source. */
export const stringFields = {
  "strings.count": {
    label: "Strings",
    quantity: "count",
    min: 1,
    max: 18,
    default: 6,
    step: 1,
    howTo: "Every string counted, those of a course too.",
  },
  "strings.spreadNut": {
    label: "Spread at the nut",
    quantity: "length",
    min: 0,
    max: 300,
    default: 36,
    step: 0.5,
    howTo: "Between the middles of the two outer strings at the nut.",
  },
  "strings.spreadSaddle": {
    label: "Spread at the saddle",
    quantity: "length",
    min: 0,
    max: 300,
    default: 54,
    step: 0.5,
    howTo: "Between the middles of the two outer strings at the saddle.",
  },
  "strings.nutClearance": {
    label: "String over the frets at the nut",
    quantity: "length",
    min: 0,
    max: 20,
    default: 0.5,
    step: 0.05,
    howTo: "Straightedge over the first frets to the nut: from its edge up to the string.",
  },
  "strings.actionBass": {
    label: "Action, bass",
    quantity: "length",
    min: 0,
    max: 20,
    default: 2.3,
    step: 0.1,
    howTo: "Crown of fret 12 to the underside of the lowest string.",
  },
  "strings.actionTreble": {
    label: "Action, treble",
    quantity: "length",
    min: 0,
    max: 20,
    default: 1.8,
    step: 0.1,
    howTo: "Crown of fret 12 to the underside of the highest string.",
  },
} as const satisfies Readonly<Record<string, Field>>;
