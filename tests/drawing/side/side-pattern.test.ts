import { describe, expect, test } from "vitest";
import { braceOf } from "../../../src/drawing/side/brace.ts";
import { sidePatternOf } from "../../../src/drawing/side/side-pattern.ts";
import { sidePatternHeight } from "../../../src/drawing/side/side-pattern-layout.ts";
import type { Instrument } from "../../../src/instrument/instrument.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { braceRises } from "../../../src/profile/brace.ts";
import { sideOf } from "../../../src/profile/side.ts";
import {
  letteringFaults,
  pathsOf,
  pointsOf,
  readPoints,
  textsOf,
} from "../../support/read-scene.ts";
import { planned } from "../../support/solved.ts";

const words = {
  length: (mm: number) => `${mm.toFixed(Math.abs(mm) < 10 ? 2 : 1)} mm`,
  figure: (mm: number) => mm.toFixed(2),
  angle: (degrees: number) => `${degrees.toFixed(2)}°`,
  unit: "mm",
} as const;

function drawn(instrument: Instrument, width: number, stock: number | null) {
  const { givens, profile } = planned(instrument);
  const side = sideOf(givens, profile);
  const breakAlong = givens.outline.arcLength(givens.breakX);
  const height = sidePatternHeight(side, stock, width);
  return { side, scene: sidePatternOf(side, { width, height, words, stock, breakAlong }) };
}

describe.each(presets.map((instrument) => [instrument.name, instrument] as const))(
  "the side pattern of %s",
  (_, instrument) => {
    test.each([320, 358, 600, 788, 1100, 1380])("keeps its texts apart at %i px", (width) => {
      for (const stock of [null, 95, 130]) {
        const { scene } = drawn(instrument, width, stock);
        expect(textsOf(scene).length).toBeGreaterThan(7);
        expect(letteringFaults(scene)).toEqual([]);
      }
    });
  },
);

test("the side's edges are drawn where they are, from the level edge down", () => {
  const [instrument] = presets.slice(2) as [Instrument];
  const { side, scene } = drawn(instrument, 1100, null);
  const [[x0, level] = [0, 0], [x1] = [0, 0]] = pointsOf(scene, "level edge");
  const strip = Math.max(...pointsOf(scene, "strip needed").map(([, y]) => y));
  const [along, up] = [(x1 - x0) / side.length, (strip - level) / side.deepest.under];
  for (const [role, under] of [
    ["back edge", side.backAt],
    ["finished top edge", side.topAt],
  ] as const) {
    const points = pathsOf(scene, role).flatMap(({ d }) => readPoints(d));
    expect(points.length).toBeGreaterThan(20);
    for (const [px, py] of points)
      expect((py - level) / up).toBeCloseTo(under((px - x0) / along), 1);
  }
});

test.each([320, 700, 1100])("a brace's rises are written apart at %i px", (width) => {
  for (const radius of [28 * 304.8, 12 * 304.8, null]) {
    const rises = braceRises(400, radius, 20);
    const scene = braceOf({ length: 400, radius }, rises, { width, height: 150, words });
    expect(textsOf(scene).some(({ role }) => role === "rise")).toBe(true);
    expect(letteringFaults(scene)).toEqual([]);
  }
});
