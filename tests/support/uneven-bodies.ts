import type { Place } from "../../src/geometry/polyline.ts";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { halvesOf } from "../../src/profile/halves.ts";
import { instrumentFrom } from "./solved.ts";

/*
 * Bodies whose halves differ, drawn for the tests and of no guitar: stated widths on the bass side, on the treble
 * side the same as far as the upper bout, and then a horn and a scoop.
 */

const roundedHorn = [
  [0, 0],
  [5.75, 60.07],
  [14.76, 94.26],
  [19.87, 108.08],
  [37.24, 142.18],
  [52.2, 162.26],
  [60.33, 170.8],
  [83.9, 188.37],
  [91.85, 192.24],
  [111.61, 198.02],
  [135.12, 198.41],
  [155.22, 193.94],
  [164.79, 190.08],
  [187.41, 176.3],
  [195.55, 169.96],
  [206.85, 160.49],
  [211.33, 156.66],
  [223.83, 146.34],
  [229.7, 141.88],
  [249.8, 129.59],
  [269.18, 122.62],
  [292.56, 120],
  [323.15, 124.07],
  [334.34, 127.78],
  [339.82, 129.97],
  [354.7, 136.41],
  [358.79, 138.09],
  [371.3, 142.49],
  [391.54, 146.41],
  [407.73, 146.91],
  [416.53, 146.02],
  [425.17, 144.17],
  [431.73, 142.16],
  [443.79, 137.82],
  [453.34, 133.52],
  [457.77, 131.11],
  [470.08, 120.92],
  [472.39, 117.19],
  [474.1, 110.21],
  [473.94, 107.6],
  [472.96, 105],
  [472, 103.63],
  [467.62, 99.95],
  [465.73, 98.83],
  [456.66, 94.59],
  [451.53, 92.47],
  [435.34, 84.81],
  [429.16, 80.47],
  [423.17, 73.63],
  [420.66, 67.61],
  [420.01, 61.4],
  [421.28, 54.28],
  [423.71, 49.56],
  [430.07, 43.3],
  [435.51, 40.13],
  [442, 37.5],
  [456.17, 34],
  [463.42, 32.91],
  [480.61, 31.45],
  [500, 31],
];

const pointedHorn = [
  [0, 0],
  [5.53, 56.11],
  [14.16, 87.99],
  [19.03, 100.88],
  [34.78, 131.45],
  [48.68, 150.27],
  [56.19, 158.33],
  [79, 175.99],
  [86.31, 179.83],
  [108.57, 186.87],
  [129.16, 187.78],
  [149.52, 184.47],
  [159.98, 181.03],
  [183.12, 168.9],
  [194.41, 161.01],
  [208.67, 150.19],
  [227.71, 136.56],
  [233.58, 132.97],
  [252.23, 124.13],
  [276.33, 118.6],
  [288.71, 118],
  [309.27, 119.8],
  [325.26, 123.91],
  [338.18, 128.68],
  [343.31, 130.68],
  [355, 134.82],
  [373.8, 138.99],
  [394.42, 139.89],
  [412.81, 137.3],
  [435.77, 131.25],
  [454.3, 123.37],
  [466, 116],
  [449.31, 111.92],
  [434.35, 105.31],
  [427.82, 101.16],
  [414.11, 87.05],
  [408.92, 74.58],
  [408.01, 66.75],
  [408.17, 63.06],
  [408.79, 59.7],
  [413.75, 50.25],
  [419.07, 45.21],
  [425.35, 41.22],
  [446.82, 33.8],
  [452.36, 32.72],
  [469.69, 30.64],
  [488, 30],
];

export const roundedCutaway: Instrument = instrumentFrom({
  name: "Rounded cutaway",
  body: {
    length: 500,
    lowerBoutWidth: 398,
    lowerBoutAt: 124,
    waistWidth: 240,
    waistAt: 292,
    upperBoutWidth: 294,
    upperBoutAt: 404,
    neckEndWidth: 62,
    tracingTreble: roundedHorn,
  },
});

export const pointedCutaway: Instrument = instrumentFrom({
  name: "Pointed cutaway",
  body: {
    length: 488,
    lowerBoutWidth: 376,
    lowerBoutAt: 122,
    waistWidth: 236,
    waistAt: 288,
    upperBoutWidth: 280,
    upperBoutAt: 390,
    neckEndWidth: 60,
    tracingTreble: pointedHorn,
  },
});

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
