import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { domeTilt } from "../../src/geometry/dome.ts";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { presets } from "../../src/instrument/presets.ts";
import { backZ } from "../../src/profile/back.ts";
import { rimZ } from "../../src/profile/rim.ts";
import { comesOffAt, sideOf } from "../../src/profile/side.ts";
import { cutRim, edgeHeight } from "../support/cut-rim.ts";
import { openWorkshop, uprightArea, type Workshop } from "../support/solid.ts";
import { planned } from "../support/solved.ts";

const [threeQuarter, , standard, , jumbo] = presets as [
  Instrument,
  Instrument,
  Instrument,
  Instrument,
  Instrument,
  Instrument,
];

/** Area between the two edges by Simpson's rule on many panels of each smooth stretch. */
function area({ corners, length, topAt, backAt }: ReturnType<typeof sideOf>): number {
  const ends = [...corners, length];
  let sum = 0;
  for (let i = 1; i < ends.length; i++) {
    const [a, b] = [ends[i - 1] ?? 0, ends[i] ?? 0];
    const panels = 200;
    const h = (b - a) / panels;
    for (let j = 0; j <= panels; j++) {
      // The break belongs to the flat; a hair inside, each stretch is one smooth curve.
      const s = Math.min(b - 1e-9, Math.max(a + 1e-9, a + j * h));
      const weight = j === 0 || j === panels ? 1 : j % 2 === 1 ? 4 : 2;
      if (b > a) sum += (weight * h * (backAt(s) - topAt(s))) / 3;
    }
  }
  return sum;
}

describe("the unrolled side", () => {
  const { givens, profile } = planned(standard);
  const side = sideOf(givens, profile);

  test("has the stations' own removal and depth", () => {
    for (const { arcLength, removal, sideDepth } of profile.stations) {
      expect(side.topAt(arcLength)).toBeCloseTo(removal + profile.rimOffset, 9);
      expect(side.backAt(arcLength)).toBeCloseTo(removal + profile.rimOffset + sideDepth, 9);
    }
  });

  test("is marked at tail seam, bouts, waist, break and both ends of the neck's straight", () => {
    const marks = new Map(side.marks.map(({ name, along }) => [name, along]));
    const { outline, breakX } = givens;
    const { lowerBoutAt, waistAt, upperBoutAt } = standard.body;
    expect([...marks.keys()].sort()).toEqual([
      ...["break", "lower bout", "neck centreline", "neck end"],
      ...["tail seam", "upper bout", "waist"],
    ]);
    expect(marks.get("tail seam")).toBe(0);
    expect(marks.get("lower bout")).toBeCloseTo(outline.arcLength(lowerBoutAt), 9);
    expect(marks.get("waist")).toBeCloseTo(outline.arcLength(waistAt), 9);
    expect(marks.get("upper bout")).toBeCloseTo(outline.arcLength(upperBoutAt), 9);
    expect(marks.get("break")).toBeCloseTo(outline.arcLength(breakX), 9);
    expect(marks.get("neck end")).toBeCloseTo(side.corner, 9);
    expect(marks.get("neck centreline")).toBeCloseTo(side.length, 9);
  });

  test("goes on along the straight to the middle of the neck end", () => {
    expect(side.length - side.corner).toBeCloseTo(standard.body.neckEndWidth / 2, 12);
    expect(side.topAt(side.length)).toBeCloseTo(side.topAt(side.corner), 12);
    // The back falls to the middle by the sagitta of its own cross section there.
    const { backRadius, neckEndWidth, depthNeck } = standard.body;
    const fall = side.backAt(side.length) - side.backAt(side.corner);
    const level = (neckEndWidth / 2) ** 2 / (2 * (backRadius ?? 1));
    // A little more, since the back leans there.
    expect(fall / level).toBeGreaterThan(1);
    expect(fall / level).toBeLessThan(1.01);
    expect(side.backAt(side.corner) - side.topAt(side.corner)).toBeCloseTo(depthNeck, 9);
  });

  test("needs a strip as wide as its deepest place", () => {
    expect(side.deepest.under).toBeCloseTo(profile.stockWidth, 9);
    for (let s = 0; s <= side.length; s += 0.5)
      expect(side.backAt(s)).toBeLessThanOrEqual(side.deepest.under + 1e-9);
    expect(side.backAt(side.deepest.along)).toBeCloseTo(side.deepest.under, 9);
  });

  test("needs a wider strip for the middle of the neck end, where a round back lies deepest there", () => {
    const { body } = threeQuarter;
    const deep = planned({
      ...threeQuarter,
      body: { ...body, depthNeck: body.depthTail + 15, backRadius: 3000 },
    });
    const round = sideOf(deep.givens, deep.profile);
    expect(round.deepest.along).toBe(round.length);
    expect(deep.profile.stockWidth).toBe(round.deepest.under);
    expect(deep.profile.stockWidth).toBeCloseTo(round.backAt(round.length), 9);
    expect(deep.profile.stockWidth).toBeGreaterThan(round.backAt(round.corner) + 0.1);
  });

  test("nothing is cut above the level edge, and the least touches it or the offset", () => {
    for (const instrument of presets) {
      const { givens, profile } = planned(instrument);
      let least = Number.POSITIVE_INFINITY;
      for (let x = 0; x <= instrument.body.length; x += 0.25)
        least = Math.min(least, comesOffAt(givens, profile, x, givens.outline.halfWidth(x)));
      expect(least).toBeGreaterThan(-1e-9);
      expect(
        comesOffAt(
          givens,
          profile,
          profile.leastRemovalX,
          givens.outline.halfWidth(profile.leastRemovalX),
        ),
      ).toBeLessThanOrEqual(least + 1e-9);
      if (profile.rimOffset > 0)
        expect(
          comesOffAt(
            givens,
            profile,
            profile.leastRemovalX,
            givens.outline.halfWidth(profile.leastRemovalX),
          ),
        ).toBeCloseTo(0, 7);
    }
  });
});

