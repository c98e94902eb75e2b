import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { writeField } from "../../src/instrument/field-value.ts";
import { withVersion } from "../../src/instrument/file-version.ts";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { givensOf } from "../../src/profile/givens.ts";
import { halfOn } from "../../src/profile/halves.ts";
import type { Profile } from "../../src/profile/outcome.ts";
import { profileOf } from "../../src/profile/profile.ts";
import { sideOf } from "../../src/profile/side.ts";
import { aimedAt } from "../support/random-instrument.ts";
import { instrumentFrom, onSeat, planned, solved, solvedSeat } from "../support/solved.ts";
import { pointedCutaway, roundedCutaway, swapped, unevenBody } from "../support/uneven-bodies.ts";

const uneven = [roundedCutaway, pointedCutaway, unevenBody].map((one) => [one.name, one] as const);

/** Changes that leave every one of them an instrument. */
const anyDome = fc.record({
  dishRadius: fc.constantFrom(4572, 7620, 8534.4, null),
  braceRadius: fc.constantFrom(4572, 7620, 8534.4, null),
  flatLength: fc.integer({ min: 82, max: 130 }),
  tailExtra: fc.integer({ min: -1, max: 2 }),
});

const withDome = (instrument: Instrument, dome: Partial<Instrument["dome"]>): Instrument => ({
  ...instrument,
  dome: { ...instrument.dome, ...dome },
});

/** Half widths at the break, at x and the sphere's centre by two circles, as a textbook has them. */
function sphereOf(instrument: Instrument, shim: number) {
  const { givens } = planned(instrument);
  const radius = Number(instrument.dome.dishRadius);
  const [bass, treble] = (["bass", "treble"] as const).map((side) =>
    halfOn(givens.halves, side).outline.halfWidth(givens.breakX),
  );
  const [wide, narrow] = [bass ?? 0, treble ?? 0];
  const cy = (wide - narrow) / 2;
  const h = (wide + narrow) / 2;
  const contact = Math.min(instrument.shim.contact, instrument.shim.tailBlockDepth);
  const [dx, dz] = [contact - givens.breakX, -shim];
  const chord = Math.hypot(dx, dz);
  const [r1, r2] = [Math.sqrt(radius ** 2 - h ** 2), Math.sqrt(radius ** 2 - cy ** 2)];
  const along = (chord ** 2 + r1 ** 2 - r2 ** 2) / (2 * chord);
  const across = Math.sqrt(r1 ** 2 - along ** 2);
  const [ux, uz] = [dx / chord, dz / chord];
  const centres = [1, -1].map((way) => [
    givens.breakX + along * ux - way * across * uz,
    along * uz + way * across * ux,
  ]);
  const [cx, cz] = centres.reduce((low, one) => (Number(one[1]) < Number(low[1]) ? one : low));
  const z = (x: number, y: number): number =>
    Number(cz) + Math.sqrt(radius ** 2 - (x - Number(cx)) ** 2 - (y - cy) ** 2);
  return { z, cx: Number(cx), cy, h, wide, narrow };
}

/** The least of a convex function, by ever smaller thirds. */
function leastBy(f: (at: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let i = 0; i < 40; i++) {
    const [left, right] = [low + (high - low) / 3, high - (high - low) / 3];
    if (f(left) < f(right)) high = right;
    else low = left;
  }
  return f((low + high) / 2);
}

