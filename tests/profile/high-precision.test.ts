import { describe, expect, it, vi } from "vitest";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { presets } from "../../src/instrument/presets.ts";
import type { BreakProfile } from "../../src/profile/outcome.ts";
import { type Exact, exact } from "../support/high-precision.ts";
import { type PreciseChain, preciseInstrument } from "../support/precise.ts";
import { aimedAt, randomInstruments } from "../support/random-instrument.ts";
import { breakTargets, solved } from "../support/solved.ts";

/*
 * The core in double precision against a second derivation of the same geometry at 50 digits,
 * written apart from it. Nothing here knows how the core gets its answers.
 */

/** mm for lengths, degrees for angles. */
const agreed = 1e-9;

/** Fifty digits take their time on a busy machine. */
vi.setConfig({ testTimeout: 60_000 });

const instruments = [...presets, ...randomInstruments(24, 20261107)];

const named = instruments.map((instrument, i) => [`${i} ${instrument.name}`, instrument] as const);

function expectNear(what: string, actual: number, expected: Exact): void {
  const off = exact(actual).minus(expected).abs().toNumber();
  expect(off, `${what}: ${actual} against ${expected.toFixed(15)}`).toBeLessThanOrEqual(agreed);
}

function expectChain(profile: BreakProfile, chain: PreciseChain): void {
  const { stringExposure, ...single } = chain;
  for (const [name, expected] of Object.entries(single))
    expectNear(name, profile[name as keyof typeof single], expected);
  expect(profile.stringExposure).toHaveLength(stringExposure.length);
  stringExposure.forEach((expected, i) => {
    expectNear(`string ${i}`, profile.stringExposure[i] ?? Number.NaN, expected);
  });
}

it("draws every kind of instrument", () => {
  const kinds: readonly ((instrument: Instrument) => boolean)[] = [
    ({ dome }) => dome.dishRadius === null && dome.braceRadius === null,
    ({ dome }) => dome.dishRadius === null && dome.braceRadius !== null,
    ({ dome }) => dome.dishRadius !== null && dome.braceRadius === null,
    ({ dome }) => dome.dishRadius !== null && dome.braceRadius === dome.dishRadius,
    ({ dome }) => Number(dome.braceRadius) > Number(dome.dishRadius),
    ({ body }) => body.backRadius === null,
    ({ neck }) => neck.fingerboardRadius === null,
    ({ neck }) => neck.joinFret < 12,
    ({ neck }) => neck.joinFret === 12,
    ({ neck }) => neck.joinFret === 13,
    ({ neck }) => neck.joinFret === 14,
  ];
  expect(kinds.map((kind) => instruments.some(kind))).toEqual(kinds.map(() => true));
});

describe.each(named)("%s", (_, instrument) => {
  const precise = preciseInstrument(instrument);
  const shim = precise.shimForTarget();
  const rim = precise.rim(shim);

  it("agrees on everything along the centreline and at the strings", () => {
    expectChain(solved(instrument), precise.chain(shim));
  });

  it.each(breakTargets)("finds the same shim from a wanted %s", (kind) => {
    const wanted = precise.chain(shim)[kind].toDecimalPlaces(3).toNumber();
    const aimed = aimedAt(instrument, kind, wanted);
    expectChain(solved(aimed), precise.chain(preciseInstrument(aimed).shimForTarget()));
  });

  it("agrees on what comes off the rim and on the overrun", () => {
    const profile = solved(instrument);
    expectNear("rimOffset", profile.rimOffset, rim.rimOffset);
    expectNear("maxRemoval", profile.maxRemoval, rim.maxRemoval);
    expectNear("stockWidth", profile.stockWidth, rim.stockWidth);
    expectNear("overrunDepth", profile.overrunDepth, rim.overrunDepth);
    expectNear("overrunLength", profile.overrunLength, rim.overrunLength);
  });

  it("agrees on the thinnest shim with no overrun", () => {
    expectNear("cleanShim", solved(instrument).cleanShim ?? Number.NaN, precise.cleanShim());
  });

  it("agrees round the rim", () => {
    const stations = solved(instrument).stations.filter((_station, i) => i % 4 === 0);
    expect(stations.length).toBeGreaterThan(6);
    for (const { x, ...station } of stations) {
      const place = exact(x);
      expectNear(`half width at ${x}`, station.halfWidth, precise.outline.halfWidth(place));
      expectNear(`arc length at ${x}`, station.arcLength, precise.outline.arcLength(place));
      expectNear(`removal at ${x}`, station.removal, rim.removal(place));
      expectNear(`side depth at ${x}`, station.sideDepth, rim.sideDepth(place));
    }
  });
});

// A search within a search, and dear: two bodies are enough.
describe.each(instruments.slice(3, 5).map((instrument) => [instrument.name, instrument] as const))(
  "%s",
  (_, instrument) => {
    it("agrees on the smallest dish the domed rim fits in", () => {
      const { dishNeeded } = solved(instrument);
      expectNear("dishNeeded", dishNeeded, preciseInstrument(instrument).dishNeeded());
    });
  },
);
