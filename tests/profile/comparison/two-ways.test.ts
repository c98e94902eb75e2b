import { describe, expect, test } from "vitest";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { higher, twoWaysOf } from "../../../src/profile/comparison/two-ways.ts";
import { aimed, onSeat, solved, solvedSeat } from "../../support/solved.ts";

const both = (instrument = defaultInstrument) => {
  const found = twoWaysOf(instrument);
  if (found === null) throw new Error("no plan");
  return found;
};

describe("two ways to a flat seat", () => {
  test.each(presets.map((one) => [one.name, one] as const))(
    "give the same saddle: %s",
    (_, one) => {
      const exposures = both(one).ways.map(({ result }) =>
        result.ok ? result.profile.saddleExposure : null,
      );
      expect(exposures[0]).toBeCloseTo(exposures[1] ?? Number.NaN, 9);
    },
  );

  test("are each the instrument's own profile by that method", () => {
    const [rim, seat] = both().ways;
    expect(rim?.result).toEqual({ ok: true, profile: solved(defaultInstrument) });
    expect(seat?.result).toEqual({ ok: true, profile: solvedSeat(onSeat(defaultInstrument)) });
  });

  test("asked for a shim or a spacer, are asked for the saddle it gives", () => {
    const { shim, saddleExposure } = solved(defaultInstrument);
    for (const one of [
      aimed(defaultInstrument, "shim", shim),
      aimed(onSeat(defaultInstrument), "spacer", solvedSeat(onSeat(defaultInstrument)).seat.spacer),
    ]) {
      const { target } = both(one);
      expect(target.kind).toBe("saddleExposure");
      expect(target.value).toBeCloseTo(saddleExposure, 9);
    }
  });

  test("tell what a tenth of a millimetre does: as much as the two plans a tenth apart differ", () => {
    const [rim, seat] = both().ways;
    const { shim, saddleExposure } = solved(defaultInstrument);
    const thicker = solved(aimed(defaultInstrument, "shim", shim + 0.1));
    expect(rim?.perTenth).toBeCloseTo(thicker.saddleExposure - saddleExposure, 9);
    // The spacer is the gap itself.
    expect(seat?.perTenth).toBeCloseTo(0.1, 9);
  });

  test("tell what higher strings save of the plate", () => {
    const { saddleExposure } = solved(defaultInstrument);
    const raised = aimed(onSeat(defaultInstrument), "saddleExposure", saddleExposure + higher);
    expect(both().cutHigher).toBeCloseTo(solvedSeat(raised).seat.mostCut, 9);
  });

  test("keep the other's plan where one has none", () => {
    const [rim, seat] = both(aimed(defaultInstrument, "saddleExposure", 45)).ways;
    expect([rim?.result.ok, seat?.result.ok]).toEqual([true, true]);
    const [low, none] = both(aimed(defaultInstrument, "saddleExposure", 0.5)).ways;
    expect([low?.result.ok, none?.result.ok]).toEqual([true, false]);
    expect(none?.perTenth).toBeNull();
    expect(both(aimed(defaultInstrument, "saddleExposure", 0.5)).cutHigher).toBeNull();
  });
});

test("the whole rim dished first stands over the flat at the neck end as the sphere through break and tail does", () => {
  const plan = solved(defaultInstrument);
  const { breakX, breakHalfWidth, shim } = plan;
  const { length } = defaultInstrument.body;
  const { contact } = defaultInstrument.shim;
  const radius = defaultInstrument.dome.dishRadius ?? 0;
  // In the plane y = 0 the circles of radius √(R² − w²) about the break and R about the contact meet in the centre.
  const [dx, dz] = [contact - breakX, -shim];
  const chord = Math.hypot(dx, dz);
  const along = (chord ** 2 - breakHalfWidth ** 2) / (2 * chord);
  const across = Math.sqrt(radius ** 2 - breakHalfWidth ** 2 - along ** 2);
  const centreX = breakX + (along * dx - across * dz) / chord;
  const centreZ = (along * dz + across * dx) / chord;
  const edge = defaultInstrument.body.neckEndWidth / 2;
  const z = centreZ + Math.sqrt(radius ** 2 - (length - centreX) ** 2 - edge ** 2);
  expect(twoWaysOf(defaultInstrument)?.dishedNeckEnd).toBeCloseTo(z, 6);
});
