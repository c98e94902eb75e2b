import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { bowZ, fingerboardEndX, fretPlaneZ, fretX, saddleLineX } from "../../src/profile/neck.ts";
import { middleString, stringsAcross } from "../../src/profile/strings.ts";
import { even } from "../geometry/even.ts";
import { solved } from "../support/solved.ts";
import { builderInstrument } from "./builder-instrument.ts";
import { fretPlaneByTheBook, stringByTheBook } from "./by-the-book.ts";

fc.configureGlobal({ seed: 20261125 });

const shareOf = (i: number, { strings }: Instrument): number => i / (strings.count - 1);

describe("every string", () => {
  it("runs straight from the nut over fret 12 to the saddle, its frets lowered by the board's curve and lifted by the bow", () => {
    fc.assert(
      fc.property(builderInstrument, (instrument) => {
        const strings = stringsAcross(instrument);
        expect(strings).toHaveLength(instrument.strings.count);
        strings.forEach(({ atNut, atSaddle }, i) => {
          const book = stringByTheBook(instrument, shareOf(i, instrument));
          expect(Math.abs(atNut - book.nut)).toBeLessThan(1e-10);
          expect(Math.abs(atSaddle - book.saddle)).toBeLessThan(1e-10);
        });
      }),
      { numRuns: 300 },
    );
  });

  it("shows the saddle by what it stands over the top, less the bridge", () => {
    fc.assert(
      fc.property(builderInstrument, (instrument) => {
        const { stringExposure, flatGap, saddleX } = solved(instrument);
        const seat =
          fretPlaneByTheBook(instrument, saddleX) + flatGap - instrument.bridge.thickness;
        stringExposure.forEach((exposure, i) => {
          const { saddle } = stringByTheBook(instrument, shareOf(i, instrument));
          expect(Math.abs(exposure - (seat + saddle))).toBeLessThan(1e-9);
        });
      }),
      { numRuns: 100 },
    );
  });

  it("alone lies in the middle, at the mean action", () => {
    fc.assert(
      fc.property(builderInstrument, (drawn) => {
        const instrument = { ...drawn, strings: { ...drawn.strings, count: 1 } };
        const profile = solved(instrument);
        expect(stringsAcross(instrument)).toMatchObject([middleString(instrument)]);
        expect(profile.stringExposure).toEqual([profile.saddleExposure]);
      }),
      { numRuns: 50 },
    );
  });

  it("on a flat board at one action stands as high as its neighbours", () => {
    fc.assert(
      fc.property(builderInstrument, (drawn) => {
        const instrument = {
          ...drawn,
          neck: { ...drawn.neck, fingerboardRadius: null },
          strings: { ...drawn.strings, actionTreble: drawn.strings.actionBass },
        };
        const { stringExposure, saddleExposure } = solved(instrument);
        for (const exposure of stringExposure)
          expect(Math.abs(exposure - saddleExposure)).toBeLessThan(1e-11);
      }),
      { numRuns: 50 },
    );
  });
});

describe("the chain at the saddle line", () => {
  it("adds up: gap, fret plane, bridge, string and saddle", () => {
    fc.assert(
      fc.property(builderInstrument, (instrument) => {
        const profile = solved(instrument);
        const { bridge, neck, body } = instrument;
        const middle = stringByTheBook(
          { ...instrument, neck: { ...neck, fingerboardRadius: null } },
          0.5,
        );
        const xs = body.length - (neck.scale * 2 ** (-neck.joinFret / 12) + bridge.compensation);
        const projection = fretPlaneByTheBook(instrument, xs) + profile.flatGap;
        const exposure = projection + middle.saddle - bridge.thickness;
        expect(profile.saddleX).toBeCloseTo(xs, 10);
        expect(profile.projection).toBeCloseTo(projection, 9);
        expect(profile.bridgeClearance).toBeCloseTo(projection - bridge.thickness, 9);
        expect(profile.stringHeight).toBeCloseTo(projection + middle.saddle, 9);
        expect(profile.saddleExposure).toBeCloseTo(exposure, 9);
        expect(profile.heelAngle).toBeCloseTo(90 - profile.pitch - neck.neckTilt, 12);
      }),
      { numRuns: 200 },
    );
  });

  it("turns about the neck end when the neck is tilted", () => {
    fc.assert(
      fc.property(builderInstrument, even(-5, 5), (drawn, tilt) => {
        const instrument = { ...drawn, neck: { ...drawn.neck, neckTilt: tilt } };
        const { length } = instrument.body;
        const level = instrument.neck.fingerboardThickness + instrument.neck.fretHeight;
        expect(fretPlaneZ(instrument, length)).toBeCloseTo(level, 12);
        const fall = Math.tan((tilt * Math.PI) / 180);
        expect(fretPlaneZ(instrument, length - 200)).toBeCloseTo(level + 200 * fall, 9);
      }),
    );
  });
});

