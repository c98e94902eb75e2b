import type { Place } from "../../src/geometry/polyline.ts";
import { cutawayPresets } from "../../src/instrument/cutaway-presets.ts";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { halvesOf } from "../../src/profile/halves.ts";
import { instrumentFrom } from "./solved.ts";

const [rounded, pointed] = cutawayPresets;
if (rounded === undefined || pointed === undefined) throw new Error("no cutaway presets");

export const roundedCutaway: Instrument = rounded;
export const pointedCutaway: Instrument = pointed;

/** A body drawn by hand, one half of it some millimetres fuller than the other; no cutaway. */
export const unevenBody: Instrument = instrumentFrom({
  name: "Uneven halves",
  body: {
    length: 500,
    tracing: [
      [0, 0],
      [5, 60],
      [40, 140],
      [120, 188],
      [220, 150],
      [290, 118],
      [400, 146],
      [470, 90],
      [500, 34],
    ],
    tracingTreble: [
      [0, 0],
      [5, 56],
      [40, 131],
      [120, 178],
      [225, 141],
      [285, 112],
      [395, 131],
      [470, 82],
      [500, 30],
    ],
  },
});

/** The same with bass and treble side changed over, of a body with both halves traced. */
export function swapped(instrument: Instrument): Instrument {
  const { tracing, tracingTreble, ...body } = instrument.body;
  return instrumentFrom({
    ...instrument,
    body: { ...body, tracing: tracingTreble, tracingTreble: tracing },
  });
}

/** Round both halves, from the tail and back to it: y toward the bass side. */
export function loopOf({ body }: Instrument, perHalf = 250): Place[] {
  const [bass, treble = bass] = halvesOf(body).map(({ outline }) =>
    Array.from({ length: perHalf }, (_, i) =>
      outline.placeAtArc((outline.totalArc() * i) / (perHalf - 1)),
    ),
  );
  return [...(bass ?? []), ...(treble ?? []).toReversed().map(([x, y]): Place => [x, -y])];
}
