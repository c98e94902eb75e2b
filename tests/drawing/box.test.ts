import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Box, boxesMeet, boxHolds, boxOf, grown, lineMeets } from "../../src/drawing/box.ts";
import type { Point } from "../../src/drawing/frame.ts";

const whole = fc.integer({ min: -20, max: 20 });
const point: fc.Arbitrary<Point> = fc.tuple(whole, whole);
const box: fc.Arbitrary<Box> = fc
  .tuple(whole, whole, fc.integer({ min: 1, max: 15 }), fc.integer({ min: 1, max: 15 }))
  .map(([left, top, width, height]) => ({ left, top, right: left + width, bottom: top + height }));

const inside = ({ left, top, right, bottom }: Box, [x, y]: Point): boolean =>
  x > left && x < right && y > top && y < bottom;

describe("lineMeets", () => {
  test("is true wherever a point of the line is in the box", () => {
    fc.assert(
      fc.property(box, point, point, (around, a, b) => {
        for (let i = 0; i <= 60; i++) {
          const at: Point = [a[0] + ((b[0] - a[0]) * i) / 60, a[1] + ((b[1] - a[1]) * i) / 60];
          if (inside(around, at)) expect(lineMeets(around, a, b)).toBe(true);
        }
      }),
    );
  });

  test("is false when every point of the line is well out of the box", () => {
    fc.assert(
      fc.property(box, point, point, (around, a, b) => {
        const near = grown(around, 1);
        const steps = 400;
        for (let i = 0; i <= steps; i++) {
          const at: Point = [
            a[0] + ((b[0] - a[0]) * i) / steps,
            a[1] + ((b[1] - a[1]) * i) / steps,
          ];
          if (inside(near, at)) return;
        }
        expect(lineMeets(around, a, b)).toBe(false);
      }),
    );
  });

  test("does not count a line along an edge", () => {
    const around = { left: 0, top: 0, right: 10, bottom: 10 };
    expect(lineMeets(around, [0, -5], [0, 15])).toBe(false);
    expect(lineMeets(around, [0.01, -5], [0.01, 15])).toBe(true);
  });
});

test("boxes meet both ways, and a box holds what it is grown from", () => {
  fc.assert(
    fc.property(box, box, (a, b) => {
      expect(boxesMeet(a, b)).toBe(boxesMeet(b, a));
      expect(boxHolds(grown(a, 2), a)).toBe(true);
      expect(boxHolds(a, grown(a, 2))).toBe(false);
    }),
  );
});

test("the box of points holds them all and no more", () => {
  expect(
    boxOf([
      [3, 8],
      [-2, 5],
      [4, 6],
    ]),
  ).toEqual({ left: -2, top: 5, right: 4, bottom: 8 });
});
