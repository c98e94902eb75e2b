import { describe, expect, it } from "vitest";
import { boxesMeet } from "../../../src/drawing/box.ts";
import { barChart } from "../../../src/drawing/charts/bars.ts";
import type { Measure } from "../../../src/drawing/charts/chart.ts";
import { pxOn, pyOn } from "../../../src/drawing/charts/chart.ts";
import { histogramChart } from "../../../src/drawing/charts/histogram.ts";
import { mapChart } from "../../../src/drawing/charts/map-chart.ts";
import { compareLine, variantsOverlay } from "../../../src/drawing/charts/overlay.ts";
import { sweepChart } from "../../../src/drawing/charts/sweep-chart.ts";
import { textBox } from "../../../src/drawing/lettering.ts";
import type { Scene } from "../../../src/drawing/scene.ts";
import { svgOf } from "../../../src/drawing/svg.ts";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { mapIn } from "../../../src/profile/comparison/map.ts";
import { sweepOf } from "../../../src/profile/comparison/sweep.ts";
import { givensOf } from "../../../src/profile/givens.ts";
import { profileOf } from "../../../src/profile/profile.ts";
import {
  circleIn,
  pathsOf,
  pointsOf,
  readPoints,
  textOf,
  textsOf,
} from "../../support/read-scene.ts";
import { resultOf } from "../../support/steps.ts";

const mm = (name: string): Measure => ({
  name,
  unit: "mm",
  size: 1,
  say: (value) => `${value.toFixed(2)} mm`,
});

/** No two texts with these roles lie on each other. */
function expectApart(scene: Scene, roles: readonly string[]): void {
  const boxes = textsOf(scene)
    .filter(({ role }) => roles.includes(role))
    .map((text) => ({ text: text.text, box: textBox(text) }));
  boxes.forEach((a, i) => {
    for (const b of boxes.slice(i + 1))
      expect(boxesMeet(a.box, b.box), `“${a.text}” on “${b.text}”`).toBe(false);
  });
}

describe("the sweep's chart", () => {
  const range = [4, 13] as const;
  const asked = { path: "target.value", outcome: "bridgeClearance", hold: "shim", range } as const;
  const curves = presets.map((preset, i) => {
    const sweep = sweepOf(preset, asked);
    if (sweep === null) throw new Error("no plan");
    return { name: preset.name, line: compareLine(i), sweep };
  });
  const drawing = sweepChart({
    width: 640,
    height: 400,
    across: mm("Shim"),
    up: mm("Fret plane over the bridge"),
    range,
    curves,
    present: { x: 8.4, says: "now 8.40 mm" },
  });
  const { scene, chart } = drawing;

  it("draws each curve through its own points, in a line of its own", () => {
    const drawn = pathsOf(scene, "curve");
    expect(drawn).toHaveLength(curves.length);
    expect(new Set(drawn.map(({ line }) => line)).size).toBe(curves.length);
    const first = curves[0]?.sweep.points[0];
    expect(readPoints(drawn[0]?.d ?? "")[0]).toEqual([
      chart.left,
      Math.round(pyOn(chart, first?.value ?? 0) * 100) / 100,
    ]);
  });

  it("rings each crossing where it is", () => {
    const rings = pathsOf(scene, "crossing");
    const crossings = curves.flatMap(({ sweep }) => sweep.crossings);
    expect(rings).toHaveLength(crossings.length);
    for (const [i, { at, edge }] of crossings.entries()) {
      const window = curves.find(({ sweep }) => sweep.crossings.some((one) => one.at === at))?.sweep
        .window;
      const { centre, radius } = circleIn(rings[i]?.d ?? "");
      expect(radius).toBe(4);
      expect(Math.abs(centre[0] - pxOn(chart, at))).toBeLessThan(0.01);
      expect(Math.abs(centre[1] - pyOn(chart, window?.[edge === "low" ? 0 : 1] ?? 0))).toBeLessThan(
        0.01,
      );
    }
    expect(crossings.length).toBeGreaterThan(0);
  });

  it("shades the window, marks the present value, and finds it where it is dragged", () => {
    expect(pathsOf(scene, "window")).toHaveLength(1);
    expect(pointsOf(scene, "present")[0]?.[0]).toBeCloseTo(pxOn(chart, 8.4), 1);
    expect(drawing.toInput(pxOn(chart, 8.4))).toBeCloseTo(8.4, 12);
  });

  it("names every curve, the names apart", () => {
    expect(textsOf(scene).filter(({ role }) => role === "curve-name")).toHaveLength(curves.length);
    expectApart(scene, ["curve-name", "axis-name", "present"]);
    expectApart(scene, ["tick", "axis-name"]);
  });
});

