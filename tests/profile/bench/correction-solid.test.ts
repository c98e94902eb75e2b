import type { Vec3 } from "manifold-3d";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import type { Instrument } from "../../../src/instrument/instrument.ts";
import { correctionOf } from "../../../src/profile/bench/correction.ts";
import type { Remedy, RemedyId } from "../../../src/profile/bench/remedy.ts";
import { outlookFrom, recordOf } from "../../support/bench-record.ts";
import { type CutRim, cutRim, edgeHeight, type Fineness } from "../../support/cut-rim.ts";
import { meetingOf, openWorkshop, topOf, type Workshop } from "../../support/solid.ts";

/*
 * Re-sanding against wood: the rim is cut by dish and board as it was sanded, laid on the board again with the
 * remedy's shim, turned about the break or the neck end until that shim fits, and cut once more. What is
 * then measured owes nothing to the remedy's own formulas. Facets are inscribed: the differences
 * are bounded by their sag, and fall with it.
 */

const coarse: Fineness = { chords: 16, facet: 16 };
const fine: Fineness = { chords: 64, facet: 4 };

let shop: Workshop;
beforeAll(async () => {
  shop = await openWorkshop();
});
afterAll(() => shop.close());

interface Resanded {
  readonly gap: number;
  readonly off: number;
  readonly flatLength: number;
  readonly sag: number;
}

/** The rim on the board again: the plane through (pivotX, 0) leaning until the shim fits at the contact. */
function again(instrument: Instrument, rim: CutRim, pivotX: number, shim: number): Resanded {
  const { length } = instrument.body;
  const saddleX = length - toSaddle(instrument);
  /** Square to the board leaning by `lean`, from the board `tailward` mm along it, down to the domed top. */
  const clear = (tailward: number, lean: number): number => {
    const on: Vec3 = [pivotX - tailward * Math.cos(lean), 0, -tailward * Math.sin(lean)];
    const down: Vec3 = [Math.sin(lean), 0, -Math.cos(lean)];
    const at = (d: number): Vec3 => [on[0] + down[0] * d, 0, on[2] + down[2] * d];
    const met = meetingOf(rim.dished, at(-20), at(60));
    return (met[0] - on[0]) * down[0] + (met[2] - on[2]) * down[2];
  };
  const toContact = pivotX - Math.min(instrument.shim.contact, instrument.shim.tailBlockDepth);
  const lean = halved((angle) => shim - clear(toContact, angle), -0.02, 0.02);
  const cut = shop.boardCut(rim.boarded, pivotX, lean);
  const where = pivotX === length ? rim.breakX : length - 1e-6;
  const off = (topOf(rim.boarded, where, 0) - topOf(cut, where, 0)) * Math.cos(lean);
  const over = (x: number): number =>
    edgeHeight(shop, rim.dished, x) - (x - pivotX) * Math.tan(lean);
  const newBreak =
    pivotX === length ? halved(over, rim.breakX - 90, rim.breakX - 1e-6) : rim.breakX;
  return {
    gap: clear(pivotX - saddleX, lean),
    off,
    flatLength: length - newBreak,
    sag: rim.dishSag,
  };
}

const toSaddle = ({ neck, bridge }: Instrument): number =>
  neck.scale * 2 ** (-neck.joinFret / 12) + bridge.compensation;

/** Where a rising function crosses zero, by halves. */
function halved(f: (x: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let turn = 0; turn < 50; turn++) {
    const middle = (low + high) / 2;
    if (f(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function remedyFor(instrument: Instrument, shim: number, id: RemedyId) {
  const record = recordOf({ shim }, ["flat"]);
  const outlook = outlookFrom(instrument, record);
  const { remedies } = correctionOf(outlook, record, "bridgeClearance");
  const found = remedies.find((one) => one.ok && one.remedy.id === id);
  if (!found?.ok) throw new Error(JSON.stringify(remedies));
  return { remedy: found.remedy, wantedGap: outlook.plan.flatGap };
}

const shimIn = ({ changes }: Remedy): number =>
  changes.find(({ path }) => path === "target.value")?.value ?? Number.NaN;

const tight: Instrument = {
  ...defaultInstrument,
  dome: { ...defaultInstrument.dome, dishRadius: 6096, braceRadius: 6096 },
};

describe.each([
  ["a 28 ft dish", defaultInstrument],
  ["a 20 ft dish", tight],
])("%s", (_, instrument) => {
  it("re-sanded about the break, gets the gap wanted, for the wood named", {
    timeout: 120_000,
  }, () => {
    const planned = outlookFrom(instrument, recordOf({})).plan.shim ?? Number.NaN;
    const used = planned - 1;
    const { remedy, wantedGap } = remedyFor(instrument, used, "flat-about-break");
    const errors = [coarse, fine].map((fineness) => {
      const rim = cutRim(shop, instrument, used, fineness);
      const found = again(instrument, rim, rim.breakX, shimIn(remedy));
      expect(Math.abs(found.gap - wantedGap)).toBeLessThan(2 * found.sag + 5e-4);
      expect(Math.abs(found.off - remedy.amount)).toBeLessThan(found.sag + 5e-4);
      return Math.abs(found.gap - wantedGap);
    });
    expect(errors[1]).toBeLessThan(1.5e-3);
    // And it has moved: what is measured is not what was there before.
    expect(remedy.raise).toBeGreaterThan(0.4);
  });

  it("re-sanded about the neck end, likewise, and the break moves where it was said to", {
    timeout: 120_000,
  }, () => {
    const planned = outlookFrom(instrument, recordOf({})).plan.shim ?? Number.NaN;
    const used = planned + 0.6;
    const { remedy, wantedGap } = remedyFor(instrument, used, "flat-about-neck-end");
    const flatLength = remedy.changes.find(({ path }) => path === "dome.flatLength")?.value ?? 0;
    for (const fineness of [coarse, fine]) {
      const rim = cutRim(shop, instrument, used, fineness);
      const found = again(instrument, rim, instrument.body.length, shimIn(remedy));
      expect(Math.abs(found.gap - wantedGap)).toBeLessThan(2 * found.sag + 5e-4);
      expect(Math.abs(found.off - remedy.amount)).toBeLessThan(found.sag + 5e-4);
      // The edge falls away from the flat by some 3 in 100 there: a height is that much farther along.
      expect(Math.abs(found.flatLength - flatLength)).toBeLessThan((2 * found.sag + 5e-4) / 0.01);
    }
    expect(flatLength).toBeGreaterThan(instrument.dome.flatLength + 5);
  });
});
