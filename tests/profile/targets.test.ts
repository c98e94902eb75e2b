import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { targetIn } from "../../src/profile/outcome.ts";
import { profileOf } from "../../src/profile/profile.ts";
import { even } from "../geometry/even.ts";
import {
  aimed,
  breakTargets,
  instrumentFrom,
  numbersOf,
  refused,
  solved,
  withShim,
} from "../support/solved.ts";
import { anyInstrument } from "./any-instrument.ts";
import { builderInstrument } from "./builder-instrument.ts";

fc.configureGlobal({ seed: 20261125 });

describe.each(breakTargets)("asked for a %s", { timeout: 30_000 }, (kind) => {
  it("gives it, to 1e-9", () => {
    fc.assert(
      fc.property(builderInstrument, even(0, 1), (instrument, share) => {
        const [low, high] = solved(instrument).reachable[kind];
        const wanted = low + (high - low) * share;
        expect(Math.abs(solved(aimed(instrument, kind, wanted))[kind] - wanted)).toBeLessThan(1e-9);
      }),
      { numRuns: 100 },
    );
  });

  it("that a shim brings, gives back that shim to 1e-9 mm", () => {
    fc.assert(
      fc.property(builderInstrument, (instrument) => {
        const { target } = instrument;
        const outcome = solved(instrument)[kind];
        expect(Math.abs(solved(aimed(instrument, kind, outcome)).shim - target.value)).toBeLessThan(
          1e-9,
        );
      }),
      { numRuns: 150 },
    );
  });

  it("that is already so, leaves every number of the profile where it was, to 1e-9", () => {
    fc.assert(
      fc.property(builderInstrument, (instrument) => {
        const before = solved(instrument);
        const after = numbersOf(solved(aimed(instrument, kind, before[kind])));
        // Where a peak is flat or a crossing shallow its place is less sure than its height.
        const unsure =
          /^(maxRemovalX|leastRemovalX|maxRemovalArc|leastRemovalArc|dishUndercutX|overrunLength)$/;
        for (const [path, number] of numbersOf(before)) {
          const off = Math.abs((after.get(path) ?? Number.NaN) - number);
          expect(off, path).toBeLessThan(unsure.test(path) ? 1e-3 : 1e-9);
        }
      }),
      { numRuns: 100 },
    );
  });
});

describe("a thicker shim", { timeout: 30_000 }, () => {
  const pair = fc.record({
    instrument: builderInstrument,
    thin: even(0, 20),
    more: even(0.001, 20),
  });

  it("drops the tail, steepens the pitch and lifts everything at the saddle; the heel closes", () => {
    fc.assert(
      fc.property(pair, ({ instrument, thin, more }) => {
        const [less, thick] = [
          solved(withShim(instrument, thin)),
          solved(withShim(instrument, thin + more)),
        ];
        const rising = [
          "tailDrop",
          "chordPitch",
          "pitch",
          "flatGap",
          "projection",
          "bridgeClearance",
          "stringHeight",
          "saddleExposure",
          "breakAngle",
        ] as const;
        for (const name of rising) expect(thick[name], name).toBeGreaterThan(less[name]);
        expect(thick.heelAngle).toBeLessThan(less.heelAngle);
        thick.stringExposure.forEach((exposure, i) => {
          expect(exposure).toBeGreaterThan(less.stringExposure[i] ?? Number.NaN);
        });
      }),
      { numRuns: 150 },
    );
  });

  it("never makes the flat run farther or cut deeper", () => {
    fc.assert(
      fc.property(pair, ({ instrument, thin, more }) => {
        const [less, thick] = [
          solved(withShim(instrument, thin)),
          solved(withShim(instrument, thin + more)),
        ];
        expect(thick.overrunLength).toBeLessThanOrEqual(less.overrunLength + 1e-9);
        expect(thick.overrunDepth).toBeLessThanOrEqual(less.overrunDepth + 1e-12);
      }),
      { numRuns: 150 },
    );
  });

  it("changes nothing that only the instrument fixes", () => {
    fc.assert(
      fc.property(pair, ({ instrument, thin, more }) => {
        const [less, thick] = [
          solved(withShim(instrument, thin)),
          solved(withShim(instrument, thin + more)),
        ];
        const fixed = [
          "breakX",
          "breakHalfWidth",
          "saddleX",
          "fingerboardEndX",
          "dishNeeded",
          "cleanShim",
        ] as const;
        for (const name of fixed) expect(thick[name]).toBe(less[name]);
        expect(thick.reachable).toEqual(less.reachable);
      }),
      { numRuns: 50 },
    );
  });
});

