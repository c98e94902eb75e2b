import { describe, expect, it, vi } from "vitest";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import { writeField } from "../../../src/instrument/field-value.ts";
import { windowKinds } from "../../../src/instrument/outcome-fields.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { profileOf } from "../../../src/profile/profile.ts";
import { chainOfInstrument } from "../../../src/profile/saddle-chain.ts";
import {
  type Input,
  type Model,
  MonteCarlo,
} from "../../../src/profile/uncertainty/monte-carlo.ts";
import { inputsOf, modelOf, windowsOf } from "../../../src/profile/uncertainty/perturbed-model.ts";
import { Random } from "../../../src/profile/uncertainty/random.ts";
import { RunningStatistics } from "../../../src/profile/uncertainty/running-statistics.ts";
import {
  generalTolerance,
  tolerancesOf,
  withGeneralTolerances,
  withPartFixed,
} from "../../../src/profile/uncertainty/tolerances.ts";
import { randomInstruments } from "../../support/random-instrument.ts";

vi.setConfig({ testTimeout: 60_000 });

const instruments = [...presets, ...randomInstruments(40, 4)];

const kinds = [...windowKinds, "cleanShimMargin"] as const;

function built(of = defaultInstrument) {
  const found = withPartFixed(of);
  if (found === null) throw new Error(`${of.name} has no plan`);
  return found;
}

describe("the short way to the saddle", () => {
  it.each(instruments.map((instrument, i) => [i, instrument] as const))(
    "gives the very numbers of the whole profile, instrument %i",
    (_, instrument) => {
      const whole = profileOf(instrument);
      const chain = chainOfInstrument(instrument);
      if (!whole.ok || chain === null) throw new Error("no plan");
      const { part, ...heights } = chain;
      expect(part).toBeCloseTo(whole.profile.shim ?? Number.NaN, 11);
      for (const [key, value] of Object.entries(heights))
        expect(value, key).toBeCloseTo(whole.profile[key as keyof typeof heights], 11);
    },
  );
});

describe("as built", () => {
  it("keeps the planned shim whatever the other measures turn out to be", () => {
    const thicker = writeField(built(), "bridge.thickness", 9.5);
    const result = profileOf(thicker);
    const planned = profileOf(defaultInstrument);
    if (!result.ok || !planned.ok) throw new Error("no plan");
    expect(result.profile.shim).toBe(planned.profile.shim);
    const off = 9.5 - defaultInstrument.bridge.thickness;
    expect(result.profile.saddleExposure).toBeCloseTo(planned.profile.saddleExposure - off, 10);
  });

  it("holds the shim to a tenth unless told otherwise", () => {
    expect(tolerancesOf(built())).toContainEqual(["target.value", 0.1]);
    const stated = { ...built(), tolerances: { "target.value": 0.25 } };
    expect(tolerancesOf(stated)).toEqual([["target.value", 0.25]]);
  });

  it("takes no tolerance on a missing dish", () => {
    const flat = writeField(built(), "dome.dishRadius", null);
    expect(tolerancesOf(flat).map(([path]) => path)).not.toContain("dome.dishRadius");
  });
});

describe("ISO 2768-1", () => {
  it.each([
    // Rows seen in a published extract.
    [20, 0.1, 0.2],
    [100, 0.15, 0.3],
    [300, 0.2, 0.5],
    [645, 0.3, 0.8],
  ])("%i mm: fine %f, medium %f", (size, fine, medium) => {
    expect(generalTolerance(size, "fine")).toBe(fine);
    expect(generalTolerance(size, "medium")).toBe(medium);
  });

  it("leaves angles and what is beyond its table as stated", () => {
    const { tolerances } = withGeneralTolerances(defaultInstrument, "medium");
    expect(tolerances["dome.flatLength"]).toBe(0.3);
    expect(tolerances["neck.neckTilt"]).toBe(defaultInstrument.tolerances["neck.neckTilt"]);
    expect(tolerances["dome.dishRadius"]).toBe(defaultInstrument.tolerances["dome.dishRadius"]);
  });
});

