import type { Field } from "./field.ts";

/** Defaults: a steel-string top and a fingerboard's width at the body; common practice, no source. */
export const seatFields = {
  "seat.topThickness": {
    label: "Top thickness at the seat",
    quantity: "length",
    min: 0,
    max: 20,
    default: 2.8,
    step: 0.1,
    howTo: "Calipers on the plate where the fingerboard will lie, before it is glued on.",
  },
  "seat.leastCut": {
    label: "Least cut on the seat",
    quantity: "length",
    min: 0,
    max: 20,
    default: 0,
    step: 0.05,
    howTo: "What comes off the seat's lowest corner: 0 where the bar just touches there.",
  },
  "seat.fingerboardWidth": {
    label: "Seat width",
    quantity: "length",
    min: 1,
    max: 200,
    default: 57,
    step: 0.5,
    howTo: "Across the fingerboard where it lies on the body, at its widest.",
  },
} as const satisfies Readonly<Record<string, Field>>;
