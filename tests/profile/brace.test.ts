import { describe, expect, test } from "vitest";
import { archOf, braceFits, braceRises } from "../../src/profile/brace.ts";

const feet = 304.8;

describe("archOf", () => {
  // Depth over a 24 in chord, r − √(r² − c²/4) by hand.
  test.each([
    [12, 12.722],
    [15, 10.171],
    [20, 7.625],
    [25, 6.098],
    [28, 5.445],
    [30, 5.081],
    [50, 3.048],
  ])("a dish of %i ft is %f mm deep over 24 in", (radius, depth) => {
    expect(archOf(24 * 25.4, radius * feet)).toBeCloseTo(depth, 3);
  });

  // "Circular Sections", Mathe-ASS help page: r 12.1875, chord 21, height 6.
  test("a segment of a published table", () => {
    expect(archOf(21, 12.1875)).toBeCloseTo(6, 12);
  });

  // General arc-height page: r 15, chord 20, height 3.82.
  test("another", () => {
    expect(archOf(20, 15)).toBeCloseTo(3.82, 2);
  });
});

describe("braceRises", () => {
  const [length, radius] = [385, 28 * feet];
  const rises = braceRises(length, radius, 25);

  test("run from the middle to the end", () => {
    expect(rises.map(({ fromMiddle }) => fromMiddle)).toEqual([
      0, 25, 50, 75, 100, 125, 150, 175, 192.5,
    ]);
    expect(rises[0]?.drop).toBe(0);
    expect(rises[0]?.rise).toBe(archOf(length, radius));
    expect(rises.at(-1)?.rise).toBe(0);
  });

  // Pythagoras, with the circle's centre `radius` under the middle of the arc.
  test("every place lies on the circle", () => {
    const centre = archOf(length, radius) - radius;
    for (const { fromMiddle, rise } of rises)
      expect(Math.hypot(fromMiddle, rise - centre)).toBeCloseTo(radius, 9);
  });

  test("an end on the spacing is not said twice", () => {
    expect(braceRises(100, radius, 25).map(({ fromMiddle }) => fromMiddle)).toEqual([0, 25, 50]);
  });

  test("a straight brace has none", () => {
    for (const { rise, drop } of braceRises(300, null, 50)) expect([rise, drop]).toEqual([0, 0]);
  });

  test("a brace no longer than the circle is wide fits", () => {
    expect(braceFits(200, 100)).toBe(true);
    expect(archOf(200, 100)).toBe(100);
    expect(braceFits(200.1, 100)).toBe(false);
    expect(braceFits(1e6, null)).toBe(true);
  });
});
