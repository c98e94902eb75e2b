import { describe, expect, it, vi } from "vitest";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import type { Instrument } from "../../../src/instrument/instrument.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { sensitivitiesOf } from "../../../src/profile/comparison/sensitivity.ts";
import { type Uncertainty, UncertaintyRun } from "../../../src/profile/uncertainty/uncertainty.ts";

vi.setConfig({ testTimeout: 60_000 });

function uncertainty(
  instrument: Instrument,
  draws = 100_000,
  shape: "normal" | "rectangular" = "normal",
  seed = 1,
): Uncertainty {
  const run = UncertaintyRun.of({ instrument, shape, seed });
  if (run === null) throw new Error("no plan");
  run.run(draws);
  return run.result();
}

const of = (result: Uncertainty, kind: string) => {
  const found = result.outcomes.find((outcome) => outcome.kind === kind);
  if (found === undefined) throw new Error(kind);
  return found;
};

describe("both methods", () => {
  it.each(presets.map((preset) => [preset.name, preset] as const))("agree on %s", (_, preset) => {
    for (const { first, sampled, kind } of uncertainty(preset).outcomes) {
      // Four standard errors of a standard deviation, and a little for what is not of the first order.
      expect(Math.abs(sampled.u - first.u), kind).toBeLessThan(
        first.u * (4 / Math.sqrt(2e5) + 0.002),
      );
      expect(Math.abs(sampled.mean - first.value), kind).toBeLessThan(first.u * 0.02);
    }
  });

  it("agree on the chance of a window that cuts the middle", () => {
    const { stringHeight } = defaultInstrument.windows;
    const cut = {
      ...defaultInstrument,
      target: { kind: "stringHeight", value: stringHeight[0] + 0.1 },
    } as const;
    const { chance, firstChance } = of(uncertainty(cut), "stringHeight");
    expect(chance).toBeGreaterThan(0.6);
    expect(chance).toBeLessThan(0.75);
    expect(Math.abs(chance - firstChance)).toBeLessThan(0.006);
  });

  it("combine the very sensitivities that are shown", () => {
    const result = uncertainty(defaultInstrument, 1, "rectangular");
    const { first } = of(result, "saddleExposure");
    const shown = sensitivitiesOf(defaultInstrument, "saddleExposure") ?? [];
    const together = Math.hypot(...shown.map(({ byTolerance }) => byTolerance / Math.sqrt(3)));
    expect(first.u).toBeCloseTo(together, 10);
  });
});

describe("how sure", () => {
  it("repeats to the bit for a seed, in one run or in chunks", () => {
    const once = uncertainty(defaultInstrument, 30_000);
    const run = UncertaintyRun.of({ instrument: defaultInstrument, shape: "normal", seed: 1 });
    for (let i = 0; i < 3; i++) run?.run(10_000);
    expect(run?.result()).toEqual(once);
  });

  it("is certain when nothing is off", () => {
    const none = Object.fromEntries(
      Object.keys(defaultInstrument.tolerances).map((path) => [path, 0]),
    );
    const exactly = { ...defaultInstrument, tolerances: { ...none, "target.value": 0 } };
    const result = uncertainty(exactly, 5000);
    expect(result.inputs).toEqual([]);
    expect(of(result, "saddleExposure").sampled.u).toBe(0);
    expect(result.chanceOfAll).toBe(1);
  });

  it("meets all windows no more often than any one", () => {
    const result = uncertainty(defaultInstrument);
    const least = Math.min(...result.outcomes.map(({ chance }) => chance));
    expect(result.chanceOfAll).toBeLessThanOrEqual(least);
    expect(result.chanceOfAll).toBeGreaterThan(0);
  });

  it("says where the two methods part: one wide rectangular measure has no normal's tails", () => {
    const wide = { ...defaultInstrument, tolerances: { "bridge.thickness": 2, "target.value": 0 } };
    expect(of(uncertainty(wide, 100_000, "rectangular"), "saddleExposure").disagree).toBe(true);
    expect(of(uncertainty(wide, 100_000, "normal"), "saddleExposure").disagree).toBe(false);
  });

  it("counts overruns among what can go wrong", () => {
    const thin = { ...defaultInstrument, target: { kind: "shim", value: 7.3 } } as const;
    const { chance, first, sampled } = of(uncertainty(thin), "cleanShimMargin");
    expect(chance).toBeGreaterThan(0.5);
    expect(chance).toBeLessThan(1);
    expect(Math.abs(first.value - sampled.mean)).toBeLessThan(0.01);
  });

  it("is unknown where there is no plan", () => {
    const far = { ...defaultInstrument, target: { kind: "pitch", value: 40 } } as const;
    expect(UncertaintyRun.of({ instrument: far, shape: "normal", seed: 1 })).toBeNull();
  });
});
