import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { easing, quarter } from "../../../src/geometry/outline/unit-curve.ts";
import { type Controls, onCurve } from "../bezier-body.ts";
import { even } from "../even.ts";

fc.configureGlobal({ seed: 20261125 });

const kappa = 0.5522847498;

/** Each curve's four controls on the unit square. */
const curves = [
  [
    "quarter",
    quarter,
    [
      [0, 0],
      [0, kappa],
      [1 - kappa, 1],
      [1, 1],
    ],
  ],
  [
    "easing",
    easing,
    [
      [0, 0],
      [0.45, 0],
      [0.55, 1],
      [1, 1],
    ],
  ],
] as const satisfies readonly (readonly [string, typeof quarter, Controls])[];

/** Evenly from 0 to 1, and as small as a number can be. */
const unit = fc.oneof(even(0, 1), fc.double({ min: 0, max: 1, noNaN: true }));

describe.each(curves)("the %s", (_, curve, controls) => {
  it("is the Bezier of its controls, with its derivatives, by de Casteljau", () => {
    fc.assert(
      fc.property(unit, (s) => {
        const { at, velocity } = onCurve(controls, s);
        expect(Math.abs(curve.xi(s) - at[0])).toBeLessThan(1e-14);
        expect(Math.abs(curve.eta(s) - at[1])).toBeLessThan(1e-14);
        expect(Math.abs(curve.dxi(s) - velocity[0])).toBeLessThan(1e-14);
        expect(Math.abs(curve.deta(s) - velocity[1])).toBeLessThan(1e-14);
      }),
      { numRuns: 500 },
    );
  });

  it("takes the parameter back from x to the last digits", () => {
    fc.assert(
      fc.property(unit, (xi) => {
        const s = curve.parameter(xi);
        expect(Math.abs(curve.xi(s) - xi)).toBeLessThan(1e-15);
      }),
      { numRuns: 2000 },
    );
  });

  it("takes x back from the parameter", () => {
    fc.assert(
      fc.property(unit, (s) => {
        expect(Math.abs(curve.parameter(curve.xi(s)) - s)).toBeLessThan(1e-13);
      }),
      { numRuns: 2000 },
    );
  });

  it("starts and ends at the corners, and rises between", () => {
    expect([curve.xi(0), curve.eta(0), curve.xi(1), curve.eta(1)]).toEqual([
      0,
      0,
      expect.closeTo(1, 15),
      expect.closeTo(1, 15),
    ]);
    fc.assert(
      fc.property(unit, (s) => {
        expect(curve.dxi(s)).toBeGreaterThanOrEqual(0);
        expect(curve.deta(s)).toBeGreaterThanOrEqual(-1e-16);
      }),
    );
  });
});

it("a quarter round keeps within 0.03 % of a true quarter circle", () => {
  for (let i = 0; i <= 1000; i++) {
    const s = i / 1000;
    const radius = Math.hypot(1 - quarter.xi(s), quarter.eta(s));
    expect(Math.abs(radius - 1)).toBeLessThan(3e-4);
  }
});