describe.each(uneven)("%s", (_, instrument) => {
  test("has its dome through both ends of the break and the shim's edge", () => {
    const { profile } = planned(instrument);
    const sphere = sphereOf(instrument, profile.shim);
    expect(sphere.z(profile.breakX, sphere.wide)).toBeCloseTo(0, 8);
    expect(sphere.z(profile.breakX, -sphere.narrow)).toBeCloseTo(0, 8);
    expect(-sphere.z(0, 0)).toBeCloseTo(profile.tailDrop, 8);
    expect(profile.breakMiddle).toBeCloseTo(sphere.cy, 12);
    expect(profile.breakHalfWidth).toBeCloseTo(sphere.h, 12);
  });

  test("tops braces over the span between the two edges, wherever its middle lies", () => {
    const braced = withDome(instrument, { dishRadius: 8534.4, braceRadius: 5000 });
    const { givens, profile } = planned(braced);
    const sphere = sphereOf(braced, profile.shim);
    const x = profile.saddleX;
    const [wB, wT] = (["bass", "treble"] as const).map((side) =>
      halfOn(givens.halves, side).outline.halfWidth(x),
    ) as [number, number];
    const rise = (r: number, c: number): number => r - Math.sqrt(r * r - c * c);
    const section = (r: number): number => Math.sqrt(r * r - (x - sphere.cx) ** 2);
    const [w, o] = [(wB + wT) / 2, (wB - wT) / 2];
    const lift =
      rise(section(5000), w) -
      rise(section(5000), o) -
      (rise(section(8534.4), w) - rise(section(8534.4), o));
    expect(-profile.flatGap).toBeCloseTo(sphere.z(x, 0) + lift, 8);
  });

  test("loses at each side what its own edge has over the dome", () => {
    const { profile, givens } = planned(instrument);
    const { z } = sphereOf(instrument, profile.shim);
    const turn = (profile.pitch * Math.PI) / 180;
    const lost = (x: number, height: number): number =>
      ((x - profile.breakX) * Math.tan(turn) - height) * Math.cos(turn);
    let most = 0;
    for (const [stations, sign] of [
      [profile.stations, 1],
      [profile.trebleStations, -1],
    ] as const) {
      expect(stations).not.toBeNull();
      for (const { x, halfWidth, removal } of stations ?? []) {
        const height = x < profile.breakX ? z(x, sign * halfWidth) : 0;
        expect(removal).toBeCloseTo(lost(x, height), 8);
        most = Math.max(most, removal);
      }
    }
    expect(profile.maxRemoval - profile.rimOffset).toBeGreaterThanOrEqual(most - 1e-9);
    expect(givens.halves).toHaveLength(2);
  });

  test("rests in a dish that holds both sides, and in none smaller", () => {
    const { profile, givens } = planned(instrument);
    const places = givens.halves.flatMap(({ outline, sign }) =>
      Array.from({ length: 1001 }, (_, i) => {
        const x = (profile.breakX * i) / 1000;
        return [x, sign * outline.halfWidth(x)] as const;
      }),
    );
    const farthest = (cx: number, cy: number): number =>
      Math.max(...places.map(([x, y]) => Math.hypot(x - cx, y - cy)));
    // What is asked of the centre is convex: by ever smaller thirds along, and within that across.
    const acrossAt = (cx: number): number => leastBy((cy) => farthest(cx, cy), -30, 30);
    const radius = leastBy(acrossAt, 100, profile.breakX);
    expect(profile.dishNeeded / 2).toBeGreaterThan(radius - 1e-5);
    expect(profile.dishNeeded / 2).toBeLessThan(radius + 1e-3);
  });

  test("gives what its target asks for, by every target", () => {
    const own = solved(instrument);
    for (const kind of ["pitch", "bridgeClearance", "saddleExposure", "stringHeight"] as const)
      for (const braceRadius of [instrument.dome.braceRadius, 5000, null]) {
        const braced = withDome(instrument, { braceRadius });
        const wanted = solved(aimedAt(braced, "shim", own.shim))[kind];
        expect(solved(aimedAt(braced, kind, wanted)).shim).toBeCloseTo(own.shim, 8);
      }
  });

  test("unrolls each side to its own length", () => {
    const { givens, profile } = planned(instrument);
    for (const half of givens.halves) {
      const side = sideOf(givens, profile, half);
      const ends = side.corners.filter((end) => end <= side.corner);
      let length = 0;
      let [x0, y0] = half.outline.placeAtArc(0);
      ends.slice(1).forEach((to, piece) => {
        const from = ends[piece] ?? 0;
        for (let i = 1; i <= 400; i++) {
          const [x, y] = half.outline.placeAtArc(from + ((to - from) * i) / 400);
          length += Math.hypot(x - x0, y - y0);
          [x0, y0] = [x, y];
        }
      });
      expect(length).toBeCloseTo(side.corner, 3);
      expect(x0).toBeCloseTo(instrument.body.length, 9);
      const own = half.side === "bass" ? profile.stations : profile.trebleStations;
      for (const { arcLength, removal, sideDepth } of own ?? []) {
        expect(side.topAt(arcLength)).toBeCloseTo(removal + profile.rimOffset, 7);
        expect(side.backAt(arcLength) - side.topAt(arcLength)).toBeCloseTo(sideDepth, 7);
      }
    }
  });

  test("names the same break clean from which its thinnest clean shim is", () => {
    const { cleanShim } = solved(instrument);
    expect(cleanShim).not.toBeNull();
    const at = (shim: number): number => solved(aimedAt(instrument, "shim", shim)).overrunDepth;
    expect(at((cleanShim ?? 0) + 1e-6)).toBe(0);
    expect(at((cleanShim ?? 0) - 0.3)).toBeGreaterThan(0);
  });
});

/** The numbers of a profile that do not tell the sides apart. */
function numbersOf(profile: Profile): Record<string, number> {
  const { breakMiddle: _, ...rest } = profile;
  const unsure = /^(maxRemoval|leastRemoval|dishUndercut)(X|Arc)$|^overrunLength$/;
  return Object.fromEntries(
    Object.entries(rest).filter(
      (entry): entry is [string, number] => typeof entry[1] === "number" && !unsure.test(entry[0]),
    ),
  );
}

function expectSame(one: Profile, two: Profile, digits = 8): void {
  const [first, second] = [numbersOf(one), numbersOf(two)];
  expect(Object.keys(first)).toEqual(Object.keys(second));
  // Near the tail, where the edge runs square to the centreline, a deepest place is less sharply found.
  for (const [name, value] of Object.entries(first))
    expect(second[name], name).toBeCloseTo(value, name === "stockWidth" ? 5 : digits);
}