describe("the back edge", () => {
  // From the sphere's own top, 200 mm along and 250 mm across under a radius of 4572: 11.223 mm on the
  // sphere; the two one-way drops added give 11.217 (the method of richardarnoldguitars.com,
  // side-height-for-domed-backs.html, with r − √(r² − x²) worked by hand).
  test("falls as a sphere of its radius falls, two ways at once", () => {
    const { profile } = planned({
      ...standard,
      body: { ...standard.body, backRadius: 4572 },
    });
    // κ(x − cx) is 0 over the middle of the sphere and grows by κ for each mm.
    const middle = -domeTilt(profile.back, 0) / profile.back.curvature;
    const drop = backZ(profile.back, middle + 200, 250) - backZ(profile.back, middle, 0);
    expect(drop).toBeCloseTo(11.223, 3);
    const along = backZ(profile.back, middle + 200, 0) - backZ(profile.back, middle, 0);
    const across = backZ(profile.back, middle, 250) - backZ(profile.back, middle, 0);
    expect(along + across).toBeCloseTo(11.217, 3);
  });

  // r 7620, x 250: 4.102 mm, from the same page's method.
  test("one way", () => {
    const { profile } = planned({
      ...standard,
      body: { ...standard.body, backRadius: 7620 },
    });
    const middle = -domeTilt(profile.back, 0) / profile.back.curvature;
    const drop = backZ(profile.back, middle, 250) - backZ(profile.back, middle, 0);
    expect(drop).toBeCloseTo(4.102, 3);
  });
});

describe("against a body cut as a solid", () => {
  let shop: Workshop;
  beforeAll(async () => {
    shop = await openWorkshop();
  });
  afterAll(() => shop.close());
  const fineness = { chords: 160, facet: 6 };

  test.each([threeQuarter, standard, jumbo])(
    "$name: the pattern has the side faces' area",
    (instrument) => {
      const { givens, profile } = planned(instrument);
      const rim = cutRim(shop, instrument, profile.shim, fineness);
      const { length } = instrument.body;
      const back = (x: number, y: number) => backZ(profile.back, x, y);
      const beyond = { breakX: length + 1, halfWidth: givens.outline.widest + 5, facet: 6 };
      const underBack = shop.subtract(rim.level, shop.dishCut(back, beyond));
      // Both bodies stand on the same level foot: what is left between their upper edges is the two sides.
      const sides = uprightArea(rim.boarded) - uprightArea(underBack);
      expect(Math.abs((2 * area(sideOf(givens, profile))) / sides - 1)).toBeLessThan(5e-5);
    },
  );

  test.each([threeQuarter, standard, jumbo])(
    "$name: what comes off at the stations",
    (instrument) => {
      const { givens, profile } = planned(instrument);
      const rim = cutRim(shop, instrument, profile.shim, fineness);
      const pitch = (profile.pitch * Math.PI) / 180;
      for (const { x, removal, zone } of profile.stations) {
        if (x < 1 || x > instrument.body.length - 1) continue;
        if (zone === "dome" && rimZ(givens, profile.dome, x, givens.outline.halfWidth(x)) > 0)
          continue;
        // The datum turned about the break, less the edge as cut, square to the datum.
        const cut = edgeHeight(shop, rim.boarded, x);
        const off = (x - rim.breakX) * Math.sin(pitch) - cut * Math.cos(pitch);
        expect(Math.abs(off - removal)).toBeLessThan(rim.dishSag + 0.01);
      }
    },
  );
});
