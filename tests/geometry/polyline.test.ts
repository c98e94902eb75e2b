import { describe, expect, test } from "vitest";
import {
  lengthOf,
  offPolyline,
  offRising,
  type Place,
  polylineAlong,
} from "../../src/geometry/polyline.ts";

const circle =
  (radius: number) =>
  (t: number): Place => [radius * Math.cos(t), radius * Math.sin(t)];

describe("polylineAlong", () => {
  // A chord of a circle strays from it by its sagitta, r − √(r² − c²/4) (CRC Concise Encyclopedia of Mathematics, "Segment").
  test.each([0.5, 0.02, 0.001])("keeps within %f mm of a circle", (tolerance) => {
    const places = polylineAlong(circle(150), 0, Math.PI, tolerance);
    const chords = places.slice(1).map((b, i) => {
      const a = places[i] ?? b;
      return Math.hypot(b[0] - a[0], b[1] - a[1]);
    });
    const worst = Math.max(...chords.map((c) => 150 - Math.sqrt(150 ** 2 - c ** 2 / 4)));
    expect(worst).toBeLessThanOrEqual(tolerance * (1 + 1e-9));
    expect(worst).toBeGreaterThan(tolerance / 5);
  });

  test("is as long as the curve, from below", () => {
    const length = lengthOf(polylineAlong(circle(150), 0, Math.PI, 1e-6));
    expect(length).toBeLessThan(150 * Math.PI);
    expect(length).toBeCloseTo(150 * Math.PI, 4);
  });

  test("sees a bend that lies even about the middle", () => {
    const wave = (t: number): Place => [t, Math.sin(t)];
    const places = polylineAlong(wave, 0, 8 * Math.PI, 0.01);
    for (let t = 0; t < 25.1; t += 0.01)
      expect(offPolyline(wave(t), places)).toBeLessThanOrEqual(0.011);
  });

  test("meets corners and ends exactly", () => {
    const roof = (t: number): Place => [t, 1 - Math.abs(t - 1 / 3)];
    const places = polylineAlong(roof, 0, 1, 0.01, [1 / 3]);
    expect(places).toContainEqual([1 / 3, 1]);
    expect(places[0]).toEqual(roof(0));
    expect(places.at(-1)).toEqual(roof(1));
  });
});

test("ends on a curve that leaves the numbers", () => {
  const places = polylineAlong((t) => [1e308 * 10 * t, Number.NaN], 0, 1, 0.05);
  expect(places.length).toBeLessThan(10);
});

test("the distance from a line of rising x is the distance from the line, wherever the place lies", () => {
  const line = Array.from({ length: 60 }, (_, i): Place => [i, 20 * Math.sin(i * i)]);
  for (let i = 0; i < 200; i++) {
    const place: Place = [80 * Math.sin(i * 3.7), 40 * Math.cos(i * 5.3)];
    expect(offRising(place, line)).toBe(offPolyline(place, line));
  }
});
