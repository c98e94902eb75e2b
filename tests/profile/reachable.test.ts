import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Instrument, Range } from "../../src/instrument/instrument.ts";
import { even } from "../geometry/even.ts";
import { aimed, breakTargets, refused, solved, solves, withShim } from "../support/solved.ts";
import { builderInstrument } from "./builder-instrument.ts";

fc.configureGlobal({ seed: 20261125 });

/**
 * Dishes and braces hardly larger than the body, or far sharper braces than the dish, so that a sphere
 * that ends short of the rim bounds the reach before the depth of the sides does.
 */
const tightInstrument: fc.Arbitrary<Instrument> = fc
  .record({
    instrument: builderInstrument,
    dish: even(1, 3),
    brace: even(1, 3),
    way: fc.constantFrom("dish alone", "braces alone", "both"),
    depthTail: even(60, 200),
  })
  .map(({ instrument, dish, brace, way, depthTail }) => {
    const span =
      solved({ ...instrument, dome: { ...instrument.dome, dishRadius: null, braceRadius: null } })
        .dishNeeded / 2;
    const dishRadius = way === "braces alone" ? 8534.4 : span * dish;
    const braceRadius = way === "dish alone" ? dishRadius : span * brace * 1.2;
    return {
      ...instrument,
      body: { ...instrument.body, depthTail, backRadius: null },
      dome: { ...instrument.dome, dishRadius, braceRadius },
    };
  });

/** A shim in the middle of what the instrument can be given, if it can be given any. */
function inReach(instrument: Instrument): Instrument | null {
  const probe = withShim(instrument, -1);
  const { field, nearest } = refused(probe);
  return field === "target.value" && nearest !== null ? withShim(instrument, nearest) : null;
}

function expectRange(
  instrument: Instrument,
  kind: (typeof breakTargets)[number],
  [low, high]: Range,
) {
  const at = (value: number): Instrument => aimed(instrument, kind, value);
  const hair = 1e-6 * Math.max(1, high - low);
  expect(low).toBeLessThan(high);
  for (const value of [low, low + hair, (low + high) / 2, high - hair, high])
    expect(Math.abs(solved(at(value))[kind] - value)).toBeLessThan(1e-8);
  expect(refused(at(low - hair))).toMatchObject({ field: "target.value", nearest: low });
  expect(refused(at(high + hair))).toMatchObject({ field: "target.value", nearest: high });
}

describe.each(breakTargets)("the reachable %s", { timeout: 30_000 }, (kind) => {
  it("solves at and just inside both its ends; just outside is refused with that very number", () => {
    fc.assert(
      fc.property(builderInstrument, (instrument) => {
        expectRange(instrument, kind, solved(instrument).reachable[kind]);
      }),
      { numRuns: 60 },
    );
  });

  it("does so too where the dish or the braces end the reach before the sides' depth does", () => {
    let cut = 0;
    fc.assert(
      fc.property(tightInstrument, (drawn) => {
        const instrument = inReach(drawn);
        fc.pre(instrument !== null);
        if (instrument === null) return;
        const { reachable } = solved(instrument);
        if (reachable.shim[0] > 0 || reachable.shim[1] < instrument.body.depthTail) cut += 1;
        expectRange(instrument, kind, reachable[kind]);
      }),
      { numRuns: 40 },
    );
    expect(cut).toBeGreaterThan(10);
  });
});

describe("the reach", { timeout: 30_000 }, () => {
  it("of a body in a dish of the trade runs from no shim to one as thick as the tail is deep", () => {
    fc.assert(
      fc.property(builderInstrument, (drawn) => {
        const { dishRadius } = drawn.dome;
        const instrument = { ...drawn, dome: { ...drawn.dome, braceRadius: dishRadius } };
        expect(solved(instrument).reachable.shim).toEqual([0, instrument.body.depthTail]);
      }),
      { numRuns: 60 },
    );
  });

  it("is all there is: of shims from none to the tail's depth those within it solve, and no others", () => {
    fc.assert(
      fc.property(tightInstrument, (drawn) => {
        const instrument = inReach(drawn);
        fc.pre(instrument !== null);
        if (instrument === null) return;
        const [low, high] = solved(instrument).reachable.shim;
        const { depthTail } = instrument.body;
        for (let i = 0; i <= 40; i++) {
          const shim = (depthTail * i) / 40;
          expect(solves(withShim(instrument, shim)), `${shim} in ${low} to ${high}`).toBe(
            low <= shim && shim <= high,
          );
        }
      }),
      { numRuns: 40 },
    );
  });

  it("holds every outcome of every shim within it, and each grows with the shim", () => {
    fc.assert(
      fc.property(tightInstrument, (drawn) => {
        const instrument = inReach(drawn);
        fc.pre(instrument !== null);
        if (instrument === null) return;
        const { reachable } = solved(instrument);
        const [low, high] = reachable.shim;
        let before: Partial<Record<string, number>> = {};
        for (let i = 0; i <= 20; i++) {
          const profile = solved(withShim(instrument, low + ((high - low) * i) / 20));
          for (const kind of breakTargets) {
            const value = profile[kind];
            // Where a sphere ends at the rim it stands upright there, and rounding weighs more.
            expect(value).toBeGreaterThanOrEqual(reachable[kind][0] - 1e-7);
            expect(value).toBeLessThanOrEqual(reachable[kind][1] + 1e-7);
            expect(value, kind).toBeGreaterThan(before[kind] ?? Number.NEGATIVE_INFINITY);
          }
          before = Object.fromEntries(breakTargets.map((kind) => [kind, profile[kind]]));
        }
      }),
      { numRuns: 30 },
    );
  });

  it("is the same from wherever it is asked", () => {
    fc.assert(
      fc.property(builderInstrument, (instrument) => {
        const { reachable } = solved(instrument);
        for (const kind of breakTargets) {
          const [low, high] = reachable[kind];
          expect(solved(aimed(instrument, kind, (low + high) / 2)).reachable).toEqual(reachable);
        }
      }),
      { numRuns: 30 },
    );
  });
});
