import { describe, expect, test } from "vitest";
import { guessedEnds } from "../../../src/geometry/outline/tracing-ends.ts";
import type { Place } from "../../../src/geometry/polyline.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { outlinePoints } from "../../support/precise-outline.ts";
import { loopOf, pointedCutaway, roundedCutaway } from "../../support/uneven-bodies.ts";

const turnBy =
  (angle: number, dx: number, dy: number) =>
  ([x, y]: Place): Place => [
    dx + x * Math.cos(angle) - y * Math.sin(angle),
    dy + x * Math.sin(angle) + y * Math.cos(angle),
  ];

describe.each(presets.map(({ name, body }) => [name, body] as const))(
  "the ends of a drawing of %s",
  (_, body) => {
    const half: Place[] = outlinePoints(body, 30);
    const whole: Place[] = [...half, ...half.toReversed().map(([x, y]): Place => [x, -y])];
    const expectEnds = (drawn: readonly Place[], tail: Place, neck: Place, within: number) => {
      const ends = guessedEnds(drawn);
      for (const axis of [0, 1] as const) {
        expect(Math.abs((ends?.tail[axis] ?? Number.NaN) - tail[axis])).toBeLessThan(within);
        expect(Math.abs((ends?.neck[axis] ?? Number.NaN) - neck[axis])).toBeLessThan(within);
      }
    };

    test.each([0, Math.PI / 2, Math.PI, -Math.PI / 2])("half, turned by %f", (angle) => {
      const turn = turnBy(angle, 40, -70);
      for (const drawn of [half.map(turn), half.map(turn).toReversed()])
        expectEnds(drawn, turn([0, 0]), turn([body.length, 0]), 1e-6);
    });

    test.each([0, 0.3, 1, 2, 4, 5.5])("whole, turned by %f", (angle) => {
      const turn = turnBy(angle, 300, 12);
      for (const drawn of [whole.map(turn), whole.map(turn).toReversed()])
        expectEnds(drawn, turn([0, 0]), turn([body.length, 0]), 1e-6);
    });
  },
);

test("what has no extent has no ends", () => {
  for (const drawn of [
    [],
    [[3, 3]],
    [
      [3, 3],
      [3, 3],
      [3, 3],
    ],
  ] as const)
    expect(guessedEnds(drawn as readonly Place[])).toBeNull();
});

describe.each([roundedCutaway, pointedCutaway].map((one) => [one.name, one] as const))(
  "the ends of a drawing of a body with a %s",
  (_, instrument) => {
    test.each([0, 0.3, 1, 2, 4, 5.5])("whole, turned by %f, by its tailward part", (angle) => {
      const turn = turnBy(angle, 300, -20);
      for (const drawn of [loopOf(instrument), loopOf(instrument).toReversed()]) {
        const ends = guessedEnds(drawn.map(turn));
        const [tail, neck] = [turn([0, 0]), turn([instrument.body.length, 0])];
        for (const axis of [0, 1] as const) {
          expect(Math.abs((ends?.tail[axis] ?? Number.NaN) - tail[axis])).toBeLessThan(0.05);
          expect(Math.abs((ends?.neck[axis] ?? Number.NaN) - neck[axis])).toBeLessThan(0.05);
        }
      }
    });
  },
);
