import { describe, expect, it } from "vitest";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import type { Instrument } from "../../../src/instrument/instrument.ts";
import { sayPhrase } from "../../../src/instrument/phrase.ts";
import { expectedOf } from "../../../src/profile/bench/expected.ts";
import { goalOf, outlookOf, outlookSaid } from "../../../src/profile/bench/outlook.ts";
import { profileOf } from "../../../src/profile/profile.ts";
import { outlookFrom, recordOf } from "../../support/bench-record.ts";
import { aimedAt, randomInstruments } from "../../support/random-instrument.ts";

const planned = (instrument: Instrument) => {
  const result = profileOf(instrument);
  if (!result.ok) throw new Error(JSON.stringify(result.refusal));
  return result.profile;
};

const plan = planned(defaultInstrument);

describe("the outlook", () => {
  it("is the plan while nothing is measured", () => {
    for (const instrument of randomInstruments(20, 11)) {
      const profile = planned(instrument);
      const { heights } = outlookFrom(instrument, recordOf({}));
      for (const [name, value] of Object.entries(heights))
        if (typeof value === "number")
          expect(value, name).toBeCloseTo(profile[name as "flatGap"], 9);
    }
  });

  it("takes the shim as used for the plan's, as the core does forward", () => {
    const { heights } = outlookFrom(defaultInstrument, recordOf({ shim: 7.4 }));
    const forward = planned(aimedAt(defaultInstrument, "shim", 7.4));
    expect(heights.saddleExposure).toBeCloseTo(forward.saddleExposure, 9);
    expect(heights.saddleExposure).toBeLessThan(plan.saddleExposure - 0.4);
  });

  it("keeps the planned shim when only its contact came out otherwise", () => {
    const { heights } = outlookFrom(defaultInstrument, recordOf({ contact: 16 }));
    const moved = { ...defaultInstrument, shim: { ...defaultInstrument.shim, contact: 16 } };
    const forward = planned(aimedAt(moved, "shim", plan.shim ?? Number.NaN));
    expect(heights.flatGap).toBeCloseTo(forward.flatGap, 9);
  });

  it("lets each later measure supersede the earlier ones", () => {
    const gaps = [
      recordOf({ shim: 7.4 }),
      recordOf({ shim: 7.4, gapBefore: 3.1 }),
      recordOf({ shim: 7.4, gapBefore: 3.1, gapAfter: 2.9 }),
    ].map((record) => outlookFrom(defaultInstrument, record).gap);
    expect(gaps[1]).toBe(3.1);
    expect(gaps[2]).toBe(2.9);
    expect(gaps[0]).not.toBeCloseTo(3.1, 1);
  });

  it("carries a measured gap to every height, one for one", () => {
    const { heights, gap } = outlookFrom(
      defaultInstrument,
      recordOf({ gapAfter: plan.flatGap - 0.5 }),
    );
    expect(gap).toBe(plan.flatGap - 0.5);
    for (const name of ["projection", "bridgeClearance", "stringHeight", "saddleExposure"] as const)
      expect(heights[name]).toBeCloseTo(plan[name] - 0.5, 9);
  });

  it("names the dome a measured gap speaks for by its shim: the core forward gives the gap back", () => {
    let found = 0;
    for (const instrument of randomInstruments(20, 12)) {
      const gap = planned(instrument).flatGap - 0.2;
      const outlook = outlookFrom(instrument, recordOf({ gapBefore: gap }));
      if (outlook.dome === null) continue;
      found++;
      expect(planned(outlook.instrument).flatGap).toBeCloseTo(gap, 6);
    }
    expect(found).toBeGreaterThan(10);
  });

  it("still knows the heights where no dome gives the gap", () => {
    const outlook = outlookFrom(defaultInstrument, recordOf({ gapAfter: -49 }));
    expect(outlook.dome).toBeNull();
    expect(outlook.heights.projection).toBeCloseTo(outlook.givens.fretPlaneAtSaddle - 49, 9);
  });

  it("takes the fret plane as measured over the bridge for neck, board and bridge together", () => {
    const { heights } = outlookFrom(defaultInstrument, recordOf({ bridgeClearance: 0.2 }));
    expect(heights.bridgeClearance).toBeCloseTo(0.2, 12);
    expect(heights.saddleExposure).toBeCloseTo(plan.saddleExposure + 0.2 - plan.bridgeClearance, 9);
  });

  it("takes the saddle and the strings as measured when they are", () => {
    const record = recordOf({ bridgeClearance: 0.2, saddleExposure: 3.05, stringHeight: 12.2 });
    const { heights } = outlookFrom(defaultInstrument, record);
    expect(heights.saddleExposure).toBeCloseTo(3.05, 12);
    expect(heights.stringHeight).toBeCloseTo(12.2, 12);
    expect(heights.bridgeClearance).toBeCloseTo(0.2, 12);
  });

  it("names the measurement to blame where it does not go with the rest", () => {
    const result = outlookOf(defaultInstrument, recordOf({ flatLength: 480 }));
    expect(result.ok ? "" : result.measurement).toBe("flatLength");
    const shim = outlookOf(defaultInstrument, recordOf({ shim: 180 }));
    expect(shim.ok ? "" : shim.measurement).toBe("shim");
  });

  it("says it in a sentence, planned beside predicted", () => {
    const record = recordOf({ gapAfter: plan.flatGap - 0.5 });
    const said = outlookSaid(
      outlookFrom(defaultInstrument, record),
      record,
      goalOf(defaultInstrument),
    );
    expect(sayPhrase(said, "mm")).toBe(
      "With what is measured, the saddle will stand 2.9 mm; planned 3.4 mm.",
    );
  });
});

