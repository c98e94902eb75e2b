import { describe, expect, it } from "vitest";
import { cutawayPresets } from "../../../src/instrument/cutaway-presets.ts";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import { readField, writeField } from "../../../src/instrument/field-value.ts";
import type { FieldPath } from "../../../src/instrument/fields.ts";
import type { Instrument } from "../../../src/instrument/instrument.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { outcomeAt } from "../../../src/profile/comparison/outcomes.ts";
import { sensitivitiesOf } from "../../../src/profile/comparison/sensitivity.ts";
import { variantInstrument } from "../../../src/profile/comparison/variant.ts";
import { profileOf } from "../../../src/profile/profile.ts";
import { errorsActOn } from "../../../src/profile/uncertainty/tolerances.ts";
import { UncertaintyRun } from "../../../src/profile/uncertainty/uncertainty.ts";

const pairs = presets.find(({ strings }) => strings.pairGap > 0) ?? defaultInstrument;
const [cutaway] = cutawayPresets as [Instrument];
const fanned = writeField(defaultInstrument, "neck.fan", 20);

/** A change of each field of strings and halves, on an instrument where it moves something. */
const changes: readonly (readonly [FieldPath, Instrument, number])[] = [
  ["neck.fan", defaultInstrument, 20],
  ["neck.fanFret", fanned, 3],
  ["bridge.slant", cutaway, 6],
  ["strings.pairGap", pairs, 1.5],
  ["strings.settling", cutaway, 0.4],
];

describe.each(changes)("%s", (path, instrument, value) => {
  it("changed in a variant gives what the changed instrument gives, and moves some string's saddle", () => {
    const variant = { id: "a", name: "", changes: { [path]: value } };
    const changed = writeField(instrument, path, value);
    const [own, before] = [variantInstrument(instrument, variant), instrument].map((one) =>
      profileOf(one),
    );
    if (!own?.ok || !before?.ok) throw new Error("no plan");
    const direct = profileOf(changed);
    expect(direct.ok && direct.profile.stringExposure).toEqual(own.profile.stringExposure);
    expect(own.profile.stringExposure).not.toEqual(before.profile.stringExposure);
  });
});

describe("settling", () => {
  const held: Instrument = { ...defaultInstrument, target: { kind: "shim", value: 8.4 } };

  it("takes the saddle and the strings down one for one at the same shim, and leaves the fret plane", () => {
    const at = (settling: number, key: "saddleExposure" | "bridgeClearance") =>
      outcomeAt(writeField(held, "strings.settling", settling), key) ?? Number.NaN;
    for (const settling of [0.1, 0.5, 1]) {
      expect(at(0, "saddleExposure") - at(settling, "saddleExposure")).toBeCloseTo(settling, 12);
      expect(at(settling, "bridgeClearance")).toBe(at(0, "bridgeClearance"));
    }
  });

  it("shifts every draw of how sure the saddle is by itself, draw for draw", () => {
    const means = [0, 0.5].map((settling) => {
      const instrument = writeField(held, "strings.settling", settling);
      const run = UncertaintyRun.of({ instrument, shape: "normal", seed: 7 });
      run?.run(2000);
      const outcomes = run?.result().outcomes ?? [];
      return outcomes.find(({ kind }) => kind === "saddleExposure")?.sampled.mean ?? Number.NaN;
    });
    expect((means[0] ?? 0) - (means[1] ?? 0)).toBeCloseTo(0.5, 9);
  });
});

describe("halves that differ", () => {
  it("have the sensitivities that small changes of the built instrument bear out", () => {
    const built = errorsActOn(cutaway);
    const found = sensitivitiesOf(cutaway, "saddleExposure") ?? [];
    if (built === null) throw new Error("no plan");
    expect(found.length).toBeGreaterThan(5);
    for (const { path, slope } of found) {
      const value = readField(built, path) ?? Number.NaN;
      const step = 1e-4 * Math.max(1, Math.abs(value));
      const at = (to: number): number =>
        outcomeAt(writeField(built, path, to), "saddleExposure") ?? Number.NaN;
      const moved = (at(value + step) - at(value - step)) / (2 * step);
      expect(Math.abs(moved - slope), path).toBeLessThan(1e-5 + 1e-4 * Math.abs(slope));
    }
  });
});
