import { describe, expect, it } from "vitest";
import {
  contourLines,
  gridIn,
  type Place,
  regionIn,
} from "../../../src/profile/comparison/contour.ts";
import { resultOf } from "../../support/steps.ts";

const spread = (from: number, to: number, count: number): number[] =>
  Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);

const axis = spread(-2, 2, 40);
const circle = (x: number, y: number): number => Math.hypot(x, y);

const closed = (line: readonly Place[]): boolean =>
  line.length > 2 && line[0]?.[0] === line.at(-1)?.[0] && line[0]?.[1] === line.at(-1)?.[1];

/** Signed area of a polygon; counter-clockwise is positive. */
const area = (line: readonly Place[]): number =>
  line.reduce((sum, [x, y], i) => {
    const [nx, ny] = line[(i + 1) % line.length] ?? [x, y];
    return sum + (x * ny - nx * y) / 2;
  }, 0);

describe("contour lines", () => {
  it("are one ring round a circle, with every corner on it", () => {
    const lines = contourLines(circle, resultOf(gridIn(circle, axis, axis)), 1.23);
    expect(lines).toHaveLength(1);
    const [ring = []] = lines;
    expect(closed(ring)).toBe(true);
    for (const [x, y] of ring) expect(circle(x, y)).toBeCloseTo(1.23, 12);
    expect(Math.abs(area(ring))).toBeCloseTo(Math.PI * 1.23 ** 2, 1);
  });

  it("run open to the edge of the map", () => {
    const plane = (x: number, y: number): number => x + 2 * y;
    const lines = contourLines(plane, resultOf(gridIn(plane, axis, axis)), 0.333);
    expect(lines).toHaveLength(1);
    for (const [x, y] of lines[0] ?? []) expect(plane(x, y)).toBeCloseTo(0.333, 12);
  });

  it.each([0.004, -0.004])("join a saddle the right way, level %f", (level) => {
    const saddle = (x: number, y: number): number => x * y;
    const grid = resultOf(gridIn(saddle, spread(-1.03, 1, 11), spread(-1.01, 1, 11)));
    const lines = contourLines(saddle, grid, level);
    expect(lines).toHaveLength(2);
    for (const line of lines) {
      // Each branch of x·y = level stays in its own quadrant.
      const [x = 0, y = 0] = line[0] ?? [];
      for (const place of line) {
        expect(Math.sign(place[0])).toBe(Math.sign(x));
        expect(Math.sign(place[1])).toBe(Math.sign(y));
      }
    }
  });

  it("stop where there is no value", () => {
    const half = (x: number, y: number): number => (x < 0 ? Number.NaN : circle(x, y));
    const lines = contourLines(half, resultOf(gridIn(half, axis, axis)), 1);
    expect(lines).toHaveLength(1);
    for (const [x] of lines[0] ?? []) expect(x).toBeGreaterThanOrEqual(0);
  });

  it("part the grid just as its values do: a brute count of corners", () => {
    const bumps = (x: number, y: number): number => Math.sin(3 * x) * Math.cos(2 * y) + 0.2 * x;
    const grid = resultOf(gridIn(bumps, axis, axis));
    const level = 0.31;
    const crossings = contourLines(bumps, grid, level).flat();
    const onAxis = new Set(axis);
    let along = 0;
    for (let j = 0; j < axis.length; j++)
      for (let i = 1; i < axis.length; i++)
        if ((grid.values[j]?.[i] ?? 0) > level !== (grid.values[j]?.[i - 1] ?? 0) > level) along++;
    const found = new Set(
      crossings.filter(([x, y]) => onAxis.has(y) && !onAxis.has(x)).map(String),
    );
    expect(found.size).toBe(along);
    for (const [x, y] of crossings) expect(bumps(x, y)).toBeCloseTo(level, 12);
  });
});

describe("a region", () => {
  it("has a disc's area, its corners inside and at its edge", () => {
    const inDisc = (x: number, y: number): boolean => circle(x, y) <= 1.3;
    const polygons = resultOf(regionIn(inDisc, axis, axis));
    for (const polygon of polygons) {
      expect(area(polygon)).toBeGreaterThanOrEqual(0);
      for (const [x, y] of polygon) expect(circle(x, y)).toBeLessThanOrEqual(1.3);
    }
    const total = polygons.reduce((sum, polygon) => sum + area(polygon), 0);
    expect(total).toBeCloseTo(Math.PI * 1.3 ** 2, 1);
    const rim = polygons.flat().filter(([x, y]) => circle(x, y) > 1.3 - 1e-6);
    expect(rim.length).toBeGreaterThan(80);
  });
});
