import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { defaultInstrument } from "../../src/instrument/default-instrument.ts";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { presets } from "../../src/instrument/presets.ts";
import { benchRun, type Fineness } from "../support/cut-rim.ts";
import { aimedAt } from "../support/random-instrument.ts";
import { areaMeasure, type Measure, measuresOf } from "../support/rim-measures.ts";
import { openWorkshop, type Workshop } from "../support/solid.ts";
import { solved } from "../support/solved.ts";

/*
 * The core against wood, as near as facets come to it: a body is cut with the dish's sphere and with the
 * board by a solid modelling kernel, and the cut solid is measured. The sphere is placed by rocking
 * it on the break until the shim fits; no formula of the core's is used. Facets are inscribed, so the
 * differences are bounded by the facets' own sag and must fall with the square of their size.
 */

const coarse: Fineness = { chords: 16, facet: 16 };
const middling: Fineness = { chords: 32, facet: 8 };
const fine: Fineness = { chords: 64, facet: 4 };

const shaped = (dome: Partial<Instrument["dome"]>, contact: number, shim: number): Instrument =>
  aimedAt(
    {
      ...defaultInstrument,
      dome: { ...defaultInstrument.dome, ...dome },
      shim: { ...defaultInstrument.shim, contact },
    },
    "shim",
    shim,
  );

const clear = shaped({}, 20, 7.5);
const overrunning = shaped({}, 20, 5.5);
const tight = shaped({ dishRadius: 4572, braceRadius: 4572, tailExtra: 1 }, 0, 9);
const plain = shaped({ dishRadius: null, braceRadius: null }, 20, 7);

/** Fine facets take their time on a busy machine. */
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

let shop: Workshop;
beforeAll(async () => {
  shop = await openWorkshop();
});
afterAll(() => shop.close());

const off = ({ solid, core }: Measure): number => Math.abs(solid - core);

function expectWithin(measures: readonly Measure[]): void {
  for (const measure of measures) {
    const { what, solid, core, bound } = measure;
    expect(off(measure), `${what}: solid ${solid}, core ${core}`).toBeLessThanOrEqual(bound);
  }
}

const worst = (measures: readonly Measure[], what: string): number =>
  Math.max(...measures.filter((measure) => measure.what.startsWith(what)).map(off));

describe.each([
  ["a 28 ft dish and a shim that clears", clear],
  ["a 28 ft dish and a shim so thin that the board overruns", overrunning],
  ["a 15 ft dish held down at the tail, on a shim flush with the tail end", tight],
])("%s", (_, instrument) => {
  const profile = solved(instrument, 10);
  let byFineness: Measure[][];
  beforeAll(() => {
    byFineness = [coarse, middling, fine].map((f) => measuresOf(shop, instrument, profile, f));
  });

  it("measures as the core says, within what its facets may do", () => {
    for (const measures of byFineness) {
      expect(measures.length).toBeGreaterThan(60);
      expectWithin(measures);
    }
  });

  it("differs less as facets grow in number, with the square of their size", () => {
    const [first = 0, second = 0, third = 0] = byFineness.map((m) => worst(m, "removal"));
    expect(first / second).toBeGreaterThan(2.5);
    expect(second / third).toBeGreaterThan(2.5);
    expect(first / third).toBeGreaterThan(10);
    if (profile.overrunLength === 0) return;
    const [long = 0, , short = 0] = byFineness.map((m) => worst(m, "overrunLength"));
    expect(long / short).toBeGreaterThan(6);
  });
});

describe("no dome", () => {
  it("is cut by planes alone, and measures as the core says to rounding", () => {
    const measures = measuresOf(shop, plain, solved(plain, 10), coarse);
    expectWithin(measures);
    for (const { what, bound } of measures) expect(bound, what).toBeLessThan(2e-5);
  });
});

describe("the sides", () => {
  it("lose the area that the core's removal and arc length make", () => {
    const profile = solved(clear, 1);
    const [first, last] = [coarse, fine].map((f) => areaMeasure(shop, clear, profile, f)) as [
      Measure,
      Measure,
    ];
    expectWithin([first, last]);
    expect(off(first) / off(last)).toBeGreaterThan(8);
  });
});

describe("the order of work, with sides square to the level edge", () => {
  // The core takes the outline in plan on the flat; at the bench it is square to the level rim. What that leaves out:
  it.each([
    ["a 28 ft dish", clear],
    ["a 15 ft dish", tight],
    ["no dome", plain],
  ])("parts from the core by no more than 0.004 mm and 0.0005 degrees: %s", (_, instrument) => {
    const profile = solved(instrument, 25);
    const bench = benchRun(shop, instrument, profile.shim, fine);
    expect(Math.abs(bench.pitch - profile.pitch)).toBeLessThan(5e-4);
    expect(Math.abs(bench.tailDrop - profile.tailDrop)).toBeLessThan(4e-3);
    expect(Math.abs(bench.flatGap - profile.flatGap)).toBeLessThan(4e-3);
    const neckEnd = profile.stations.at(-1)?.removal ?? Number.NaN;
    expect(Math.abs(bench.neckRemoval - neckEnd)).toBeLessThan(4e-3);
  });

  it.each(presets.map((preset) => [preset.name, preset] as const))(
    "parts from the core's pitch by no more than 0.0005 degrees: %s",
    (_, preset) => {
      const profile = solved(preset, 25);
      const bench = benchRun(shop, preset, profile.shim, fine);
      expect(Math.abs(bench.pitch - profile.pitch)).toBeLessThan(5e-4);
    },
  );
});
