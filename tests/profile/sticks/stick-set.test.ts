import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Range } from "../../../src/instrument/instrument.ts";
import { fewestSticks, mostServed, type SetStick } from "../../../src/profile/sticks/stick-set.ts";

/*
 * Small shops, tried out whole. Ends on a coarse grid, so that ranges touch, repeat and hold one another.
 */
const range = fc
  .tuple(fc.integer({ min: 0, max: 12 }), fc.integer({ min: 0, max: 6 }))
  .map(([low, width]): Range => [low, low + width]);
const shops = fc.array(range, { minLength: 1, maxLength: 7 });

/** Every way to choose up to `count` of these. */
function choices<Item>(items: readonly Item[], count: number): readonly (readonly Item[])[] {
  if (count === 0 || items.length === 0) return [[]];
  const [first, ...rest] = items as [Item, ...Item[]];
  return [...choices(rest, count - 1).map((some) => [first, ...some]), ...choices(rest, count)];
}

const holds = ([low, high]: Range, at: number): boolean => low <= at && at <= high;

/** The most that `count` sticks serve, of all sticks at quarters of the grid. */
function mostByTrying(ranges: readonly Range[], count: number): number {
  const places = Array.from({ length: 19 }, (_, i) => i);
  return Math.max(
    ...choices(places, count).map(
      (sticks) => ranges.filter((one) => sticks.some((at) => holds(one, at))).length,
    ),
  );
}

/** Every way to put these in groups. */
function groupings(indexes: readonly number[]): readonly (readonly number[])[][] {
  const [first, ...rest] = indexes;
  if (first === undefined) return [[]];
  return groupings(rest).flatMap((groups) => [
    [[first], ...groups],
    ...groups.map((_, at) => groups.map((group, i) => (i === at ? [first, ...group] : group))),
  ]);
}

function roomOf(ranges: readonly Range[], group: readonly number[]): number {
  const own = group.map((i) => ranges[i] ?? [0, 0]);
  return (Math.min(...own.map(([, high]) => high)) - Math.max(...own.map(([low]) => low))) / 2;
}

/** Of all groupings that sticks can serve, the fewest groups, and then the most of the least room. */
function fewestByTrying(ranges: readonly Range[]): readonly [count: number, room: number] {
  const served = groupings(ranges.map((_, i) => i))
    .map(
      (groups) => [groups.length, Math.min(...groups.map((one) => roomOf(ranges, one)))] as const,
    )
    .filter(([, room]) => room >= 0);
  const count = Math.min(...served.map(([groups]) => groups));
  return [count, Math.max(...served.filter(([n]) => n === count).map(([, room]) => room))];
}

/** What a set says of itself, held against the ranges. */
function expectTrue(set: readonly SetStick[], ranges: readonly Range[]): void {
  const members = set.flatMap((stick) => stick.members);
  expect(new Set(members).size).toBe(members.length);
  for (const { thickness, room, members, limits } of set) {
    const own = members.map((i): Range => ranges[i] ?? [0, 0]);
    for (const one of own) {
      expect(holds(one, thickness)).toBe(true);
      expect(thickness - one[0]).toBeGreaterThanOrEqual(room - 1e-9);
      expect(one[1] - thickness).toBeGreaterThanOrEqual(room - 1e-9);
    }
    expect(members).toContain(limits[0]);
    expect(members).toContain(limits[1]);
    expect(ranges[limits[0]]?.[0]).toBeCloseTo(thickness - room, 9);
    expect(ranges[limits[1]]?.[1]).toBeCloseTo(thickness + room, 9);
  }
  const thicknesses = set.map(({ thickness }) => thickness);
  expect(thicknesses).toEqual([...thicknesses].sort((a, b) => a - b));
}

describe("fewestSticks", () => {
  it("has as few sticks as any grouping of a small shop that was tried, with as much least room", () => {
    fc.assert(
      fc.property(shops, (ranges) => {
        const set = fewestSticks(ranges);
        const [count, room] = fewestByTrying(ranges);
        expect(set.length).toBe(count);
        expect(Math.min(...set.map((stick) => stick.room))).toBeCloseTo(room, 5);
        expect(set.flatMap(({ members }) => members).toSorted((a, b) => a - b)).toEqual(
          ranges.map((_, i) => i),
        );
        expectTrue(set, ranges);
      }),
      { numRuns: 300 },
    );
  });

  it("has none for none", () => {
    expect(fewestSticks([])).toEqual([]);
  });
});

describe("mostServed", () => {
  it("serves as many of a small shop as any sticks that were tried", () => {
    fc.assert(
      fc.property(shops, fc.integer({ min: 1, max: 3 }), (ranges, count) => {
        const set = mostServed(ranges, count);
        expect(set.length).toBeLessThanOrEqual(count);
        expect(set.flatMap(({ members }) => members).length).toBe(mostByTrying(ranges, count));
        expectTrue(set, ranges);
      }),
      { numRuns: 300 },
    );
  });

  it("takes no more sticks than serve as many", () => {
    expect(
      mostServed(
        [
          [1, 3],
          [2, 4],
        ],
        3,
      ),
    ).toEqual([{ thickness: 2.5, room: 0.5, members: [0, 1], limits: [1, 0] }]);
    expect(mostServed([], 2)).toEqual([]);
  });

  it("serves five thousand no worse than the fewest sticks of as many", () => {
    const ranges = Array.from({ length: 5000 }, (_, i): Range => {
      const low = 4 + ((i * 7919) % 5000) / 700;
      return [low, low + 0.4 + ((i * 104729) % 5000) / 9000];
    });
    const fewest = fewestSticks(ranges);
    const all = mostServed(ranges, fewest.length);
    expect(all.flatMap(({ members }) => members).length).toBe(ranges.length);
    const fewer = mostServed(ranges, fewest.length - 1);
    expect(fewer.flatMap(({ members }) => members).length).toBeLessThan(ranges.length);
  });
});
