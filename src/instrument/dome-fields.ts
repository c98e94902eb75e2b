import type { Field } from "./field.ts";

/**
 * How a domed top comes to a flat seat for the fingerboard. `break`: the rim is domed from the tail to a
 * break and sanded flat from there, on a shim. `seat`: rim and top are domed all over, and the seat is
 * sanded flat on the glued top, with a bar on a spacer.
 */
export const domeMethods = ["break", "seat"] as const;

export type DomeMethod = (typeof domeMethods)[number];

/** Defaults: a 28 ft dish and a break 100 mm from the neck end; common practice, no source. */
export const domeFields = {
  "dome.dishRadius": {
    label: "Dish radius",
    quantity: "length",
    min: 1,
    max: 1e9,
    default: 8534.4,
    step: 304.8,
    nullWord: "none",
    usual: "ft",
    howTo:
      "As marked on the dish. To check: half a straightedge's span squared, over twice the gap.",
  },
  "dome.dishDiameter": {
    label: "Dish diameter",
    quantity: "length",
    min: 1,
    max: 10000,
    default: 610,
    step: 5,
    howTo: "Across the sanding face of the dish, edge to edge.",
  },
  "dome.braceRadius": {
    label: "Brace radius",
    quantity: "length",
    min: 1,
    max: 1e9,
    default: 8534.4,
    step: 304.8,
    nullWord: "flat",
    usual: "ft",
    howTo: "Radius the gluing faces of the braces below the break are arched to.",
  },
  "dome.flatLength": {
    label: "Break from the neck end",
    quantity: "length",
    min: 0,
    max: 1500,
    default: 100,
    step: 1,
    howTo: "Along the centreline, from the neck end of the rim to the line where the flat ends.",
  },
  "dome.tailExtra": {
    label: "Extra off the tail",
    quantity: "length",
    min: -50,
    max: 50,
    default: 0,
    step: 0.1,
    howTo:
      "Side depth before the dish less after it, at the tail end and at the break: the one less the other. 0: as much off both.",
  },
  "dome.blendLength": {
    label: "Blend length",
    quantity: "length",
    min: 0,
    max: 1500,
    default: 45,
    step: 1,
    howTo: "From the break to the first domed brace, over which the plate goes from flat to domed.",
  },
} as const satisfies Readonly<Record<string, Field>>;

/** Defaults: a shim as wide as a common tail block is deep; common practice, no source. */
export const shimFields = {
  "shim.contact": {
    label: "Stick's width under the rim",
    quantity: "length",
    min: 0,
    max: 500,
    default: 20,
    step: 1,
    howTo: "From the tail end in to the inner edge of the shim stick, where the rim rests on it.",
  },
  "shim.tailBlockDepth": {
    label: "Tail block depth",
    quantity: "length",
    min: 0,
    max: 500,
    default: 20,
    step: 1,
    howTo: "Along the centreline, from the tail end to the inner face of the tail block.",
  },
} as const satisfies Readonly<Record<string, Field>>;
