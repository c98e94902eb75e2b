import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readInstrument } from "../../src/instrument/read-instrument.ts";
import { profileOf } from "../../src/profile/profile.ts";
import { even } from "../geometry/even.ts";

/*
 * Treble halves as a hand, a scanner or a stranger's program may trace them: lines that run back, cross
 * themselves, wind up, stand straight up, pass the neck end, or come in hundreds of places. Each is refused with a
 * reason, or gives a plan of finite numbers, or a refusal that names a field.
 */
type Place = readonly [x: number, y: number];
const length = 490;

const bass: readonly Place[] = [
  [0, 0],
  [20, 110],
  [110, 190],
  [285, 120],
  [390, 142],
  [470, 110],
  [length, 30],
];

/** A sane tail, and from there whatever: steps any way, long and short. */
const wandering = fc
  .array(fc.tuple(even(-25, 60), even(-30, 30)), { minLength: 1, maxLength: 5 })
  .map((steps): readonly Place[] => {
    let [x, y] = [285, 120];
    const walked = steps.map(([dx, dy]): Place => {
      x += dx;
      y = Math.max(1, y + dy);
      return [x, y];
    });
    return [...bass.slice(0, 4), ...walked, [length, 30]];
  });

/** Horns of every size and lean, from none to one that runs back past the waist. */
const horns = fc
  .tuple(even(380, 489), even(60, 200), even(250, 489), even(20, 140))
  .map(([tipX, tipY, scoopX, scoopY]): readonly Place[] => [
    ...bass.slice(0, 4),
    [tipX, tipY],
    [scoopX, scoopY],
    [length, 30],
  ]);

/** Sharp teeth, hundreds of them. */
const teeth = fc
  .tuple(fc.integer({ min: 10, max: 190 }), even(-2, 3))
  .map(([count, back]): readonly Place[] => [
    ...bass.slice(0, 4),
    ...Array.from({ length: 2 * count }, (_, i): Place => {
      const x = 290 + (190 * i) / (2 * count);
      return i % 2 === 0 ? [x, 130] : [x - back, 140];
    }),
    [length, 30],
  ]);

/** A line wound up inward. */
const spirals = even(0.5, 6).map((turns): readonly Place[] => [
  ...bass.slice(0, 4),
  ...Array.from({ length: 60 }, (_, i): Place => {
    const [angle, radius] = [(2 * Math.PI * turns * i) / 60, 60 - i];
    return [390 + radius * Math.cos(angle), 110 + radius * Math.sin(angle)];
  }),
  [length, 30],
]);

function numbersIn(value: unknown): readonly number[] {
  if (typeof value === "number") return [value];
  if (typeof value !== "object" || value === null) return [];
  return Object.values(value).flatMap(numbersIn);
}

/** How often each came: refused as no outline, refused as no plan, planned. */
function fates(halves: fc.Arbitrary<readonly Place[]>, numRuns: number) {
  const count = { unread: 0, refused: 0, planned: 0 };
  fc.assert(
    fc.property(halves, fc.boolean(), (treble, isBass) => {
      const [tracing, tracingTreble] = isBass ? [treble, bass] : [bass, treble];
      const body = { length, tracing, tracingTreble };
      const read = readInstrument({ format: "rimwright-instrument", version: 2, body });
      if (!read.ok) {
        expect(read.problems.length).toBeGreaterThan(0);
        for (const { message } of read.problems) expect(message).not.toBe("");
        count.unread += 1;
        return;
      }
      const result = profileOf(read.instrument);
      if (result.ok) {
        expect(numbersIn(result.profile).every(Number.isFinite)).toBe(true);
        count.planned += 1;
      } else {
        expect(result.refusal.field).not.toBe("");
        count.refused += 1;
      }
    }),
    { numRuns, endOnFailure: true },
  );
  return count;
}

describe("a half that runs back", () => {
  it("straight in, at one distance from the tail, has a horn and a scoop", () => {
    const straightIn = [...bass.slice(0, 4), [470, 60], [470, 20], [length, 30]] as const;
    expect(fates(fc.constant(straightIn), 2)).toEqual({ unread: 0, refused: 0, planned: 2 });
  });

  it("at random is no outline, or gives finite numbers or a refusal", () => {
    const { unread, planned } = fates(wandering, 300);
    expect(unread).toBeGreaterThan(20);
    expect(planned).toBeGreaterThan(40);
  });

  it("round a horn of any size and lean gives finite numbers or a refusal that names a field", () => {
    const { refused, planned } = fates(horns, 300);
    expect(planned).toBeGreaterThan(20);
    expect(refused).toBeGreaterThan(20);
  });

  it("in hundreds of teeth is read or refused, and ends", () => {
    const { unread, refused, planned } = fates(teeth, 60);
    expect(unread + refused + planned).toBe(60);
    expect(planned + refused).toBeGreaterThan(5);
  });

  it("wound up on itself is no outline", () => {
    expect(fates(spirals, 60).unread).toBeGreaterThan(30);
  });
});
