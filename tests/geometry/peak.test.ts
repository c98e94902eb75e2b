import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { highest, lowest, peakNear } from "../../src/geometry/peak.ts";
import { even } from "./even.ts";

fc.configureGlobal({ seed: 20261125 });

const places = (count: number): number[] => Array.from({ length: count + 1 }, (_, i) => i / count);

/** The greatest of very many samples. */
function byScan(f: (x: number) => number, count = 20000): number {
  let most = Number.NEGATIVE_INFINITY;
  for (let i = 0; i <= count; i++) most = Math.max(most, f(i / count));
  return most;
}

const term = fc.record({
  size: even(-3, 3),
  turns: even(0, 1.2),
  phase: even(0, 6.3),
});

/** A smooth wave of few turns, with a kink at one sample. */
const wave = fc
  .record({
    terms: fc.array(term, { minLength: 1, maxLength: 3 }),
    kink: even(-8, 8),
    at: fc.integer({ min: 0, max: 16 }).map((n) => n / 16),
  })
  .map(({ terms, kink, at }) => (x: number): number => {
    const smooth = terms.map(({ size, turns, phase }) => size * Math.sin(6.3 * turns * x + phase));
    return smooth.reduce((sum, part) => sum + part, 0) + kink * Math.max(0, x - at);
  });

describe("the highest point over samples", () => {
  it("is as high as any of twenty thousand places, and lies on the curve", () => {
    fc.assert(
      fc.property(wave, (f) => {
        const xs = places(16);
        const peak = highest(f, xs, xs.map(f));
        expect(peak.value).toBe(f(peak.x));
        expect(peak.value).toBeGreaterThanOrEqual(byScan(f, 4000) - 1e-12);
      }),
      { numRuns: 300 },
    );
  });

  it("is exact in value, and in place to the root of that", () => {
    const f = (x: number): number => Math.cos(3 * (x - 0.123456));
    const peak = highest(f, places(4), places(4).map(f));
    expect(peak.value).toBeCloseTo(1, 14);
    expect(peak.x).toBeCloseTo(0.123456, 6);
  });

  it("is an end where the curve runs up to it", () => {
    const rising = (x: number): number => x * x;
    expect(highest(rising, places(8), places(8).map(rising))).toEqual({ x: 1, value: 1 });
    const falling = (x: number): number => -x;
    expect(highest(falling, places(8), places(8).map(falling))).toEqual({ x: 0, value: -0 });
  });

  it("is a kink's own place where the curve has one at a sample", () => {
    const kinked = (x: number): number => -Math.abs(x - 0.5);
    const peak = highest(kinked, places(8), places(8).map(kinked));
    expect(peak.x).toBe(0.5);
    expect(peak.value).toBe(-0);
  });

  it("is the higher of two humps, whichever the samples make look higher", () => {
    const humps = fc.record({
      first: even(0.05, 0.35),
      second: even(0.65, 0.95),
      steep: even(5, 60),
      tilt: even(-0.02, 0.02),
    });
    const misled: boolean[] = [];
    fc.assert(
      fc.property(humps, ({ first, second, steep, tilt }) => {
        const f = (x: number): number =>
          tilt * x - steep * (x - first) ** 2 * (x - second) ** 2 * (1 + x);
        const xs = places(12);
        const values = xs.map(f);
        const top = highest(f, xs, values);
        expect(top.value).toBe(f(top.x));
        expect(top.value).toBeGreaterThanOrEqual(byScan(f, 4000) - 1e-13);
        const sample = xs[values.indexOf(Math.max(...values))] ?? Number.NaN;
        misled.push(sample < 0.5 !== top.x < 0.5);
      }),
      { numRuns: 2000 },
    );
    expect(misled.filter(Boolean).length).toBeGreaterThan(50);
  });

  it("stands level ground: some place of it, with its height", () => {
    const level = (): number => 7;
    expect(highest(level, places(8), places(8).map(level)).value).toBe(7);
  });
});

it("the lowest point is the highest of the curve turned over", () => {
  fc.assert(
    fc.property(wave, (f) => {
      const xs = places(16);
      const low = lowest(f, xs, xs.map(f));
      const high = highest(
        (x) => -f(x),
        xs,
        xs.map((x) => -f(x)),
      );
      expect(low).toEqual({ x: high.x, value: -high.value });
    }),
  );
});

it("the peak near a sample stays between its neighbours", () => {
  fc.assert(
    fc.property(wave, fc.integer({ min: 0, max: 16 }), (f, i) => {
      const xs = places(16);
      const { x, value } = peakNear(f, xs, f(i / 16), i);
      expect(Math.abs(x - i / 16)).toBeLessThanOrEqual(1 / 16);
      expect(value).toBeGreaterThanOrEqual(f(i / 16));
    }),
  );
});
