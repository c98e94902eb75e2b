import { describe, expect, test } from "vitest";
import { defaultInstrument } from "../../src/instrument/default-instrument.ts";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { presets } from "../../src/instrument/presets.ts";
import { profileOf } from "../../src/profile/profile.ts";
import { saddlePlaceX, stringsAcross } from "../../src/profile/strings.ts";
import { exact } from "../support/high-precision.ts";
import { preciseInstrument } from "../support/precise.ts";
import { randomInstruments } from "../support/random-instrument.ts";
import { aimed, numbersOf, onSeat, solved } from "../support/solved.ts";

const base = defaultInstrument;

/** Fanned, slanted, in pairs or not, and settling, by a fixed rule. */
function unevenly(instrument: Instrument, i: number): Instrument {
  const pairs = i % 2 === 0;
  const count = pairs ? 4 + 2 * (i % 5) : instrument.strings.count;
  return {
    ...instrument,
    neck: { ...instrument.neck, fan: ((i * 37) % 90) - 30, fanFret: (i * 5) % 16 },
    bridge: { ...instrument.bridge, slant: ((i * 11) % 12) - 4 },
    strings: {
      ...instrument.strings,
      count,
      pairGap: pairs ? 1.5 + (i % 3) / 2 : 0,
      settling: (i % 7) / 5 - 0.2,
    },
  };
}

const uneven = randomInstruments(24, 77).map(unevenly);

describe("strings of all kinds", () => {
  test.each(uneven.map((one, i) => [i, one] as const))(
    "stand over the bridge as at 50 digits: %i",
    (_, instrument) => {
      const result = profileOf(instrument);
      if (!result.ok) expect.fail(JSON.stringify(result.refusal));
      const { profile } = result;
      const precise = preciseInstrument(instrument).chain(exact(instrument.target.value));
      const off = (value: number, of: { toNumber(): number }): number =>
        Math.abs(value - of.toNumber());
      expect(off(profile.stringHeight, precise.stringHeight)).toBeLessThan(1e-9);
      expect(off(profile.saddleExposure, precise.saddleExposure)).toBeLessThan(1e-9);
      expect(off(profile.breakAngle, precise.breakAngle)).toBeLessThan(1e-9);
      expect(profile.stringExposure).toHaveLength(instrument.strings.count);
      profile.stringExposure.forEach((exposure, i) => {
        const expected = precise.stringExposure[i];
        if (expected === undefined) throw new Error("a string is missing");
        expect(off(exposure, expected)).toBeLessThan(1e-9);
      });
    },
  );

  test("without fan, slant, pairs and settling, are what they were, whatever the square fret", () => {
    for (const instrument of presets) {
      const plain = {
        ...instrument,
        neck: { ...instrument.neck, fan: 0, fanFret: 12 },
        bridge: { ...instrument.bridge, slant: 0 },
        strings: { ...instrument.strings, pairGap: 0, settling: 0 },
      };
      const again = { ...plain, neck: { ...plain.neck, fanFret: 0 } };
      expect(numbersOf(solved(again))).toEqual(numbersOf(solved(plain)));
    }
  });

  test("keep the centreline where it was: a fan and a slant move the outer strings alone", () => {
    for (const instrument of randomInstruments(10, 5)) {
      const fanned = {
        ...instrument,
        neck: { ...instrument.neck, fan: 40, fanFret: 8 },
        bridge: { ...instrument.bridge, slant: 3 },
      };
      const [before, after] = [solved(instrument), solved(fanned)];
      for (const key of [
        "saddleX",
        "flatGap",
        "stringHeight",
        "saddleExposure",
        "breakAngle",
      ] as const)
        expect(after[key]).toBe(before[key]);
      expect(saddlePlaceX(fanned, 0.5)).toBe(before.saddleX);
    }
  });

  test("of a fan cross the square fret level with the centreline, and end a scale from their own nut", () => {
    const instrument = {
      ...base,
      neck: { ...base.neck, fan: 50, fanFret: 9 },
      bridge: { ...base.bridge, compensation: 0 },
    };
    const [bass, treble] = [stringsAcross(instrument)[0], stringsAcross(instrument).at(-1)];
    if (bass === undefined || treble === undefined) throw new Error("no strings");
    const { scale } = instrument.neck;
    expect(bass.nut[0] - bass.saddle[0]).toBeCloseTo(scale + 25, 9);
    expect(treble.nut[0] - treble.saddle[0]).toBeCloseTo(scale - 25, 9);
    // Fret 9 of each, marked off its own scale, stands at one x.
    const fret9 = ({ saddle: [x] }: typeof bass, own: number) => x + own * 2 ** (-9 / 12);
    expect(fret9(bass, scale + 25)).toBeCloseTo(fret9(treble, scale - 25), 9);
  });

  test("in pairs keep the outer strings where they were, each pair its gap apart", () => {
    const eight = presets.find(({ strings }) => strings.count === 8);
    if (eight === undefined) throw new Error("no four courses");
    const paired = { ...eight, strings: { ...eight.strings, pairGap: 2.5 } };
    const ys = stringsAcross(paired).map(({ saddle: [, y] }) => y);
    const { spreadSaddle } = eight.strings;
    expect(ys[0]).toBeCloseTo(spreadSaddle / 2, 12);
    expect(ys.at(-1)).toBeCloseTo(-spreadSaddle / 2, 12);
    for (let i = 0; i < 8; i += 2) expect((ys[i] ?? 0) - (ys[i + 1] ?? 0)).toBeCloseTo(2.5, 12);
    expect((ys[0] ?? 0) - (ys[2] ?? 0)).toBeCloseTo((ys[4] ?? 0) - (ys[6] ?? 0), 12);
  });
});

