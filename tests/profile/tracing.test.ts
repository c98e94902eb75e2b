import { describe, expect, test } from "vitest";
import { halvesIn } from "../../src/geometry/outline/tracing.ts";
import { fitted } from "../../src/geometry/outline/tracing-fit.ts";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { presets } from "../../src/instrument/presets.ts";
import { readInstrument } from "../../src/instrument/read-instrument.ts";
import { givensOf } from "../../src/profile/givens.ts";
import { profileOf } from "../../src/profile/profile.ts";
import { sideOf } from "../../src/profile/side.ts";
import { pear } from "../support/pear.ts";
import { outlinePoints } from "../support/precise-outline.ts";
import { solved } from "../support/solved.ts";

function tracedFrom(instrument: Instrument, error: number): Instrument {
  const { body } = instrument;
  const drawn = halvesIn(outlinePoints(body, 80), body.length, 0.25);
  if (!drawn.ok || drawn.halves.bass === null) throw new Error("no half");
  const { places } = fitted(drawn.halves.bass, error, 400);
  const read = readInstrument({ ...instrument, body: { ...body, tracing: places } });
  if (!read.ok) throw new Error(read.problems[0]?.message);
  return read.instrument;
}

describe.each(presets.map((instrument) => [instrument.name, instrument] as const))(
  "%s traced to 0.05 mm",
  (_, instrument) => {
    const traced = tracedFrom(instrument, 0.05);
    const [own, from] = [solved(traced), solved(instrument)];

    // The same body by its four curves: a tracing 0.05 mm true cannot move a height by more than that
    // times the dome's slope at the rim, about 1 in 40.
    test("comes to the same profile", () => {
      for (const key of [
        "shim",
        "tailDrop",
        "pitch",
        "flatGap",
        "saddleExposure",
        "stringHeight",
        "breakAngle",
        "rimOffset",
        "maxRemoval",
        "overrunDepth",
      ] as const)
        expect(Math.abs(own[key] - from[key]), key).toBeLessThan(0.01);
      expect(Math.abs(own.breakHalfWidth - from.breakHalfWidth)).toBeLessThan(0.08);
      expect(Math.abs(own.dishNeeded - from.dishNeeded)).toBeLessThan(0.2);
      expect(Math.abs(own.stockWidth - from.stockWidth)).toBeLessThan(0.02);
      expect(own.checks.map(({ id }) => id)).toEqual(from.checks.map(({ id }) => id));
    });

    test("finds its own bouts and waist", () => {
      const place = (name: string) => own.stations.find((station) => station.name === name)?.x ?? 0;
      expect(Math.abs(place("lower bout") - instrument.body.lowerBoutAt)).toBeLessThan(6);
      expect(Math.abs(place("waist") - instrument.body.waistAt)).toBeLessThan(6);
      expect(Math.abs(place("upper bout") - instrument.body.upperBoutAt)).toBeLessThan(6);
    });

    test("unrolls to the same side", () => {
      const length = (which: Instrument) => {
        const set = givensOf(which);
        if (!set.ok) throw new Error("no givens");
        return sideOf(set.givens, solved(which)).length;
      };
      expect(Math.abs(length(traced) - length(instrument))).toBeLessThan(0.3);
    });
  },
);

test("an outline without a waist has a lower bout only", () => {
  const tracing = [...pear.slice(0, -1), [492, 34]] as const;
  const read = readInstrument({ body: { length: 492, tracing } });
  if (!read.ok) throw new Error(read.problems[0]?.message);
  const names = solved(read.instrument)
    .stations.map(({ name }) => name)
    .filter((name) => name !== "");
  expect(names).toEqual(["tail", "lower bout", "break", "neck end"]);
});

test("nothing that a file can hold makes it a number that is none", () => {
  let seed = 7;
  const random = (): number => {
    seed = (seed * 48_271) % 2_147_483_647;
    return seed / 2_147_483_647;
  };
  let profiles = 0;
  for (let round = 0; round < 60; round++) {
    const count = 3 + Math.floor(random() * 30);
    const xs = Array.from({ length: count - 2 }, () => 0.01 + random() * 491).sort((a, b) => a - b);
    const tracing = [[0, 0], ...xs.map((x) => [x, 20 + random() * 200]), [492, random() * 100]];
    const read = readInstrument({ body: { tracing } });
    if (!read.ok) continue;
    const result = profileOf(read.instrument);
    if (!result.ok) continue;
    profiles++;
    const numbers = JSON.stringify(result.profile, (_, value) =>
      typeof value === "number" && !Number.isFinite(value) ? "not a number" : value,
    );
    expect(numbers).not.toContain("not a number");
    for (const { arcLength, halfWidth } of result.profile.stations) {
      expect(Number.isFinite(arcLength) && Number.isFinite(halfWidth)).toBe(true);
    }
  }
  expect(profiles).toBeGreaterThan(20);
});