describe("sections on one another", () => {
  const variants = presets.flatMap((preset, i) => {
    const [set, plan] = [givensOf(preset), profileOf(preset)];
    return set.ok && plan.ok
      ? [{ name: preset.name, line: compareLine(i), givens: set.givens, profile: plan.profile }]
      : [];
  });

  it.each([
    [1100, 360],
    [780, 300],
    [360, 220],
  ])("fit %i by %i, each named at its own tail", (width, height) => {
    const scene = variantsOverlay({ width, height, variants });
    const tops = pathsOf(scene, "top");
    expect(tops).toHaveLength(variants.length);
    for (const path of pathsOf(scene))
      for (const [x, y] of readPoints(path.d)) {
        expect(x).toBeGreaterThanOrEqual(0);
        expect(x).toBeLessThanOrEqual(width);
        expect(y).toBeGreaterThanOrEqual(0);
        expect(y).toBeLessThanOrEqual(height);
      }
    expectApart(scene, ["variant-name", "stretch"]);
    expect(textsOf(scene).filter(({ role }) => role === "variant-name")).toHaveLength(
      variants.length,
    );
  });

  it("lie lower at the tail by just their tail drop", () => {
    const scene = variantsOverlay({ width: 1100, height: 360, variants });
    const stretch = Number(/(\d+)×/.exec(textOf(scene, "Heights drawn").text)?.[1]);
    const [a, b] = pathsOf(scene, "top").map(({ d }) => readPoints(d)[0]?.[1] ?? 0);
    const along =
      (1100 - 122 - 14) / Math.max(...variants.map(({ givens }) => givens.outline.length));
    const drops = variants.map(({ profile }) => profile.tailDrop);
    const apart = ((drops[0] ?? 0) - (drops[1] ?? 0)) * along * stretch;
    expect((a ?? 0) - (b ?? 0)).toBeCloseTo(apart, 1);
  });
});

describe("the map", () => {
  const acrossRange = [5, 13] as const;
  const upRange = [5000, 13_000] as const;
  const map = resultOf(
    mapIn(defaultInstrument, {
      across: { path: "target.value", range: acrossRange },
      up: { path: "dome.dishRadius", range: upRange },
      outcome: "saddleExposure",
      hold: "shim",
    }),
  );
  if (map === null) throw new Error("no map");
  const scene = mapChart({
    width: 560,
    height: 360,
    across: mm("Shim"),
    up: mm("Dish radius"),
    outcome: mm("Saddle exposed"),
    acrossRange,
    upRange,
    map,
  });

  it("draws every contour, the window's ends thick, and one region", () => {
    expect(pathsOf(scene, "contour").length + pathsOf(scene, "window-edge").length).toBe(
      map.contours.length,
    );
    for (const edge of pathsOf(scene, "window-edge")) expect(edge.line).toBe("thick");
    expect(pathsOf(scene, "passing")).toHaveLength(1);
  });

  it("keeps the contours' labels apart, and off the figures", () => {
    expectApart(scene, ["contour-label", "tick"]);
    expect(textsOf(scene).filter(({ role }) => role === "contour-label").length).toBeGreaterThan(2);
  });
});

it("the histogram offsets over its own values, its interval ruled above", () => {
  const counts = [1, 4, 9, 4, 1];
  const scene = histogramChart({
    width: 400,
    height: 200,
    measure: mm("Saddle exposed"),
    histogram: { from: 2, width: 0.5, counts },
    window: [2.5, 9],
    interval: [2.2, 4.2],
    normal: { value: 3.25, u: 0.5 },
  });
  const [bars = ""] = pathsOf(scene, "draws").map(({ d }) => d);
  const tops = readPoints(bars).map(([, y]) => y);
  expect(Math.min(...tops)).toBe(tops[5]);
  const [from, to] = pointsOf(scene, "interval");
  const px = (value: number): number => 14 + ((400 - 28) * (value - 2)) / 2.5;
  expect(from?.[0]).toBeCloseTo(px(2.2), 1);
  expect(to?.[0]).toBeCloseTo(px(4.2), 1);
  expect(textOf(scene, "95 %").text).toBe("95 %: 2.20 mm to 4.20 mm");
});

it("bars run from their low end to their high one on one scale", () => {
  const scene = barChart({
    width: 400,
    title: "",
    measure: mm("Shim"),
    bars: [
      { name: "One", from: 6, to: 9, fill: "flat", low: "pitch" },
      { name: "Two", from: 8, to: 12, fill: "flat" },
    ],
    band: [8, 9],
    rule: { at: 8.5, says: "8.50 mm" },
  });
  const [one = [], two = [], band = []] = [
    ...pathsOf(scene, "bar"),
    ...pathsOf(scene, "shared"),
  ].map(({ d }) => readPoints(d).map(([x]) => x));
  expect(two[0]).toBeCloseTo(band[0] ?? 0, 1);
  expect(one[1]).toBeCloseTo(band[1] ?? 0, 1);
  expect(pointsOf(scene, "rule")[0]?.[0]).toBeCloseTo(((band[0] ?? 0) + (band[1] ?? 0)) / 2, 1);
  expectApart(scene, ["bar-name", "bar-ends", "rule", "tick", "axis-name"]);
});

describe("a saved drawing", () => {
  it("carries the looks of the lines that only variants use, and no others where none is drawn", () => {
    const lines = (count: number): Scene => ({
      width: 10,
      height: 10,
      title: "",
      shapes: Array.from({ length: count }, (_, i) => ({
        kind: "path",
        role: "curve",
        line: compareLine(i),
        d: "M0,0L1,1",
      })),
    });
    expect(svgOf(lines(9))).toContain(".line-dash-dotted");
    expect(svgOf(lines(3))).not.toContain(".line-dash-dotted");
    expect(new Set(Array.from({ length: 9 }, (_, i) => compareLine(i))).size).toBe(9);
  });
});
