import { describe, expect, it } from "vitest";
import { cutawayPresets } from "../../src/instrument/cutaway-presets.ts";
import { readField } from "../../src/instrument/field-value.ts";
import { fieldAt, fieldPaths } from "../../src/instrument/fields.ts";
import { presets } from "../../src/instrument/presets.ts";
import { readInstrument } from "../../src/instrument/read-instrument.ts";
import { roundIn } from "../../src/instrument/round-in-inches.ts";
import { profileOf } from "../../src/profile/profile.ts";

describe.each(presets.map((preset) => [preset.name, preset] as const))("%s", (_, preset) => {
  const inInches = roundIn(preset, "in");

  it("stays as it is in mm", () => {
    expect(roundIn(preset, "mm")).toBe(preset);
  });

  // 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
  it("has every length in whole 64ths of an inch, or thousandths under an eighth, within a sixteenth of what it was", () => {
    for (const path of fieldPaths) {
      const [value, before] = [readField(inInches, path), readField(preset, path)];
      if (value === null || before === null) continue;
      if (fieldAt(path, preset.target.kind).quantity !== "length") {
        expect(value, path).toBe(before);
        continue;
      }
      const small = Math.abs(before) < 25.4 / 8 && !path.startsWith("windows.");
      const parts = (value / 25.4) * (small ? 1000 : 64);
      expect(Math.abs(parts - Math.round(parts)), path).toBeLessThan(1e-9);
      expect(Math.abs(value - before), path).toBeLessThan(25.4 / 16 + 1e-9);
    }
  });

  it("is a file's instrument, with a plan, all within its windows and nothing to fix", () => {
    expect(readInstrument(inInches).ok).toBe(true);
    const result = profileOf(inInches);
    if (!result.ok) throw new Error(result.refusal.field);
    expect(result.profile.checks.filter(({ grade }) => grade !== "note")).toEqual([]);
  });
});

it.each(cutawayPresets.map((preset) => [preset.name, preset] as const))(
  "%s stays as long as its tracing, and has a plan",
  (_, preset) => {
    const inInches = roundIn(preset, "in");
    expect(inInches.body.length).toBe(preset.body.length);
    expect(inInches.body.lowerBoutWidth).not.toBe(preset.body.lowerBoutWidth);
    expect(readInstrument(JSON.parse(JSON.stringify(inInches))).ok).toBe(true);
    expect(profileOf(inInches).ok).toBe(true);
  },
);
