import { describe, expect, it, vi } from "vitest";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import { writeField } from "../../../src/instrument/field-value.ts";
import type { Place } from "../../../src/profile/comparison/contour.ts";
import { type MapAsked, mapIn, passesAll, roundStep } from "../../../src/profile/comparison/map.ts";
import { profileOf } from "../../../src/profile/profile.ts";
import { withPartFixed } from "../../../src/profile/uncertainty/tolerances.ts";
import { resultOf } from "../../support/steps.ts";

vi.setConfig({ testTimeout: 60_000 });

const asked: MapAsked = {
  across: { path: "target.value", range: [5, 13] },
  up: { path: "dome.dishRadius", range: [4500, 13_000] },
  outcome: "saddleExposure",
  hold: "shim",
};

const built = withPartFixed(defaultInstrument) ?? defaultInstrument;
const map = resultOf(mapIn(defaultInstrument, asked));
const at = (x: number, y: number) =>
  writeField(writeField(built, "target.value", x), "dome.dishRadius", y);

function exposureAt(x: number, y: number): number {
  const result = profileOf(at(x, y));
  if (!result.ok) throw new Error("no plan");
  return result.profile.saddleExposure;
}

function inside(polygons: readonly (readonly Place[])[], x: number, y: number): boolean {
  return polygons.some((polygon) =>
    polygon.every(([ax, ay], i) => {
      const [bx, by] = polygon[(i + 1) % polygon.length] ?? [ax, ay];
      return (bx - ax) * (y - ay) - (by - ay) * (x - ax) >= 0;
    }),
  );
}

describe("shim against dish radius", () => {
  it("has contours on which the whole profile gives their level", () => {
    const contours = map?.contours ?? [];
    expect(contours.length).toBeGreaterThan(4);
    for (const { level, lines } of contours)
      for (const [x, y] of lines.flat().filter((_, i) => i % 7 === 0))
        expect(exposureAt(x, y)).toBeCloseTo(level, 8);
  });

  it("has the window's edges among them", () => {
    const edges = (map?.contours ?? []).filter(({ edge }) => edge).map(({ level }) => level);
    expect(edges).toEqual(
      defaultInstrument.windows.saddleExposure.filter((edge) => edges.includes(edge)),
    );
    expect(edges.length).toBeGreaterThan(0);
  });

  it("shades what a brute grid of whole profiles passes", () => {
    const passing = map?.passing ?? [];
    let [agreed, passed, all] = [0, 0, 0];
    for (let i = 0; i < 40; i++)
      for (let j = 0; j < 40; j++) {
        const [x, y] = [5 + (8 * (i + 0.5)) / 40, 4500 + (8500 * (j + 0.5)) / 40];
        const passes = passesAll(at(x, y));
        all++;
        if (passes) passed++;
        if (passes === inside(passing, x, y)) agreed++;
      }
    expect(passed).toBeGreaterThan(100);
    expect(passed).toBeLessThan(all - 100);
    // Only places within a straight piece's bend of the edge may differ.
    expect(agreed / all).toBeGreaterThan(0.99);
  });

  it("marks where the plan stands", () => {
    expect(map?.present?.[0]).toBeCloseTo(built.target.value, 12);
    expect(map?.present?.[1]).toBe(8534.4);
  });

  it("is none without a plan", () => {
    const far = { ...defaultInstrument, target: { kind: "pitch", value: 40 } } as const;
    expect(resultOf(mapIn(far, asked))).toBeNull();
  });
});

it("steps in round figures", () => {
  expect([0.013, 0.02, 0.3, 6, 51, 0.05].map(roundStep)).toEqual([0.02, 0.02, 0.5, 10, 100, 0.05]);
});
