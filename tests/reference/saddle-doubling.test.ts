import { describe, expect, it } from "vitest";
import { defaultInstrument } from "../../src/instrument/default-instrument.ts";
import { actionFor } from "../../src/profile/bench/remedy-bridge.ts";
import { profileOf } from "../../src/profile/profile.ts";
import { outlookFrom, recordOf } from "../support/bench-record.ts";
import { randomInstruments } from "../support/random-instrument.ts";

/*
 * "Removing at the saddle: twice the change wanted at fret 12" (a kit maker's manual,
 * manualshive.com/en/manual/stewart-macdonald/bluegrass-resomaster/1376071?page=23). Fret 12 is half the scale from the
 * nut and the saddle the whole of it and the compensation, so twice, and that little more.
 */
describe("the doubling at the saddle", () => {
  it("is exactly twice without compensation", () => {
    const { bridge } = defaultInstrument;
    const plain = { ...defaultInstrument, bridge: { ...bridge, compensation: 0 } };
    const made = outlookFrom(plain, recordOf({}));
    expect(actionFor(made, -1)).toBeCloseTo(-0.5, 12);
  });

  it("is twice to a hundredth with it, and the core's own strings agree", () => {
    for (const instrument of [defaultInstrument, ...randomInstruments(10, 41)]) {
      const made = outlookFrom(instrument, recordOf({}));
      const change = actionFor(made, -0.6);
      expect(-0.6 / change).toBeGreaterThan(2);
      expect(-0.6 / change).toBeLessThan(2.02);
      const { strings } = instrument;
      const lower = {
        ...made.instrument,
        strings: {
          ...strings,
          actionBass: strings.actionBass + change,
          actionTreble: strings.actionTreble + change,
        },
      };
      const after = profileOf(lower);
      if (!after.ok) throw new Error("no profile");
      expect(after.profile.saddleExposure).toBeCloseTo(made.heights.saddleExposure - 0.6, 9);
    }
  });
});
