import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Dome, domeLeaning } from "../../src/geometry/dome.ts";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { type Givens, givensOf } from "../../src/profile/givens.ts";
import { blendedTopZ, topTurn, topZ } from "../../src/profile/top.ts";
import { even } from "../geometry/even.ts";
import { solved } from "../support/solved.ts";
import { builderInstrument, domedInstrument } from "./builder-instrument.ts";
import { Book } from "./by-the-book.ts";

fc.configureGlobal({ seed: 20261125 });

const share = even(0, 1);

function givensFor(instrument: Instrument): Givens {
  const result = givensOf(instrument);
  if (!result.ok) throw new Error(JSON.stringify(result.objection));
  return result.givens;
}

const withBraces = (instrument: Instrument, braceRadius: number | null): Instrument => ({
  ...instrument,
  dome: { ...instrument.dome, braceRadius },
});

describe("the top on the centreline", { timeout: 30_000 }, () => {
  it("is sphereZ + rise(Rb', w) − rise(R', w), with the cross sections' radii, to 1e-9 mm", () => {
    fc.assert(
      fc.property(builderInstrument, share, (instrument, along) => {
        const { dome, shim, breakX } = solved(instrument);
        const x = breakX * along;
        const off = topZ(givensFor(instrument), dome, x) - new Book(instrument, shim).topZ(x);
        expect(Math.abs(off)).toBeLessThan(1e-9);
      }),
      { numRuns: 300 },
    );
  });

  it("is the dome itself, exactly, where the braces are arched as the dish", () => {
    fc.assert(
      fc.property(domedInstrument, share, (drawn, along) => {
        const instrument = withBraces(drawn, drawn.dome.dishRadius);
        const { dome, shim, breakX } = solved(instrument);
        const x = breakX * along * 0.999;
        const sphere = new Book(instrument, shim).sphereZ(x, 0);
        expect(Math.abs(topZ(givensFor(instrument), dome, x) - sphere)).toBeLessThan(1e-9);
      }),
      { numRuns: 100 },
    );
  });

  it("lies under the rim's dome with flatter braces and over it with sharper ones", () => {
    fc.assert(
      fc.property(domedInstrument, share, (drawn, along) => {
        const radius = drawn.dome.dishRadius ?? Number.NaN;
        const at = (braceRadius: number | null): number => {
          const instrument = withBraces(drawn, braceRadius);
          const { dome, breakX } = solved(instrument);
          return topZ(givensFor(instrument), dome, 10 + (breakX - 20) * along);
        };
        expect(at(null)).toBeLessThan(at(radius * 1.5));
        expect(at(radius * 1.5)).toBeLessThan(at(radius));
        expect(at(radius)).toBeLessThan(at(radius / 1.5));
      }),
      { numRuns: 60 },
    );
  });

  it("is the flat from the break on", () => {
    fc.assert(
      fc.property(builderInstrument, share, (instrument, along) => {
        const { dome, breakX } = solved(instrument);
        const x = breakX + (instrument.body.length - breakX) * along;
        expect(topZ(givensFor(instrument), dome, x)).toBe(0);
        expect(blendedTopZ(givensFor(instrument), dome, x)).toBe(0);
      }),
      { numRuns: 60 },
    );
  });

  it("stands at the saddle where flatGap says", () => {
    fc.assert(
      fc.property(builderInstrument, (instrument) => {
        const { shim, flatGap, saddleX } = solved(instrument);
        expect(Math.abs(flatGap + new Book(instrument, shim).topZ(saddleX))).toBeLessThan(1e-9);
      }),
      { numRuns: 100 },
    );
  });
});

describe("the turn of the top", { timeout: 30_000 }, () => {
  it("is how the top at the saddle follows the dome's lean", () => {
    fc.assert(
      fc.property(
        domedInstrument,
        even(-0.15, 0.15),
        fc.constantFrom(null, 900, 3000, 12_000),
        (drawn, lean, braceRadius) => {
          const givens = givensFor(withBraces(drawn, braceRadius));
          const { dishCurvature, breakX, breakHalfWidth, saddleX } = givens;
          const at = (leaning: number): Dome | null =>
            domeLeaning(dishCurvature, breakX, breakHalfWidth, leaning);
          const height = (leaning: number): number => {
            const dome = at(leaning);
            return dome === null ? Number.NaN : topZ(givens, dome, saddleX);
          };
          const dome = at(lean);
          const h = 1e-6;
          const quotient = (height(lean + h) - height(lean - h)) / (2 * h);
          fc.pre(dome !== null && Number.isFinite(quotient));
          if (dome === null) return;
          const turn = topTurn(givens, dome);
          expect(Math.abs(turn - quotient)).toBeLessThan(1e-3 + 1e-4 * Math.abs(turn));
        },
      ),
      { numRuns: 150 },
    );
  });
});

describe("the blend", () => {
  it("joins flat and dome without a step: no height, and no corner, at either end", () => {
    fc.assert(
      fc.property(builderInstrument, (instrument) => {
        const givens = givensFor(instrument);
        const { dome, breakX } = solved(instrument);
        const z = (x: number): number => blendedTopZ(givens, dome, x);
        const end = breakX - instrument.dome.blendLength;
        const h = 1e-4;
        expect(Math.abs(z(breakX - h))).toBeLessThan(1e-8);
        expect(Math.abs(z(end + h) - topZ(givens, dome, end + h))).toBeLessThan(1e-8);
      }),
      { numRuns: 60 },
    );
  });

  it("leaves the dome alone tailward of it, and stays between dome and flat within it", () => {
    fc.assert(
      fc.property(builderInstrument, share, (instrument, along) => {
        const givens = givensFor(instrument);
        const { dome, breakX } = solved(instrument);
        const { blendLength } = instrument.dome;
        const outside = (breakX - blendLength) * along;
        expect(blendedTopZ(givens, dome, outside)).toBe(topZ(givens, dome, outside));
        const inside = breakX - blendLength * along * 0.999;
        const [blended, whole] = [blendedTopZ(givens, dome, inside), topZ(givens, dome, inside)];
        expect(Math.abs(blended)).toBeLessThanOrEqual(Math.abs(whole));
        expect(blended * whole).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 60 },
    );
  });

  it("of no length is a plain step", () => {
    fc.assert(
      fc.property(domedInstrument, (drawn) => {
        const instrument = { ...drawn, dome: { ...drawn.dome, blendLength: 0 } };
        const givens = givensFor(instrument);
        const { dome, breakX } = solved(instrument);
        const x = breakX - 1e-9;
        expect(blendedTopZ(givens, dome, x)).toBe(topZ(givens, dome, x));
        expect(blendedTopZ(givens, dome, breakX)).toBe(0);
      }),
      { numRuns: 20 },
    );
  });
});