describe("settling under tension", () => {
  const methods = [base, onSeat(aimed(base, "stringHeight", 12.5))];

  test.each(methods.map((one) => [one.dome.method, one] as const))(
    "on a %s lowers what is made with strings on, and nothing that is measured without",
    (_, instrument) => {
      const kind = instrument.dome.method === "break" ? "shim" : "spacer";
      const still = profileOf(aimed(instrument, kind, 4));
      const settled = profileOf({
        ...aimed(instrument, kind, 4),
        strings: { ...instrument.strings, settling: 0.8 },
      });
      if (!still.ok || !settled.ok) throw new Error("no plan");
      const [before, after] = [still.profile, settled.profile];
      for (const key of ["flatGap", "projection", "bridgeClearance", "pitch"] as const)
        expect(after[key]).toBe(before[key]);
      expect(after.stringHeight).toBeCloseTo(before.stringHeight - 0.8, 12);
      expect(after.saddleExposure).toBeCloseTo(before.saddleExposure - 0.8, 12);
      after.stringExposure.forEach((exposure, i) => {
        expect(exposure).toBeCloseTo((before.stringExposure[i] ?? 0) - 0.8, 12);
      });
    },
  );

  test("is met by a target: the strings come to where they are wanted once settled", () => {
    for (const kind of ["saddleExposure", "stringHeight"] as const) {
      const wanted = aimed(base, kind, kind === "stringHeight" ? 12.2 : 3.6);
      const plan = solved({ ...wanted, strings: { ...wanted.strings, settling: 0.6 } });
      expect(plan[kind]).toBeCloseTo(wanted.target.value, 9);
      expect(plan.shim).toBeGreaterThan(solved(wanted).shim);
    }
  });
});

describe("strings that do not fit are refused, with what does", () => {
  const refused = (instrument: Instrument) => {
    const result = profileOf(instrument);
    if (result.ok) throw new Error("not refused");
    return result.refusal;
  };

  test("pairs of an odd number of strings, or no longer apart", () => {
    const odd = refused({ ...base, strings: { ...base.strings, count: 7, pairGap: 2 } });
    expect([odd.field, odd.nearest]).toEqual(["strings.pairGap", 0]);
    const wide = refused({ ...base, strings: { ...base.strings, count: 12, pairGap: 9 } });
    expect(wide.field).toBe("strings.pairGap");
    expect(wide.nearest).toBeCloseTo(base.strings.spreadNut / 6, 6);
  });

  test("a saddle that leaves the domed top at one end", () => {
    const places = { length: 310, lowerBoutAt: 90, waistAt: 170, upperBoutAt: 250 };
    const short = { ...base, body: { ...base.body, ...places } };
    const slanted = refused({ ...short, bridge: { ...short.bridge, slant: 50 } });
    expect(slanted.field).toBe("bridge.slant");
    const fanned = refused({ ...short, neck: { ...short.neck, fan: 80, fanFret: 4 } });
    expect(fanned.field).toBe("neck.fan");
    for (const [field, nearest, instrument] of [
      ["bridge", slanted.nearest, short],
      ["neck", fanned.nearest, short],
    ] as const) {
      if (nearest === null) throw new Error("nothing offered");
      const mended =
        field === "bridge"
          ? { ...instrument, bridge: { ...instrument.bridge, slant: nearest } }
          : { ...instrument, neck: { ...instrument.neck, fan: nearest, fanFret: 4 } };
      expect(profileOf(mended).ok).toBe(true);
      expect(saddlePlaceX(mended, 0)).toBeLessThan(1);
    }
  });
});
