import { describe, expect, test } from "vitest";
import { textBox } from "../../../src/drawing/lettering.ts";
import { rimPlan } from "../../../src/drawing/plan/rim-plan.ts";
import { type PlanWords, planHeight } from "../../../src/drawing/plan/rim-plan-layout.ts";
import type { PathShape, Scene, Shape, TextShape } from "../../../src/drawing/scene.ts";
import { offPolyline } from "../../../src/geometry/polyline.ts";
import type { Instrument } from "../../../src/instrument/instrument.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { profileOf } from "../../../src/profile/profile.ts";
import { settingOf } from "../../../src/profile/setting.ts";
import { outlinePoints } from "../../support/precise-outline.ts";

const inMm: PlanWords = {
  length: (mm) => `${mm.toFixed(Math.abs(mm) < 10 ? 2 : 1)} mm`,
  figure: (mm) => mm.toFixed(Math.abs(mm) < 10 ? 2 : 0),
  angle: (degrees) => `${degrees.toFixed(2)}°`,
  unit: "mm",
};
const inInches: PlanWords = {
  ...inMm,
  length: (mm) => `${(mm / 25.4).toFixed(3)} in`,
  figure: (mm) => (mm / 25.4).toFixed(3),
  unit: "inch",
};

function made(instrument: Instrument) {
  const set = settingOf(instrument);
  const result = profileOf(instrument);
  if (!set.ok || !result.ok) throw new Error("no profile");
  return { setting: set.setting, profile: result.profile };
}

function drawn(instrument: Instrument, width: number, words = inMm): Scene {
  const { setting, profile } = made(instrument);
  return rimPlan(setting, profile, { width, height: planHeight(setting, profile, width), words });
}

const flat = (shapes: readonly Shape[]): readonly (PathShape | TextShape)[] =>
  shapes.flatMap((shape) => (shape.kind === "group" ? flat(shape.shapes) : [shape]));
const textsOf = (scene: Scene): readonly TextShape[] =>
  flat(scene.shapes).filter((shape) => shape.kind === "text");
const pathsOf = (scene: Scene, role: string): readonly PathShape[] =>
  flat(scene.shapes).filter((shape) => shape.kind === "path" && shape.role === role) as PathShape[];
const pointsOf = ({ d }: PathShape): [number, number][] =>
  [...d.matchAll(/(-?[\d.]+),(-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);

const widths = [320, 358, 390, 600, 788, 820, 1180, 1440];

describe.each(presets.map((instrument) => [instrument.name, instrument] as const))(
  "the plan of %s",
  (_, instrument) => {
    test("keeps every text on the sheet and off every other, at any width", () => {
      for (const width of widths) {
        for (const words of [inMm, inInches]) {
          const scene = drawn(instrument, width, words);
          const boxes = textsOf(scene).map(textBox);
          expect(boxes.length).toBeGreaterThan(15);
          boxes.forEach((a, i) => {
            expect(a.left >= 0 && a.right <= scene.width && a.top >= 0).toBe(true);
            expect(a.bottom <= scene.height).toBe(true);
            for (const b of boxes.slice(i + 1)) {
              const apart =
                a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
              expect(apart).toBe(true);
            }
          });
        }
      }
    });

    test("says most and least, and where the two zones are, at any width", () => {
      for (const width of widths) {
        const { profile } = made(instrument);
        const texts = textsOf(drawn(instrument, width)).map(({ text }) => text);
        expect(texts.some((text) => text.startsWith("least "))).toBe(true);
        expect(texts.some((text) => text.endsWith(profile.maxRemoval.toFixed(2)))).toBe(true);
        expect(texts).toContain("dome");
        expect(texts).toContain("flat");
      }
    });
  },
);

describe("the plan", () => {
  const [instrument] = presets.slice(2) as [Instrument];
  const { profile } = made(instrument);
  const scene = drawn(instrument, 1180);
  const edges = pathsOf(scene, "outline").map(pointsOf);

  // The same Bezier pieces worked in 50 digits.
  test("draws the outline to scale", () => {
    const [upper, lower] = edges as [[number, number][], [number, number][]];
    const exact = outlinePoints(instrument.body, 400);
    const tail = upper[0] as [number, number];
    const neck = upper.at(-1) as [number, number];
    const scale = (neck[0] - tail[0]) / instrument.body.length;
    const edge = [...exact, [instrument.body.length, 0] as const].map(
      ([x, y]) => [tail[0] + x * scale, tail[1] - y * scale] as const,
    );
    for (const point of upper) expect(offPolyline(point, edge)).toBeLessThan(0.05);
    // The halves mirror each other about the centreline.
    upper.forEach(([x, y], i) => {
      expect(lower[i]?.[0]).toBeCloseTo(x, 1);
      expect((lower[i]?.[1] ?? 0) + y).toBeCloseTo(2 * tail[1], 1);
    });
  });

  test("draws what comes off as far out as it is deep, times what it says", () => {
    const legend = textsOf(scene).find(({ text }) => text.includes("drawn ×"))?.text ?? "";
    const times = Number(/×(\d+)/.exec(legend)?.[1]);
    const [upper] = edges as [[number, number][]];
    const scale = ((upper.at(-1)?.[0] ?? 0) - (upper[0]?.[0] ?? 0)) / instrument.body.length;
    const band = Math.max(
      ...pathsOf(scene, "comes off the flat")
        .flatMap(pointsOf)
        .map(([x]) => x),
    );
    const end = upper.at(-1)?.[0] ?? 0;
    expect(band - end).toBeCloseTo(profile.maxRemoval * times * scale, 1);
  });

  test("writes at a station what comes off there, all that comes off all round counted in", () => {
    expect(profile.rimOffset).toBeGreaterThan(1);
    const waist = profile.stations.find(({ name }) => name === "waist");
    const text = textsOf(scene).find(({ role }) => role === "station waist")?.text;
    expect(text).toBe(((waist?.removal ?? 0) + profile.rimOffset).toFixed(2));
    const said = textsOf(scene).map(({ text }) => text);
    expect(said.some((text) => text.includes("comes off all round"))).toBe(true);
  });

  test("a rim that is high enough everywhere says nothing of it", () => {
    const flat = { ...instrument, dome: { ...instrument.dome, dishRadius: null } };
    const { profile } = made(flat);
    expect(profile.rimOffset).toBeLessThan(1e-9);
    const said = textsOf(drawn(flat, 1180)).map(({ text }) => text);
    expect(said.some((text) => text.includes("all round"))).toBe(false);
  });

  test("writes out how far break and saddle line are from the tail, on the sheet's width and up", () => {
    for (const width of [424, 600, 820, 1180])
      for (const made of presets) {
        const groups = drawn(made, width).shapes.map(({ role }) => role);
        for (const role of ["break to tail", "saddle line to tail"])
          expect(groups, `${made.name} at ${width}`).toContain(`dimension ${role}`);
      }
  });

  test("marks no place where sanding ends on a rim that stays level to the break", () => {
    const flat = { ...instrument, dome: { ...instrument.dome, dishRadius: null } };
    const roles = drawn(flat, 1180).shapes.map(({ role }) => role);
    expect(roles).not.toContain("least");
    expect(roles).toContain("deepest");
    expect(drawn(instrument, 1180).shapes.map(({ role }) => role)).toContain("least");
  });
});