describe("relief", () => {
  it("is the gap at the middle of the straight line from fret 1 to the join fret", () => {
    fc.assert(
      fc.property(builderInstrument, ({ neck }) => {
        const chord = neck.scale * (2 ** (-1 / 12) - 2 ** (-neck.joinFret / 12));
        const gap = (bowZ(neck, chord) + bowZ(neck, 0)) / 2 - bowZ(neck, chord / 2);
        expect(gap).toBeCloseTo(neck.relief, 12);
      }),
    );
  });

  it("lies along the fret plane from the join fret on, and grows as the square toward the nut", () => {
    fc.assert(
      fc.property(builderInstrument, even(1, 400), ({ neck }, u) => {
        expect(bowZ(neck, 0)).toBe(0);
        expect(bowZ(neck, -u)).toBe(0);
        expect(bowZ(neck, 2 * u)).toBeCloseTo(4 * bowZ(neck, u), 12);
      }),
    );
  });

  it("lifts fret 12 only where the join lies bodyward of it", () => {
    const at = (joinFret: number): number => {
      const drawn = fc.sample(builderInstrument, { numRuns: 1, seed: 1 })[0];
      if (drawn === undefined) throw new Error("none drawn");
      const neck = { ...drawn.neck, joinFret, relief: 0.3, fingerboardRadius: null };
      const { atNut, atSaddle } = middleString({
        ...drawn,
        neck,
        bridge: { ...drawn.bridge, compensation: 0 },
      });
      // The string's height at fret 12 is half way from nut to saddle.
      const mean = (drawn.strings.actionBass + drawn.strings.actionTreble) / 2;
      return (atNut + atSaddle) / 2 - mean;
    };
    expect(at(12)).toBeCloseTo(0, 12);
    expect(at(11)).toBeCloseTo(0, 12);
    expect(at(14)).toBeGreaterThan(0.001);
  });
});

describe("frets", () => {
  it("stand where twelve to the octave puts them, the join fret at the neck end", () => {
    fc.assert(
      fc.property(builderInstrument, fc.integer({ min: 0, max: 24 }), (instrument, fret) => {
        const { neck, body } = instrument;
        expect(fretX(instrument, neck.joinFret)).toBeCloseTo(body.length, 10);
        expect(fretX(instrument, 0) - fretX(instrument, 12)).toBeCloseTo(neck.scale / 2, 10);
        const left = fretX(instrument, fret) - fretX(instrument, fret + 1);
        const next = fretX(instrument, fret + 1) - fretX(instrument, fret + 2);
        expect((left / next) ** 12).toBeCloseTo(2, 9);
      }),
    );
  });

  it("the saddle lies a scale and its compensation from the nut, the fingerboard's end past its last fret", () => {
    fc.assert(
      fc.property(builderInstrument, (instrument) => {
        const { neck, bridge } = instrument;
        const nut = fretX(instrument, 0);
        expect(nut - saddleLineX(instrument)).toBeCloseTo(neck.scale + bridge.compensation, 9);
        expect(fretX(instrument, neck.lastFret) - fingerboardEndX(instrument)).toBeCloseTo(
          neck.fingerboardOverhang,
          9,
        );
      }),
    );
  });
});
