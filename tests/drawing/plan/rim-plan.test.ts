import { describe, expect, test } from "vitest";
import type { Point } from "../../../src/drawing/frame.ts";
import { rimPlan } from "../../../src/drawing/plan/rim-plan.ts";
import { type PlanMeasureFormat, planHeight } from "../../../src/drawing/plan/rim-plan-layout.ts";
import type { Scene } from "../../../src/drawing/scene.ts";
import { offPolyline } from "../../../src/geometry/polyline.ts";
import type { Instrument } from "../../../src/instrument/instrument.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { outlinePoints } from "../../support/precise-outline.ts";
import { letteringFaults, pathsOf, readPoints, textsOf } from "../../support/read-scene.ts";
import { planned } from "../../support/solved.ts";
import { pointedCutaway, roundedCutaway, unevenBody } from "../../support/uneven-bodies.ts";

const inMm: PlanMeasureFormat = {
  length: (mm) => `${mm.toFixed(Math.abs(mm) < 10 ? 2 : 1)} mm`,
  figure: (mm) => mm.toFixed(Math.abs(mm) < 10 ? 2 : 0),
  angle: (degrees) => `${degrees.toFixed(2)}°`,
  unit: "mm",
};
const inInches: PlanMeasureFormat = {
  ...inMm,
  length: (mm) => `${(mm / 25.4).toFixed(3)} in`,
  figure: (mm) => (mm / 25.4).toFixed(3),
  unit: "inch",
};

function drawn(instrument: Instrument, width: number, words = inMm): Scene {
  const { givens, profile } = planned(instrument);
  return rimPlan(givens, profile, { width, height: planHeight(givens, profile, width), words });
}

const widths = [320, 358, 390, 600, 788, 820, 1180, 1440];

describe.each(presets.map((instrument) => [instrument.name, instrument] as const))(
  "the plan of %s",
  (_, instrument) => {
    test("keeps every text on the sheet and off every other, at any width", () => {
      for (const width of widths) {
        for (const words of [inMm, inInches]) {
          const scene = drawn(instrument, width, words);
          expect(textsOf(scene).length).toBeGreaterThan(15);
          expect(letteringFaults(scene)).toEqual([]);
        }
      }
    });

    test("says most and least, and where the two zones are, at any width", () => {
      for (const width of widths) {
        const { profile } = planned(instrument);
        const texts = textsOf(drawn(instrument, width)).map(({ text }) => text);
        expect(texts.some((text) => text.startsWith("least "))).toBe(true);
        expect(texts.some((text) => text.endsWith(profile.maxRemoval.toFixed(2)))).toBe(true);
        expect(texts).toContain("dome");
        expect(texts).toContain("flat");
      }
    });
  },
);

describe.each([roundedCutaway, pointedCutaway, unevenBody].map((one) => [one.name, one] as const))(
  "the plan of halves that differ: %s",
  (_, instrument) => {
    const leftHanded: Instrument = {
      ...instrument,
      body: { ...instrument.body, leftHanded: true },
    };

    test("keeps every text on the sheet and off every other, at any width, either way round", () => {
      for (const width of widths)
        for (const one of [instrument, leftHanded]) {
          const scene = drawn(one, width);
          expect(textsOf(scene).length).toBeGreaterThan(12);
          expect(letteringFaults(scene)).toEqual([]);
        }
    });

    test("draws each half on its side of the centreline, and the other way round for the left hand", () => {
      const { givens } = planned(instrument);
      const level = (scene: Scene): number =>
        readPoints(pathsOf(scene, "centreline")[0]?.d ?? "")[0]?.[1] ?? Number.NaN;
      const reach = (scene: Scene): number[] =>
        pathsOf(scene, "outline").map(({ d }) =>
          Math.max(...readPoints(d).map(([, y]) => Math.abs(y - level(scene)))),
        );
      const [over = 0, under = 0] = reach(drawn(instrument, 1180));
      const [bass = 0, treble = 0] = givens.halves.map(({ outline }) => outline.widest);
      expect(over / under).toBeCloseTo(bass / treble, 3);
      const [leftOver = 0, leftUnder = 0] = reach(drawn(leftHanded, 1180));
      expect(leftOver).toBeCloseTo(under, 1);
      expect(leftUnder).toBeCloseTo(over, 1);
    });
  },
);

describe("the plan", () => {
  const [instrument] = presets.slice(2) as [Instrument];
  const { profile } = planned(instrument);
  const scene = drawn(instrument, 1180);
  const edges = pathsOf(scene, "outline").map(({ d }) => readPoints(d));

  // The same Bezier pieces worked in 50 digits.
  test("draws the outline to scale", () => {
    const [upper, lower] = edges as [readonly Point[], readonly Point[]];
    const exact = outlinePoints(instrument.body, 400);
    const tail = upper[0] as Point;
    const neck = upper.at(-1) as Point;
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
    const [upper] = edges as [readonly Point[]];
    const scale = ((upper.at(-1)?.[0] ?? 0) - (upper[0]?.[0] ?? 0)) / instrument.body.length;
    const band = Math.max(
      ...pathsOf(scene, "comes off the flat")
        .flatMap(({ d }) => readPoints(d))
        .map(([x]) => x),
    );
    const end = upper.at(-1)?.[0] ?? 0;
    expect(band - end).toBeCloseTo(profile.maxRemoval * times * scale, 1);
  });

  test("leans the saddle as its slant and the fan do, the other way round for the left hand", () => {
    const base = presets[2];
    if (base === undefined) throw new Error("no preset");
    const leaning = (leftHanded: boolean): number => {
      const scene = drawn(
        {
          ...base,
          body: { ...base.body, ...(leftHanded ? { leftHanded } : {}) },
          neck: { ...base.neck, fan: 20, fanFret: 0 },
          bridge: { ...base.bridge, slant: 5 },
        },
        1180,
      );
      const d = pathsOf(scene).find(({ role }) => role === "saddle line")?.d ?? "";
      const [over, under] = readPoints(d);
      if (over === undefined || under === undefined) throw new Error("no saddle line");
      return (over[0] - under[0]) / (under[1] - over[1]);
    };
    // Over the spread the bass end stands the fan at the nut and the slant nearer the tail.
    const { spreadSaddle } = base.strings;
    expect(leaning(false)).toBeCloseTo(-25 / spreadSaddle, 3);
    expect(leaning(true)).toBeCloseTo(25 / spreadSaddle, 3);
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
    const { profile } = planned(flat);
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
