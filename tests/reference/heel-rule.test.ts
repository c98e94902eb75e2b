import { describe, expect, it } from "vitest";
import { defaultInstrument } from "../../src/instrument/default-instrument.ts";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { correctionOf } from "../../src/profile/bench/correction.ts";
import { heelOff } from "../../src/profile/bench/remedy-neck.ts";
import { outlookFrom, recordOf } from "../support/bench-record.ts";
import { randomInstruments } from "../support/random-instrument.ts";

/*
 * Wood off the heel's tip = error at the saddle × heel length / (body join to saddle): similar triangles, exact;
 * the rule of thumb of neck resets, common practice. Here it is held against turning the neck
 * about the heel's shoulder by that wood, and asking where the fret plane then passes the saddle.
 */

/** Rise of the fret plane at the saddle when the heel face turns about its shoulder until its tip has come in by `off`. */
function riseFor({ neck, bridge }: Instrument, off: number): number {
  const turn = Math.atan(off / neck.heelLength);
  const joinToSaddle = neck.scale * 2 ** (-neck.joinFret / 12) + bridge.compensation;
  return joinToSaddle * Math.tan(turn);
}

describe("the heel rule", () => {
  it("holds on instruments of all kinds, both ways", () => {
    for (const instrument of [defaultInstrument, ...randomInstruments(20, 31)])
      for (const error of [0.2, 1, 2.5]) {
        const { flatGap } = outlookFrom(instrument, recordOf({})).heights;
        for (const way of [1, -1]) {
          const record = recordOf({ gapAfter: flatGap - way * error }, ["gap"]);
          const outlook = outlookFrom(instrument, record);
          const { remedies } = correctionOf(outlook, record, "bridgeClearance");
          const id = way > 0 ? "heel-tip" : "heel-shoulder";
          const remedy = remedies.find((one) => one.ok && one.remedy.id === id);
          const off = remedy?.ok ? remedy.remedy.amount : Number.NaN;
          expect(riseFor(instrument, off)).toBeCloseTo(error, 9);
        }
      }
  });

  it("by hand: 2 mm at the saddle, a 100 mm heel, 290 mm from join to saddle, 0.69 mm off the tip", () => {
    const { instrument, givens, ...made } = outlookFrom(defaultInstrument, recordOf({}));
    const shaped = { ...instrument, neck: { ...instrument.neck, heelLength: 100 } };
    const placed = { ...givens, saddleX: instrument.body.length - 290 };
    const off = heelOff({ ...made, instrument: shaped, givens: placed }, 2);
    expect(off).toBeCloseTo(200 / 290, 12);
  });
});
