import { describe, expect, it } from "vitest";
import {
  acrossShapes,
  type Chart,
  fitted,
  pxOn,
  pyOn,
  roomy,
  spacedApart,
  upShapes,
  valueAtPx,
} from "../../../src/drawing/charts/chart.ts";
import { textWidth } from "../../../src/drawing/lettering.ts";
import { pathsOf, readPoints, textsOf } from "../../support/read-scene.ts";

const inch = { name: "Shim", unit: "in", size: 25.4, say: (mm: number) => `${mm / 25.4} in` };
const mm = { name: "Saddle", unit: "mm", size: 1, say: (value: number) => `${value} mm` };

const chart: Chart = {
  left: 50,
  right: 450,
  top: 40,
  bottom: 240,
  across: { measure: inch, range: [5, 15] },
  up: { measure: mm, range: [2, 6] },
};

const scene = {
  width: 500,
  height: 300,
  title: "",
  shapes: [...acrossShapes(chart), ...upShapes(chart)],
};

describe("a chart's scales", () => {
  it("lay a value at its share of the way, and find it again", () => {
    expect(pxOn(chart, 10)).toBe(250);
    expect(pyOn(chart, 3)).toBe(190);
    for (const x of [5, 7.3, 15]) expect(valueAtPx(chart, pxOn(chart, x))).toBeCloseTo(x, 12);
    expect(valueAtPx(chart, 0)).toBe(5);
    expect(valueAtPx(chart, 1000)).toBe(15);
  });

  it("tick at round figures of the unit shown, where those lie", () => {
    const ticks = textsOf(scene).filter(({ role }) => role === "tick");
    const along = ticks.filter(({ anchor }) => anchor === "middle");
    expect(along.map(({ text }) => text)).toEqual(["0.2", "0.3", "0.4", "0.5"]);
    for (const { text, x } of along) expect(x).toBeCloseTo(pxOn(chart, Number(text) * 25.4), 9);
    const up = ticks.filter(({ anchor }) => anchor === "end");
    for (const { text, y } of up) expect(y - 4).toBeCloseTo(pyOn(chart, Number(text)), 9);
    expect(up.length).toBeGreaterThan(3);
  });

  it("say what runs along them", () => {
    const names = textsOf(scene).filter(({ role }) => role === "axis-name");
    expect(names.map(({ text }) => text)).toEqual(["Shim, in", "Saddle, mm"]);
  });

  it("draw each tick at its figure", () => {
    const [, ...ticks] = pathsOf(scene, "tick");
    expect(ticks.length).toBe(textsOf(scene).filter(({ role }) => role === "tick").length - 1);
    for (const { d } of ticks) expect(readPoints(d)).toHaveLength(2);
  });
});

it("room is left round values, and a level line still has height", () => {
  expect(roomy([2, 4], 0.1)).toEqual([1.84, 4.16]);
  const [low, high] = roomy([3.4, 3.4], 0.5);
  expect(high - low).toBeCloseTo(0.5, 12);
  expect(roomy([], 1)).toEqual([0, 1]);
});

describe("names beside a chart", () => {
  it("are kept apart and in order, within the height there is", () => {
    const names = [100, 101, 99, 240, 239].map((y) => ({ y }));
    const placed = spacedApart(names, 16, [40, 240]);
    const ats = placed.map(({ at }) => at);
    for (let i = 1; i < ats.length; i++)
      expect((ats[i] ?? 0) - (ats[i - 1] ?? 0)).toBeGreaterThanOrEqual(16 - 1e-9);
    expect(Math.max(...ats)).toBeLessThanOrEqual(240);
    expect(placed.map(({ y }) => y)).toEqual([99, 100, 101, 239, 240]);
  });

  it("are cut with an ellipsis where they would not fit", () => {
    const long = "A variant with a very long name";
    expect(fitted("Base", 100)).toBe("Base");
    const cut = fitted(long, 100);
    expect(cut.endsWith("…")).toBe(true);
    expect(textWidth(cut, 13)).toBeLessThanOrEqual(100);
  });
});
