import fc from "fast-check";
import type { Instrument, TargetKind } from "../../src/instrument/instrument.ts";
import { instrumentFrom } from "./solved.ts";

const foot = 304.8;

/** A number between two others in hundredths, as a builder would write it. */
const between = (low: number, high: number): fc.Arbitrary<number> =>
  fc
    .noBias(fc.integer({ min: Math.round(low * 100), max: Math.round(high * 100) }))
    .map((n) => n / 100);

/** A dish radius in half feet. */
const feet = (low: number, high: number): fc.Arbitrary<number> =>
  fc.noBias(fc.integer({ min: 2 * low, max: 2 * high })).map((halves) => (halves * foot) / 2);

const orNone = (radius: fc.Arbitrary<number>): fc.Arbitrary<number | null> =>
  fc.oneof({ weight: 5, arbitrary: radius }, { weight: 1, arbitrary: fc.constant(null) });

const body = fc
  .record({
    length: between(420, 540),
    width: between(300, 430),
    lowerAt: between(0.22, 0.3),
    waist: between(0.58, 0.72),
    waistAt: between(0.54, 0.62),
    upper: between(0.68, 0.84),
    upperAt: between(0.76, 0.86),
    neckEndWidth: between(0, 90),
    depthTail: between(90, 125),
    depthNeck: between(70, 105),
    backRadius: orNone(feet(10, 20)),
  })
  .map(({ length, width, lowerAt, waist, waistAt, upper, upperAt, ...rest }) => ({
    length,
    lowerBoutWidth: width,
    lowerBoutAt: length * lowerAt,
    waistWidth: width * waist,
    waistAt: length * waistAt,
    upperBoutWidth: width * upper,
    upperBoutAt: length * upperAt,
    ...rest,
  }));

const dome = fc
  .record({
    dishRadius: orNone(feet(12, 60)),
    otherRadius: orNone(feet(12, 60)),
    sameBraces: fc.boolean(),
    flatLength: between(60, 160),
    tailExtra: between(-1, 2),
  })
  .map(({ dishRadius, otherRadius, sameBraces, ...rest }) => ({
    dishRadius,
    braceRadius: sameBraces ? dishRadius : otherRadius,
    ...rest,
  }));

const neck = fc.record({
  scale: between(560, 660),
  joinFret: fc.constantFrom(11, 12, 13, 14),
  fingerboardThickness: between(4.5, 7),
  fretHeight: between(0.8, 1.4),
  fingerboardRadius: orNone(between(250, 510)),
  neckTilt: between(-0.5, 0.5),
  relief: between(0, 0.35),
});

const bridge = fc.record({
  thickness: between(6, 10),
  compensation: between(1, 5),
  pinDistance: between(8, 22),
  pinRamp: between(0, 4),
});

const strings = fc.record({
  count: fc.noBias(fc.integer({ min: 4, max: 12 })),
  spreadNut: between(28, 46),
  spreadSaddle: between(46, 64),
  nutClearance: between(0.2, 0.8),
  actionBass: between(1.8, 3),
  actionTreble: between(1.4, 2.2),
});

/** Instruments a builder might well bring: all bodies, joins and dishes of the trade, with a shim given. */
export const plausibleInstrument: fc.Arbitrary<Instrument> = fc
  .record({
    body,
    dome,
    shim: fc.record({ contact: between(0, 40), tailBlockDepth: between(15, 40) }),
    neck,
    bridge,
    strings,
    target: fc.record({ kind: fc.constant("shim"), value: between(2, 16) }),
  })
  .map((parts) => instrumentFrom({ ...parts, id: "drawn", name: "Drawn by lot" }));

/** A fixed list of them. */
export const randomInstruments = (howMany: number, seed: number): Instrument[] =>
  fc.sample(plausibleInstrument, { numRuns: howMany, seed });

/** The same instrument with another target. */
export const aimedAt = (instrument: Instrument, kind: TargetKind, value: number): Instrument =>
  instrumentFrom({ ...instrument, target: { kind, value } });