describe("what a measurement should come to", () => {
  const expected = (
    record: Parameters<typeof expectedOf>[1],
    key: Parameters<typeof expectedOf>[2],
  ) => expectedOf(defaultInstrument, record, key);

  it("rests on what was measured before it, and on nothing after", () => {
    const forward = planned(aimedAt(defaultInstrument, "shim", 7.4)).flatGap;
    const record = recordOf({ shim: 7.4, gapAfter: 1, saddleExposure: 9 });
    expect(expected(record, "gapBefore")?.value).toBeCloseTo(forward, 9);
    expect(expected(record, "gapAfter")?.value).toBeCloseTo(forward, 9);
    expect(expected(record, "shim")?.value).toBeCloseTo(plan.shim ?? Number.NaN, 9);
  });

  it("is the station's depth for a side, and the stated number for what is made", () => {
    expect(expected(recordOf({}), "depthTail")?.value).toBeCloseTo(
      defaultInstrument.body.depthTail,
      6,
    );
    expect(expected(recordOf({}), "bridgeThickness")?.value).toBe(
      defaultInstrument.bridge.thickness,
    );
    expect(expected(recordOf({ actionBass: 2.5 }), "weekActionBass")?.value).toBe(2.5);
  });

  it("has a plus or minus made of the stated tolerances: halved with them, to a hundredth", () => {
    const shim = { "target.value": 0.1 };
    const only = { ...defaultInstrument, tolerances: shim };
    const within = (tolerance: number) =>
      expectedOf({ ...only, tolerances: { "target.value": tolerance } }, recordOf({}), "gapAfter")
        ?.within ?? Number.NaN;
    expect(within(0.1) / within(0.05)).toBeCloseTo(2, 2);
    // Half the shim at the saddle, as the ratio of the distances from the break has it.
    const breakX = plan.breakX ?? Number.NaN;
    const rough = (0.1 * (breakX - plan.saddleX)) / (breakX - 20);
    expect(within(0.1)).toBeGreaterThan(0.8 * rough);
    expect(within(0.1)).toBeLessThan(1.2 * rough);
  });
});
