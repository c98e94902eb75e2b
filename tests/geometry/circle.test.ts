import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { curvatureOf, sagitta } from "../../src/geometry/circle.ts";
import { even } from "./even.ts";

fc.configureGlobal({ seed: 20261125 });

describe("the height of an arc over its chord", () => {
  it("is r − √(r² − c²), where that can be worked out without losing digits", () => {
    fc.assert(
      fc.property(even(10, 1000), even(0.1, 0.999), (radius, share) => {
        const half = radius * share;
        const plain = radius - Math.sqrt((radius - half) * (radius + half));
        expect(sagitta(1 / radius, half)).toBeCloseTo(plain, 9);
      }),
    );
  });

  it("keeps its digits when the arc is shallow: c²/2r to one part in a thousand million", () => {
    expect(sagitta(1e-9, 100) / (100 ** 2 / 2e9)).toBeCloseTo(1, 12);
  });

  it("is the same to either side, nothing over a straight line, and the radius at a half circle", () => {
    expect(sagitta(1 / 300, -40)).toBe(sagitta(1 / 300, 40));
    expect(sagitta(0, 200)).toBe(0);
    expect(sagitta(1 / 256, 256)).toBe(256);
  });

  it("grows with the chord and with the curvature", () => {
    const curvature = even(1e-6, 1e-3);
    const half = even(1, 900);
    fc.assert(
      fc.property(curvature, half, (k, c) => {
        expect(sagitta(k, c * 1.1)).toBeGreaterThan(sagitta(k, c));
        expect(sagitta(k * 1.1, c)).toBeGreaterThan(sagitta(k, c));
      }),
    );
  });

  it("is not a number past the half circle, so that no caller can take it for one", () => {
    expect(sagitta(1 / 100, 101)).toBeNaN();
  });
});

it("no radius is no curvature", () => {
  expect(curvatureOf(null)).toBe(0);
  expect(curvatureOf(8000)).toBe(1 / 8000);
});
