import { describe, expect, it } from "vitest";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { windowKinds } from "../../src/instrument/outcome-fields.ts";
import { presets } from "../../src/instrument/presets.ts";
import { contactWorth } from "../../src/profile/contact-worth.ts";
import { profileOf } from "../../src/profile/profile.ts";
import { standing } from "../../src/profile/standing.ts";
import { targetWithinWindows } from "../../src/profile/target-within-windows.ts";
import { randomInstruments } from "../support/random-instrument.ts";
import { breakTargets, solved } from "../support/solved.ts";

/** Whether nothing is outside its window and the board does not cut past the break. */
function isWithin(instrument: Instrument): boolean {
  const result = profileOf(instrument);
  if (!result.ok) return false;
  const { profile } = result;
  const windows = windowKinds.every(
    (kind) => standing(profile[kind], instrument.windows[kind]) !== "outside",
  );
  return windows && profile.overrunLength === 0;
}

const aimed = (instrument: Instrument, kind: (typeof breakTargets)[number], value: number) => ({
  ...instrument,
  target: { kind, value },
});

describe("the target's range within all windows", () => {
  it("is of every preset, for every target: within at both ends and between, and not beyond", () => {
    for (const preset of presets)
      for (const kind of breakTargets) {
        const instrument = aimed(preset, kind, solved(preset)[kind]);
        const range = targetWithinWindows(instrument, solved(instrument));
        expect(range, `${preset.id} ${kind}`).not.toBeNull();
        const [low, high] = range ?? [0, 0];
        const nearly = (high - low) / 1000;
        for (const share of [0, 0.3, 1]) {
          const value = low + nearly + share * (high - low - 2 * nearly);
          expect(isWithin(aimed(preset, kind, value)), `${preset.id} ${kind} ${value}`).toBe(true);
        }
        for (const value of [low - nearly, high + nearly])
          expect(isWithin(aimed(preset, kind, value)), `${preset.id} ${kind} ${value}`).toBe(false);
      }
  });

  it("is nothing exactly where no shim brings all of it about", () => {
    for (const instrument of randomInstruments(40, 20261126)) {
      const profile = solved(instrument);
      const range = targetWithinWindows(aimed(instrument, "shim", profile.shim), profile);
      const [low, high] = profile.reachable.shim;
      for (let i = 0; i < 30; i++) {
        const t = low + ((high - low) * i) / 29;
        const inside = range !== null && range[0] + 1e-6 < t && t < range[1] - 1e-6;
        const outside = range === null || t < range[0] - 1e-6 || t > range[1] + 1e-6;
        if (inside || outside)
          expect(isWithin(aimed(instrument, "shim", t)), `${t} of ${range}`).toBe(inside);
      }
    }
  });
});

describe("what the stick's width is worth", () => {
  it("is the clearance the same shim loses when it touches at the tail end", () => {
    for (const preset of presets) {
      const profile = solved(preset);
      const held = aimed(preset, "shim", profile.shim);
      const atTheEnd = solved({ ...held, shim: { ...held.shim, contact: 0 } });
      const worth = contactWorth(preset, profile);
      expect(worth).toBeCloseTo(profile.bridgeClearance - atTheEnd.bridgeClearance, 12);
      expect(worth).toBeGreaterThan(0.2);
    }
  });
});
