import { describe, expect, it } from "vitest";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import { writeField } from "../../../src/instrument/field-value.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { outcomeAt, outcomeIn, outcomeKeys } from "../../../src/profile/comparison/outcomes.ts";
import { heldInstrument, type SweepAsked, sweepOf } from "../../../src/profile/comparison/sweep.ts";
import { profileOf } from "../../../src/profile/profile.ts";

const asked: SweepAsked = {
  path: "target.value",
  outcome: "bridgeClearance",
  hold: "shim",
  range: [4, 14],
};

function sweep(instrument = defaultInstrument, changes: Partial<SweepAsked> = {}) {
  const found = sweepOf(instrument, { ...asked, ...changes });
  if (found === null) throw new Error("no plan");
  return found;
}

describe("one input against one outcome", () => {
  it.each(outcomeKeys)("has the whole profile's %s", (outcome) => {
    const whole = profileOf(defaultInstrument);
    if (!whole.ok) throw new Error("no plan");
    const value = outcomeAt(defaultInstrument, outcome);
    const expected = outcomeIn(whole.profile, outcome);
    if (expected === null) expect(value).toBeNull();
    else expect(value).toBeCloseTo(expected, 11);
  });

  it("crosses its window exactly where the plan for that edge lies", () => {
    for (const preset of presets) {
      const [low, high] = preset.windows.bridgeClearance;
      const { crossings } = sweep(preset);
      expect(crossings.map(({ edge, direction }) => [edge, direction])).toEqual([
        ["low", "enters"],
        ["high", "leaves"],
      ]);
      [low, high].forEach((value, i) => {
        const plan = profileOf({ ...preset, target: { kind: "bridgeClearance", value } });
        if (!plan.ok) throw new Error("no plan");
        expect(crossings[i]?.at).toBeCloseTo(plan.profile.shim ?? Number.NaN, 10);
      });
    }
  });

  it("marks the present value and the outcome there", () => {
    const { present } = sweep();
    const whole = profileOf(defaultInstrument);
    if (!whole.ok) throw new Error("no plan");
    expect(present?.x).toBe(whole.profile.shim);
    expect(present?.value).toBeCloseTo(whole.profile.bridgeClearance, 12);
  });

  it("holds the target or the shim, as asked", () => {
    const path = "bridge.thickness";
    const range = [7, 10] as const;
    const outcome = "saddleExposure";
    const kept = sweep(defaultInstrument, { path, range, outcome, hold: "target" });
    for (const { value } of kept.points) expect(value).toBeCloseTo(3.4, 9);
    const fixed = sweep(defaultInstrument, { path, range, outcome, hold: "shim" });
    const [first, last] = [fixed.points[0], fixed.points.at(-1)];
    expect((first?.value ?? 0) - (last?.value ?? 0)).toBeCloseTo(3, 9);
  });

  it("leaves a gap where there is no plan", () => {
    const { points } = sweep(defaultInstrument, { path: "dome.flatLength", range: [0, 491] });
    expect(points[0]?.value).not.toBeNull();
    expect(points.at(-1)?.value).toBeNull();
  });

  it("steps through whole numbers", () => {
    const { points, crossings } = sweep(defaultInstrument, {
      path: "neck.joinFret",
      range: [10.2, 16],
      hold: "shim",
    });
    expect(points.map(({ x }) => x)).toEqual([11, 12, 13, 14, 15, 16]);
    for (const { at } of crossings) expect(Number.isInteger(at)).toBe(true);
  });
});

describe("a visit to the window shorter than the sweep's steps", () => {
  const path = "body.upperBoutAt";
  // The break is widest, and so the fret plane lowest, where the upper bout stands right at it.
  const atBreak = defaultInstrument.body.length - defaultInstrument.dome.flatLength;
  const held = heldInstrument(defaultInstrument, "shim") ?? defaultInstrument;
  const clearance = (at: number): number =>
    outcomeAt(writeField(held, path, at), "bridgeClearance") ?? Number.NaN;
  const trough = clearance(atBreak);
  const nextSample = Math.min(clearance(atBreak - 0.5), clearance(atBreak + 0.5));
  const high = trough + 0.3 * (nextSample - trough);
  const grazing = {
    ...defaultInstrument,
    windows: { ...defaultInstrument.windows, bridgeClearance: [0, high] as const },
  };
  const range = [atBreak - 47.5, atBreak + 48.5] as const;

  it("is found, with both its exact ends", () => {
    const { crossings, points } = sweep(grazing, { path, range });
    expect(points.every(({ value }) => (value ?? 0) > high)).toBe(true);
    expect(crossings.map(({ direction }) => direction)).toEqual(["enters", "leaves"]);
    for (const { at } of crossings) {
      expect(Math.abs(at - atBreak)).toBeLessThan(0.5);
      expect(clearance(at)).toBeCloseTo(high, 12);
    }
  });
});