describe("at a given shim", () => {
  const change = fc.record({
    instrument: builderInstrument,
    by: even(0.01, 5),
  });

  it("a thicker fingerboard lifts the strings by as much, and a thicker bridge takes it from the saddle", () => {
    fc.assert(
      fc.property(change, ({ instrument, by }) => {
        const { neck, bridge } = instrument;
        const plain = solved(instrument);
        const board = solved({
          ...instrument,
          neck: { ...neck, fingerboardThickness: neck.fingerboardThickness + by },
        });
        const thick = solved({
          ...instrument,
          bridge: { ...bridge, thickness: bridge.thickness + by },
        });
        expect(board.stringHeight - plain.stringHeight).toBeCloseTo(by, 9);
        expect(thick.saddleExposure - plain.saddleExposure).toBeCloseTo(-by, 9);
        expect(thick.stringHeight).toBe(plain.stringHeight);
      }),
      { numRuns: 100 },
    );
  });

  it("a dish that takes more off the tail lowers the pitch and moves nothing at the saddle", () => {
    fc.assert(
      fc.property(change, ({ instrument, by }) => {
        const { dome } = instrument;
        const plain = solved(instrument);
        const deep = solved({ ...instrument, dome: { ...dome, tailExtra: dome.tailExtra + by } });
        expect(deep.pitch).toBeLessThan(plain.pitch);
        expect(deep.saddleExposure).toBe(plain.saddleExposure);
        expect(deep.chordPitch).toBe(plain.chordPitch);
      }),
      { numRuns: 100 },
    );
  });
});

describe("an instrument at its fields' limits", { timeout: 120_000 }, () => {
  it("meets its target to 1e-6, or is refused", () => {
    let met = 0;
    fc.assert(
      fc.property(anyInstrument, (instrument) => {
        const { kind, value } = instrument.target;
        const result = profileOf(instrument);
        if (!result.ok) return;
        met++;
        expect(Math.abs((targetIn(result.profile, kind) ?? Number.NaN) - value)).toBeLessThan(1e-6);
      }),
      { numRuns: 2000 },
    );
    expect(met).toBeGreaterThan(500);
  });

  it("meets what lies anywhere within its reach, its ends too, with braces flatter than a dish hardly wider than the body", () => {
    const body = {
      length: 400,
      lowerBoutAt: 100,
      waistWidth: 1500,
      waistAt: 237,
      upperBoutAt: 330,
    };
    const tight = instrumentFrom({
      body,
      dome: { dishRadius: 1535.3443, flatLength: 185 },
      neck: { scale: 672, joinFret: 11 },
      target: { kind: "shim", value: 10 },
    });
    const { reachable } = solved(tight);
    expect(refused(aimed(tight, "bridgeClearance", -3))).toMatchObject({
      field: "target.value",
      nearest: reachable.bridgeClearance[1],
    });
    for (const kind of breakTargets) {
      const [low, high] = reachable[kind];
      for (const share of [0, 1e-9, 1e-3, 0.3, 0.999, 1]) {
        const wanted = low + (high - low) * share;
        expect(Math.abs(solved(aimed(tight, kind, wanted))[kind] - wanted), kind).toBeLessThan(
          1e-6,
        );
      }
    }
  });
});