describe("the model that is drawn", () => {
  it.each(presets.map((preset) => [preset.name, preset] as const))(
    "gives what a whole profile gives with the same measures, %s",
    (_, preset) => {
      const plan = built(preset);
      const inputs = inputsOf(plan, "rectangular");
      const paths = inputs.map(({ path }) => path);
      const model = modelOf(plan, paths, true);
      const random = Random.seeded(11);
      const outcomes = new Float64Array(kinds.length);
      for (let draw = 0; draw < 20; draw++) {
        const values = inputs.map(
          ({ value, plusMinus }) => value + plusMinus * (2 * random.even() - 1),
        );
        expect(model(Float64Array.from(values), outcomes)).toBe(true);
        const moved = paths.reduce((so, path, i) => writeField(so, path, values[i] ?? 0), plan);
        const whole = profileOf(moved);
        if (!whole.ok) throw new Error("no plan");
        kinds.forEach((kind, i) => {
          if (kind === "cleanShimMargin") {
            const room =
              (whole.profile.shim ?? Number.NaN) - (whole.profile.cleanShim ?? Number.NaN);
            // Read off a table; and a clean shim thinner than none is reported as none.
            if ((whole.profile.cleanShim ?? 0) > 0)
              expect(Math.abs((outcomes[i] ?? 0) - room)).toBeLessThan(1e-3);
          } else expect(outcomes[i], kind).toBeCloseTo(whole.profile[kind], 10);
        });
      }
    },
  );

  it("draws the outline anew where the body varies", () => {
    const plan = built();
    const model = modelOf(plan, ["body.lowerBoutWidth", "body.length"], true);
    const outcomes = new Float64Array(kinds.length);
    model(Float64Array.of(400, 500), outcomes);
    const moved = profileOf(
      writeField(writeField(plan, "body.lowerBoutWidth", 400), "body.length", 500),
    );
    if (!moved.ok) throw new Error("no plan");
    expect(outcomes[1]).toBeCloseTo(moved.profile.saddleExposure, 10);
    expect(outcomes[5]).toBeCloseTo(
      (moved.profile.shim ?? Number.NaN) - (moved.profile.cleanShim ?? 0),
      9,
    );
  });
});

describe("draws", () => {
  const plan = built();
  const inputs = inputsOf(plan, "normal");
  const paths = inputs.map(({ path }) => path);
  const run = (seed: number): MonteCarlo =>
    new MonteCarlo(inputs, modelOf(plan, paths, true), windowsOf(plan), seed);
  const all = (draws: MonteCarlo): unknown => [
    kinds.map((_, i) => [draws.outcome(i, 30), draws.chance(i)]),
    draws.chanceOfAll(),
  ];

  it("repeat to the bit for a seed, however they are divided and looked at", () => {
    const [once, parts, other] = [run(3), run(3), run(4)];
    once.run(20_000);
    for (const part of [1, 999, 4000, 5000, 10_000]) {
      parts.run(part);
      parts.outcome(1, 30);
    }
    other.run(20_000);
    expect(all(parts)).toEqual(all(once));
    expect(all(other)).not.toEqual(all(once));
  });

  it("count those that cannot be built, and let them meet no window", () => {
    const half: Model = ([x = 0], outcomes) => {
      outcomes[0] = x;
      return x > 0;
    };
    const input: Input = { value: 0, u: 1, shape: "rectangular" };
    const draws = new MonteCarlo([input], half, [[-10, 10]], 1);
    draws.run(10_000);
    expect(draws.failed).toBeGreaterThan(4800);
    expect(draws.chanceOfAll()).toBeCloseTo(1 - draws.failed / 10_000, 12);
  });

  it("of the even distribution lie in a window as often as its share", () => {
    const itself: Model = ([x = 0], outcomes) => {
      outcomes[0] = x;
      return true;
    };
    const input: Input = { value: 0, u: 1 / Math.sqrt(3), shape: "rectangular" };
    const draws = new MonteCarlo([input], itself, [[-0.5, 0.1]], 9);
    draws.run(100_000);
    // Four standard errors of a share of 0.3: 4·√(0.3·0.7/n).
    expect(Math.abs(draws.chance(0) - 0.3)).toBeLessThan(0.0058);
  });
});

it("a running's quantiles are those of the sorted draws", () => {
  const random = Random.seeded(6);
  const values = Float64Array.from({ length: 50_000 }, () => 5 + 0.3 * random.normal() ** 3);
  const running = new RunningStatistics();
  for (const value of values) running.add(value);
  const sorted = values.slice().sort();
  const found = running.statistics(40);
  const { u = 0 } = found ?? {};
  expect(Math.abs((found?.interval[0] ?? 0) - (sorted[1250] ?? 0))).toBeLessThan(u / 200);
  expect(Math.abs((found?.interval[1] ?? 0) - (sorted[48_750] ?? 0))).toBeLessThan(u / 200);
  expect(found?.histogram.counts.reduce((sum, count) => sum + count, 0)).toBe(values.length);
});
