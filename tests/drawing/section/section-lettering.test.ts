import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Scene } from "../../../src/drawing/scene.ts";
import { sectionOf } from "../../../src/drawing/section/section.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { givensOf } from "../../../src/profile/givens.ts";
import { profileOf } from "../../../src/profile/profile.ts";
import { plausibleInstrument } from "../../support/random-instrument.ts";
import { letteringFaults, pathsOf, textsOf } from "../../support/read-scene.ts";
import { drawn, fractions, inches, millimetres, preset } from "./sections.ts";

const options = fc.record({
  width: fc.integer({ min: 100, max: 1600 }),
  height: fc.integer({ min: 100, max: 900 }),
  stretch: fc.constantFrom(1, 5, 10),
  turned: fc.boolean(),
  words: fc.constantFrom(millimetres, inches, fractions),
});

/** What is wrong with a drawing's lettering, in words. */
function faultsOf(scene: Scene): readonly string[] {
  const small = textsOf(scene)
    .filter(({ size }) => size < 11)
    .map(({ text }) => `${text} is too small`);
  const odd = pathsOf(scene)
    .filter(({ d }) => !/^(M|L|Z|,|-?\d+(\.\d{1,2})?)*$/.test(d))
    .map(({ role, d }) => `${role} runs ${d}`);
  return [...small, ...letteringFaults(scene), ...odd];
}

describe("the section's lettering never overlaps, leaves the sheet, or shrinks under 11 px", {
  timeout: 60_000,
}, () => {
  test("presets, at any size, stretch, side and unit", () => {
    fc.assert(
      fc.property(fc.constantFrom(...presets), options, (instrument, how) => {
        expect(faultsOf(drawn(instrument, how).scene)).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  test("instruments drawn by lot, overruns and missed windows among them", () => {
    fc.assert(
      fc.property(plausibleInstrument, options, (instrument, how) => {
        const set = givensOf(instrument);
        const result = profileOf(instrument);
        fc.pre(set.ok && result.ok);
        if (!set.ok || !result.ok) return;
        expect(faultsOf(sectionOf(set.givens, result.profile, how).scene)).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });
});

describe("what there is no room for is left out, the least important first", () => {
  const shown = (width: number, height: number): number =>
    textsOf(drawn(preset("orchestra-size"), { width, height }).scene).filter(({ role }) =>
      role.endsWith("value"),
    ).length;

  test("a tablet shows all nine measures, and a phone too", () => {
    expect(shown(760, 330)).toBe(9);
    expect(shown(390, 300)).toBe(9);
  });

  test("a stamp shows fewer", () => {
    expect(shown(200, 160)).toBeLessThan(9);
  });

  test.each(presets.map(({ id }) => id))(
    "%s keeps its shim's value from 320 px on, both candidates up",
    (id) => {
      for (const [width, height] of [
        [320, 300],
        [390, 160],
        [390, 300],
        [600, 200],
        [760, 330],
        [820, 210],
        [1100, 500],
      ] as const)
        for (const stretch of [1, 5, 10] as const)
          for (const turned of [false, true]) {
            const { scene } = drawn(preset(id), { width, height, stretch, turned });
            expect(textsOf(scene).filter(({ role }) => role === "shim value")).toHaveLength(1);
          }
    },
  );
});
