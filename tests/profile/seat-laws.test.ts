import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { windowKinds } from "../../src/instrument/outcome-fields.ts";
import { targetIn } from "../../src/profile/outcome.ts";
import { profileOf } from "../../src/profile/profile.ts";
import { targetWithinWindows } from "../../src/profile/target-within-windows.ts";
import { plausibleInstrument } from "../support/random-instrument.ts";
import { aimed, onSeat } from "../support/solved.ts";

const kinds = ["pitch", "bridgeClearance", "saddleExposure", "stringHeight", "spacer"] as const;

/** Instruments a builder might bring, domed all over, with a spacer that makes a plan. */
const seated = fc
  .record({ instrument: plausibleInstrument, spacer: fc.double({ min: 0, max: 6, noNaN: true }) })
  .map(({ instrument, spacer }) => aimed(onSeat(instrument), "spacer", spacer))
  .filter((instrument) => profileOf(instrument).ok);

const profileIn = (instrument: Parameters<typeof profileOf>[0]) => {
  const result = profileOf(instrument);
  if (!result.ok || result.profile.seat === null) throw new Error("no seat");
  return result.profile;
};

describe("a seat, whatever the instrument", { timeout: 240_000 }, () => {
  it("comes out the same whichever of its outcomes is asked for", () => {
    fc.assert(
      fc.property(seated, (instrument) => {
        const own = profileIn(instrument);
        for (const kind of kinds) {
          const value = targetIn(own, kind) ?? Number.NaN;
          const again = profileIn(aimed(instrument, kind, value));
          expect(again.seat.spacer).toBeCloseTo(own.seat.spacer, 7);
          expect(again.seat.mostCut).toBeCloseTo(own.seat.mostCut, 7);
        }
      }),
      { numRuns: 300 },
    );
  });

  it("has every outcome grow with the spacer", () => {
    fc.assert(
      fc.property(seated, (instrument) => {
        const own = profileIn(instrument);
        const thicker = profileOf(aimed(instrument, "spacer", own.seat.spacer + 0.01));
        if (!thicker.ok) return;
        for (const kind of [...windowKinds, "tailDrop"] as const)
          expect(thicker.profile[kind]).toBeGreaterThan(own[kind]);
      }),
      { numRuns: 300 },
    );
  });

  it("can be asked for both ends of every range it names", () => {
    fc.assert(
      fc.property(seated, (instrument) => {
        const { reachable } = profileIn(instrument);
        for (const kind of kinds)
          for (const end of reachable[kind]) {
            const met = profileIn(aimed(instrument, kind, end));
            expect(Math.abs((targetIn(met, kind) ?? Number.NaN) - end)).toBeLessThan(1e-8);
          }
      }),
      { numRuns: 150 },
    );
  });

  it("keeps every window and some plate between the ends said to do so", () => {
    let told = 0;
    fc.assert(
      fc.property(seated, (instrument) => {
        const own = profileIn(instrument);
        const range = targetWithinWindows(instrument, own);
        if (range === null) return;
        told++;
        for (const share of [0.001, 0.5, 0.999]) {
          const met = profileIn(
            aimed(instrument, "spacer", range[0] + share * (range[1] - range[0])),
          );
          expect(met.seat.thicknessLeft).toBeGreaterThan(-1e-9);
          for (const kind of windowKinds) {
            const [low, high] = instrument.windows[kind];
            expect(met[kind]).toBeGreaterThan(low - 1e-7);
            expect(met[kind]).toBeLessThan(high + 1e-7);
          }
        }
      }),
      { numRuns: 300 },
    );
    expect(told).toBeGreaterThan(20);
  });
});
