import fc from "fast-check";
import { expect, test } from "vitest";
import { type Frame, pointAt, xAt, zAt } from "../../src/drawing/frame.ts";

const frames: fc.Arbitrary<Frame> = fc.record({
  along: fc.double({ min: 0.05, max: 20, noNaN: true }),
  up: fc.double({ min: 0.05, max: 200, noNaN: true }),
  left: fc.double({ min: -500, max: 500, noNaN: true }),
  level: fc.double({ min: -500, max: 500, noNaN: true }),
  turned: fc.boolean(),
});
const length = fc.double({ min: -1500, max: 1500, noNaN: true });

test("a place on the drawing leads back to its millimetres", () => {
  fc.assert(
    fc.property(frames, length, length, (frame, x, z) => {
      const [px, py] = pointAt(frame, x, z);
      expect(xAt(frame, px)).toBeCloseTo(x, 6);
      expect(zAt(frame, py)).toBeCloseTo(z, 6);
    }),
  );
});

test("the neck is to the right, and up is up until the rim is turned over", () => {
  const frame: Frame = { along: 2, up: 10, left: 40, level: 100, turned: false };
  expect(pointAt(frame, 10, 3)).toEqual([60, 70]);
  expect(pointAt({ ...frame, turned: true }, 10, 3)).toEqual([60, 130]);
});
