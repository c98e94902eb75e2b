import { describe, expect, test } from "vitest";
import { rimPlan } from "../../src/drawing/plan/rim-plan.ts";
import { sectionOf } from "../../src/drawing/section/section.ts";
import { halfOutlineTemplate } from "../../src/drawing/templates/outline-template.ts";
import { sectionTemplate, topPolyline } from "../../src/drawing/templates/section-template.ts";
import { defaultInstrument } from "../../src/instrument/default-instrument.ts";
import { givensOf } from "../../src/profile/givens.ts";
import { letteringFaults, textsOf } from "../support/read-scene.ts";
import { onSeat, solvedSeat } from "../support/solved.ts";

const seated = onSeat(defaultInstrument);
const profile = solvedSeat(seated);
const set = givensOf(seated);
if (!set.ok) throw new Error("no givens");
const { givens } = set;

const words = {
  length: (mm: number) => `${mm.toFixed(1)} mm`,
  height: (mm: number) => `${mm.toFixed(2)} mm`,
  shim: (mm: number) => `${mm.toFixed(2)} mm`,
  angle: (degrees: number) => `${degrees.toFixed(2)}°`,
  unit: "mm",
} as const;

const section = (turned: boolean, width = 800) =>
  sectionOf(givens, profile, { width, height: 340, stretch: 5, turned, words });

const said = (scene: Parameters<typeof textsOf>[0]): string =>
  textsOf(scene)
    .map(({ text }) => text)
    .join(" | ");

describe("the section of a top with a seat", () => {
  test("assembled, shows the cut, the seat and the gap, and no shim", () => {
    const { scene, handles } = section(false);
    expect(said(scene)).toContain(`off the plate ${profile.seat.endCut.toFixed(2)} mm`);
    expect(said(scene)).toContain("seat 92.2 mm");
    expect(said(scene)).toContain(`spacer ${profile.seat.spacer.toFixed(2)} mm`);
    expect(said(scene)).not.toMatch(/shim|break|stick|flat/);
    expect(scene.title).toContain(`spacer ${profile.seat.spacer.toFixed(2)} mm`);
    expect([handles.break, handles.part]).toEqual([null, null]);
    expect(handles.saddle).not.toBeNull();
  });

  test("at work, lies under bar and spacer, the spacer to be taken hold of on the top", () => {
    const { scene, handles, toX, toZ } = section(true);
    expect(said(scene)).toContain(`spacer ${profile.seat.spacer.toFixed(2)} mm`);
    expect(scene.title).toContain("under bar and spacer");
    expect(toX(handles.part?.[0] ?? Number.NaN)).toBeCloseTo(profile.saddleX, 6);
    expect(toZ(handles.part?.[1] ?? Number.NaN)).toBeCloseTo(-profile.seat.spacer, 6);
    expect(handles.saddle).toBeNull();
  });

  test.each([320, 480, 800, 1180])("writes nothing over anything at %i px", (width) => {
    for (const turned of [false, true])
      expect(letteringFaults(section(turned, width).scene)).toEqual([]);
  });
});

test("the plan shows the seat, its length and no break", () => {
  const plan = rimPlan(givens, profile, {
    ...{ width: 700, height: 480 },
    words: { ...words, figure: (mm: number) => mm.toFixed(2) },
  });
  expect(said(plan)).toContain("seat 92.2 mm");
  expect(said(plan)).not.toMatch(/break|stick|flat/);
});

describe("a template with a seat", () => {
  test("is marked at the seat's end, not at a break", () => {
    for (const template of [
      halfOutlineTemplate(givens, profile, words),
      sectionTemplate(givens, profile, words),
    ]) {
      const texts = template.labels.map(({ text }) => text).join(" | ");
      expect(texts).toMatch(/seat's end,? 399\.8 mm/);
      expect(texts).not.toMatch(/break|stick/);
    }
  });

  test("steps down to the seat where the fingerboard ends", () => {
    const top = topPolyline(givens, profile);
    expect(top.at(-2)).toEqual([givens.seat?.fromX, 0]);
    expect(top.at(-1)).toEqual([492, 0]);
    expect(top.at(-3)?.[1]).toBeCloseTo(profile.seat.endCut, 9);
  });
});
