import { describe, expect, test } from "vitest";
import type { Scene } from "../../../src/drawing/scene.ts";
import { stringsPlan } from "../../../src/drawing/strings/strings-plan.ts";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import type { Instrument } from "../../../src/instrument/instrument.ts";
import { fretPlaceX } from "../../../src/profile/strings.ts";
import { planned } from "../../support/solved.ts";

const base = defaultInstrument;
const fanned: Instrument = {
  ...base,
  neck: { ...base.neck, fan: 30 },
  bridge: { ...base.bridge, slant: 4 },
};

function drawn(instrument: Instrument, width = 900): Scene {
  const scene = stringsPlan(planned(instrument).givens, {
    width,
    words: { length: (mm) => `${mm.toFixed(1)} mm` },
  });
  if (scene === null) throw new Error("nothing drawn");
  return scene;
}

/** The ends of the lines of a role, px. */
const linesOf = ({ shapes }: Scene, role: string): number[][][] =>
  shapes.flatMap((shape) =>
    shape.kind === "path" && shape.role === role
      ? [[...shape.d.matchAll(/(-?[\d.]+),(-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)])]
      : [],
  );

const lean = ([[ax = 0] = [], [bx = 0] = []]: number[][] = []): number => ax - bx;

describe("the strings in plan", () => {
  test("have nut, saddle and every fret square where nothing is fanned or slanted", () => {
    const scene = drawn(base);
    for (const role of ["nut", "saddle", "fret"])
      for (const line of linesOf(scene, role)) expect(lean(line), role).toBeCloseTo(0, 1);
    expect(linesOf(scene, "fret")).toHaveLength(base.neck.lastFret);
    expect(linesOf(scene, "string")).toHaveLength(base.strings.count);
  });

  test("fanned, stand askew both ways about the fret that stands square", () => {
    const frets = linesOf(drawn(fanned), "fret").map(lean);
    const square = fanned.neck.fanFret - 1;
    expect(frets[square]).toBeCloseTo(0, 1);
    frets.forEach((by, i) => {
      if (i < square) expect(by).toBeGreaterThan(0);
      if (i > square) expect(by).toBeLessThan(0);
    });
  });

  test("are mirrored for a left-handed instrument", () => {
    const left = linesOf(
      drawn({ ...fanned, body: { ...fanned.body, leftHanded: true as const } }),
      "nut",
    )[0];
    const right = linesOf(drawn(fanned), "nut")[0];
    expect(left?.map(([x]) => x)).toEqual(right?.map(([x]) => x));
    expect(lean(left) > 0).toBe(lean(right) > 0);
    expect((left?.[0]?.[1] ?? 0) > (left?.[1]?.[1] ?? 0)).toBe(true);
    expect((right?.[0]?.[1] ?? 0) < (right?.[1]?.[1] ?? 0)).toBe(true);
  });

  test("say how long the outer strings are, and what is fanned and slanted", () => {
    expect(drawn(base).title).toMatch(
      /^6 strings from saddle to nut\. Nut to saddle 64\d\.\d mm\.$/,
    );
    expect(drawn(fanned).title).toMatch(
      /bass \d+\.\d mm, treble \d+\.\d mm\..*fanned by 30\.0 mm, fret 7 square.*slanted by 4\.0 mm/,
    );
  });

  test("fit any width", () => {
    for (const width of [200, 360, 900]) {
      const scene = drawn(fanned, width);
      for (const role of ["nut", "saddle", "string", "fret", "neck end"])
        for (const [x = 0, y = 0] of linesOf(scene, role).flat()) {
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x).toBeLessThanOrEqual(scene.width);
          expect(y).toBeGreaterThanOrEqual(0);
          expect(y).toBeLessThanOrEqual(scene.height);
        }
    }
  });
});

// Twelve equal steps to the octave on each string's own scale: the definition of fanned frets, common practice, no source.
test("every fret of a fan divides each string's own scale as equal temperament does", () => {
  for (const share of [0, 0.25, 0.5, 1]) {
    const scale = fanned.neck.scale + fanned.neck.fan * (0.5 - share);
    for (const fret of [1, 7, 12, 20])
      expect(fretPlaceX(fanned, 0, share) - fretPlaceX(fanned, fret, share)).toBeCloseTo(
        scale * (1 - 2 ** (-fret / 12)),
        9,
      );
  }
});
