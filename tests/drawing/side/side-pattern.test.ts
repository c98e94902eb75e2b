import { describe, expect, test } from "vitest";
import { textBox } from "../../../src/drawing/lettering.ts";
import type { PathShape, Scene, Shape, TextShape } from "../../../src/drawing/scene.ts";
import { braceOf } from "../../../src/drawing/side/brace.ts";
import { sidePatternOf } from "../../../src/drawing/side/side-pattern.ts";
import { sidePatternHeight } from "../../../src/drawing/side/side-pattern-layout.ts";
import type { Instrument } from "../../../src/instrument/instrument.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { braceRises } from "../../../src/profile/brace.ts";
import { profileOf } from "../../../src/profile/profile.ts";
import { settingOf } from "../../../src/profile/setting.ts";
import { sideOf } from "../../../src/profile/side.ts";

const words = {
  length: (mm: number) => `${mm.toFixed(Math.abs(mm) < 10 ? 2 : 1)} mm`,
  figure: (mm: number) => mm.toFixed(2),
  angle: (degrees: number) => `${degrees.toFixed(2)}°`,
  unit: "mm",
} as const;

function drawn(instrument: Instrument, width: number, stock: number | null) {
  const set = settingOf(instrument);
  const result = profileOf(instrument);
  if (!set.ok || !result.ok) throw new Error("no profile");
  const side = sideOf(set.setting, result.profile);
  const breakAlong = set.setting.outline.arcLength(set.setting.breakX);
  const height = sidePatternHeight(side, stock, width);
  return { side, scene: sidePatternOf(side, { width, height, words, stock, breakAlong }) };
}

const flat = (shapes: readonly Shape[]): readonly (PathShape | TextShape)[] =>
  shapes.flatMap((shape) => (shape.kind === "group" ? flat(shape.shapes) : [shape]));
const textsOf = (scene: Scene): readonly TextShape[] =>
  flat(scene.shapes).filter((shape) => shape.kind === "text");
const pointsAt = (scene: Scene, role: string): [number, number][] =>
  flat(scene.shapes)
    .filter((shape) => shape.kind === "path" && shape.role === role)
    .flatMap((shape) =>
      [...(shape as PathShape).d.matchAll(/(-?[\d.]+),(-?[\d.]+)/g)].map(
        ([, x, y]): [number, number] => [Number(x), Number(y)],
      ),
    );

function expectApart(scene: Scene): void {
  const boxes = textsOf(scene).map(textBox);
  boxes.forEach((a, i) => {
    expect(a.left >= 0 && a.right <= scene.width && a.top >= 0 && a.bottom <= scene.height).toBe(
      true,
    );
    for (const b of boxes.slice(i + 1))
      expect(a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top).toBe(
        true,
      );
  });
}

describe.each(presets.map((instrument) => [instrument.name, instrument] as const))(
  "the side pattern of %s",
  (_, instrument) => {
    test.each([320, 358, 600, 788, 1100, 1380])("keeps its texts apart at %i px", (width) => {
      for (const stock of [null, 95, 130]) {
        const { scene } = drawn(instrument, width, stock);
        expect(textsOf(scene).length).toBeGreaterThan(7);
        expectApart(scene);
      }
    });
  },
);

test("the side's edges are drawn where they are, from the level edge down", () => {
  const [instrument] = presets.slice(2) as [Instrument];
  const { side, scene } = drawn(instrument, 1100, null);
  const [[x0, level], [x1]] = pointsAt(scene, "level edge") as [[number, number], [number, number]];
  const strip = Math.max(...pointsAt(scene, "strip needed").map(([, y]) => y));
  const [along, up] = [(x1 - x0) / side.length, (strip - level) / side.deepest.under];
  for (const [role, under] of [
    ["back edge", side.backAt],
    ["finished top edge", side.topAt],
  ] as const) {
    const points = pointsAt(scene, role);
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
    expectApart(scene);
  }
});