const stationNumbers = (stations: Profile["stations"] | null) =>
  (stations ?? []).map(({ name, x, halfWidth, removal, sideDepth }) =>
    [name, x, halfWidth, removal, sideDepth].map((one) =>
      typeof one === "number" ? Number(one.toFixed(7)) + 0 : one,
    ),
  );

describe("bass and treble side changed over", () => {
  test("change the sides over and nothing else, by either way to a flat seat", () => {
    fc.assert(
      fc.property(anyDome, fc.boolean(), (dome, seated) => {
        const own = withDome(unevenBody, dome);
        const instrument = seated ? onSeat(own) : own;
        const [one, two] = [profileOf(instrument), profileOf(swapped(instrument))];
        expect(two.ok).toBe(one.ok);
        if (!one.ok || !two.ok) return;
        expectSame(one.profile, two.profile);
        expect(stationNumbers(two.profile.stations)).toEqual(
          stationNumbers(one.profile.trebleStations),
        );
        expect(stationNumbers(two.profile.trebleStations)).toEqual(
          stationNumbers(one.profile.stations),
        );
        const sides = [one, two].map(({ profile }) => profile.maxRemovalSide);
        if (sides.every((side) => side === null)) return;
        expect(new Set(sides)).toEqual(new Set(["bass", "treble"]));
        if (!seated)
          expect(two.profile.breakMiddle).toBeCloseTo(-Number(one.profile.breakMiddle), 12);
      }),
      { numRuns: 40 },
    );
  });
});

describe("a treble half that is the bass half", () => {
  const { tracing } = unevenBody.body;
  const { tracingTreble: _, ...single } = unevenBody.body;
  const mirrored = withVersion({ ...unevenBody, body: single });
  const both = withVersion({
    ...unevenBody,
    body: { ...single, tracing: tracing ?? [], tracingTreble: [...(tracing ?? [])] },
  });

  test("gives what one half does, to the last digit", () => {
    fc.assert(
      fc.property(anyDome, fc.boolean(), (dome, seated) => {
        const [one, two] = [mirrored, both].map((instrument) =>
          profileOf(seated ? onSeat(withDome(instrument, dome)) : withDome(instrument, dome)),
        );
        expect(two).toEqual(one);
      }),
      { numRuns: 30 },
    );
  });

  test("nearly does when it differs by a thousandth of a micron", () => {
    const near = (tracing ?? []).map(([x, y], i) => [x, i === 4 ? y + 1e-6 : y]);
    const almost = instrumentFrom({ ...both, body: { ...both.body, tracingTreble: near } });
    for (const seated of [false, true]) {
      const [one, two] = [mirrored, almost].map((instrument) =>
        profileOf(seated ? onSeat(instrument) : instrument),
      );
      if (!one?.ok || !two?.ok) throw new Error("no profile");
      expect(two.profile.trebleStations).not.toBeNull();
      expectSame(one.profile, two.profile, 5);
    }
  });
});

describe("a scoop that reaches past the break", () => {
  const reaching = withDome(roundedCutaway, { flatLength: 60 });
  const foldX = planned(roundedCutaway).givens.halves[1]?.outline.foldX ?? 0;

  test("is refused, with how far and what to move", () => {
    const result = profileOf(reaching);
    if (result.ok) throw new Error("not refused");
    const { field, why, nearest } = result.refusal;
    expect(field).toBe("dome.flatLength");
    const said = why.map((part) => (typeof part === "string" ? part : part.value.toFixed(2)));
    expect(said.join("")).toContain("on the treble side");
    expect(said).toContain((500 - 60 - foldX).toFixed(2));
    expect(nearest).toBeCloseTo(500 - foldX, 6);
    expect(profileOf(writeField(reaching, "dome.flatLength", nearest ?? 0)).ok).toBe(true);
  });

  test("is no hindrance where the top is domed all over", () => {
    expect(profileOf(onSeat(reaching)).ok).toBe(true);
  });

  test("is met exactly at the break", () => {
    expect(givensOf(withDome(roundedCutaway, { flatLength: 500 - foldX })).ok).toBe(true);
  });
});

describe("a top domed all over, on halves that differ", () => {
  test.each(uneven)("holds the seat's lowest of four corners at the least cut: %s", (_, one) => {
    for (const braceRadius of [one.dome.dishRadius, 5000, null]) {
      const seated = onSeat({
        ...withDome(one, { braceRadius }),
        seat: { ...one.seat, leastCut: 0.2 },
      });
      const profile = solvedSeat(seated);
      for (const kind of ["pitch", "spacer", "stringHeight"] as const) {
        const wanted = kind === "spacer" ? profile.seat.spacer : profile[kind];
        expect(solvedSeat(aimedAt(seated, kind, wanted)).seat.spacer).toBeCloseTo(
          profile.seat.spacer,
          7,
        );
      }
      expect(profile.trebleStations?.every(({ zone }) => zone === "dome")).toBe(true);
    }
  });
});
