import { describe, expect, it } from "vitest";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import { readField, writeField } from "../../../src/instrument/field-value.ts";
import type { FieldPath } from "../../../src/instrument/fields.ts";
import type { Instrument } from "../../../src/instrument/instrument.ts";
import { sayPhrase } from "../../../src/instrument/phrase.ts";
import { presets } from "../../../src/instrument/presets.ts";
import {
  type MovedOutcome,
  movedOutcomes,
  sensitivitiesOf,
} from "../../../src/profile/comparison/sensitivity.ts";
import { errorsActOn } from "../../../src/profile/uncertainty/tolerances.ts";
import { exact } from "../../support/high-precision.ts";
import { preciseInstrument } from "../../support/precise.ts";
import { randomInstruments } from "../../support/random-instrument.ts";

/** Central differences of the 50-digit derivation over a step so small that their own error is nothing. */
function preciseSlopes(instrument: Instrument, path: FieldPath): (outcome: MovedOutcome) => number {
  const built = errorsActOn(instrument);
  const value = built === null ? null : readField(built, path);
  if (built === null || value === null) throw new Error("nothing to differentiate");
  const step = 2 ** -20;
  const at = (x: number) => {
    const moved = writeField(built, path, x);
    return preciseInstrument(moved).chain(exact(moved.target.value));
  };
  const [above, below] = [value + step, value - step];
  const [high, low] = [at(above), at(below)];
  const apart = exact(above).minus(below);
  return (outcome) => high[outcome].minus(low[outcome]).div(apart).toNumber();
}

const outcomes = Object.keys(movedOutcomes) as MovedOutcome[];
const instruments = [...presets.slice(1, 4), ...randomInstruments(5, 44)];

describe("slopes against 50-digit differences", () => {
  it.each(instruments.map((one, i) => [`${i} ${one.name}`, one] as const))(
    "%s",
    (_, instrument) => {
      const found = outcomes.map((outcome) => sensitivitiesOf(instrument, outcome) ?? []);
      for (const path of new Set(found.flat().map((one) => one.path))) {
        const expected = preciseSlopes(instrument, path);
        outcomes.forEach((outcome, i) => {
          const slope = found[i]?.find((one) => one.path === path)?.slope ?? 0;
          const off = Math.abs(slope - expected(outcome));
          const allowed = 1e-9 + 1e-8 * Math.abs(slope);
          expect(off, `${outcome} by ${path}: ${slope}`).toBeLessThan(allowed);
        });
      }
    },
    60_000,
  );
});

describe("sensitivities", () => {
  const found = sensitivitiesOf(defaultInstrument, "saddleExposure") ?? [];
  const of = (path: FieldPath) => found.find((one) => one.path === path);

  it("are exact where the outcome is a plain sum", () => {
    expect(of("neck.fingerboardThickness")?.slope).toBeCloseTo(1, 12);
    expect(of("bridge.thickness")?.slope).toBeCloseTo(-1, 12);
    // The saddle follows twice the action, half of it from either outer string (a kit manual: twice the change at fret 12).
    expect(of("strings.actionBass")?.slope).toBeCloseTo(1, 1);
  });

  it("stand in the order of what their tolerances do", () => {
    const moves = found.map(({ byTolerance }) => Math.abs(byTolerance));
    expect(moves).toEqual([...moves].sort((a, b) => b - a));
    expect(moves[0]).toBeGreaterThan(0);
  });

  it("count a radius by the foot, and name what it does in words", () => {
    const dish = of("dome.dishRadius");
    expect(dish?.unit).toEqual({ value: 304.8, as: "length" });
    expect(sayPhrase(of("bridge.thickness")?.says ?? [], "mm")).toBe(
      "Bridge thickness 0.1 mm more lowers the saddle by 0.1 mm.",
    );
  });

  it("leave out what cannot matter", () => {
    expect(of("body.depthTail")).toBeUndefined();
    expect(of("bridge.pinDistance")).toBeUndefined();
    expect(of("neck.joinFret")).toBeUndefined();
  });

  it("are none where there is no plan", () => {
    const far = { ...defaultInstrument, target: { kind: "pitch", value: 40 } } as const;
    expect(sensitivitiesOf(far, "pitch")).toBeNull();
  });
});
