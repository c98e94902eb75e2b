import { describe, expect, it } from "vitest";
import { windowMarks } from "../../../src/drawing/charts/window-marks.ts";

const shapesOf = (value: number, range: readonly [number, number] = [10, 20]) =>
  windowMarks("", [{ role: "saddle", value, range }]).shapes;

const rolesOf = (value: number, range?: readonly [number, number]): readonly string[] =>
  shapesOf(value, range).map(({ role }) => role);

/** Height of the tick, px down. */
function tickAt(value: number): number {
  const tick = shapesOf(value).find(({ role }) => role === "value saddle");
  if (tick?.kind !== "path") throw new Error("no tick");
  return Number(/,([\d.]+)/.exec(tick.d)?.[1]);
}

describe("windowMarks", () => {
  it("stands a value in its band by its share of the window, the higher the further up", () => {
    expect(tickAt(15)).toBeCloseTo((tickAt(10) + tickAt(20)) / 2, 2);
    expect(tickAt(20)).toBeLessThan(tickAt(10));
    expect(rolesOf(15)).toEqual(["window saddle", "value saddle"]);
  });

  it("spans a miss with a bar, and ends in a point where the value is off the picture", () => {
    expect(rolesOf(22)).toEqual(["window saddle", "miss saddle", "value saddle"]);
    expect(rolesOf(200)).toEqual(["window saddle", "miss saddle", "beyond saddle"]);
    expect(rolesOf(-200)).toEqual(["window saddle", "miss saddle", "beyond saddle"]);
  });

  it("draws a window of no width without a figure that is none", () => {
    for (const value of [9, 10, 11]) {
      const drawn = JSON.stringify(shapesOf(value, [10, 10]));
      expect(drawn).not.toMatch(/NaN|Infinity|null/);
    }
  });

  it("is as wide as there are marks", () => {
    const mark = { role: "a", value: 1, range: [0, 2] } as const;
    expect(windowMarks("", [mark, mark]).width).toBe(2 * windowMarks("", [mark]).width);
  });
});
