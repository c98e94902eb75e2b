import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readField, writeField } from "../../src/instrument/field-value.ts";
import { fieldAt, fieldPaths } from "../../src/instrument/fields.ts";
import type { Instrument } from "../../src/instrument/instrument.ts";
import type { Profile } from "../../src/profile/outcome.ts";
import { profileOf } from "../../src/profile/profile.ts";
import { even } from "../geometry/even.ts";
import { numbersOf, solved } from "../support/solved.ts";
import { builderInstrument } from "./builder-instrument.ts";

fc.configureGlobal({ seed: 20261125 });

/** Every length of the instrument s times as long. */
function grown(instrument: Instrument, s: number): Instrument {
  const { kind } = instrument.target;
  return fieldPaths.reduce((changed, path) => {
    const value = readField(instrument, path);
    return value === null || fieldAt(path, kind).quantity !== "length"
      ? changed
      : writeField(changed, path, value * s);
  }, instrument);
}

function withStations(instrument: Instrument, stationEvery: number): Profile {
  const result = profileOf(instrument, { stationEvery });
  if (!result.ok) throw new Error(JSON.stringify(result.refusal));
  return result.profile;
}

/** What of a profile is no length: angles, and the dome's directions. */
const unscaled =
  /^(chordPitch|pitch|heelAngle|breakAngle|reachable\.pitch\..*|(dome|back)\.(lean|rise))$/;
const perLength = /^(dome|back)\.curvature$/;
/** Places of flat peaks and shallow crossings, less sure than heights. */
const unsure =
  /^(maxRemovalX|leastRemovalX|maxRemovalArc|leastRemovalArc|dishUndercutX|overrunLength)$/;

describe("a profile", { timeout: 30_000 }, () => {
  it("scales: an instrument s times as large has lengths s times as long and the same angles", () => {
    fc.assert(
      fc.property(builderInstrument, even(0.2, 5), (instrument, s) => {
        const plain = numbersOf(withStations(instrument, 50));
        const large = numbersOf(withStations(grown(instrument, s), 50 * s));
        expect([...large.keys()]).toEqual([...plain.keys()]);
        for (const [path, number] of plain) {
          const expected = unscaled.test(path)
            ? number
            : perLength.test(path)
              ? number / s
              : number * s;
          const off = Math.abs((large.get(path) ?? Number.NaN) - expected);
          expect(off, path).toBeLessThan((unsure.test(path) ? 1e-3 : 1e-9) * Math.max(1, s));
        }
      }),
      { numRuns: 60 },
    );
  });

  it("mirrors: with bass and treble exchanged the strings come in the other order, and nothing else moves", () => {
    fc.assert(
      fc.property(builderInstrument, (instrument) => {
        const { strings } = instrument;
        const { actionBass, actionTreble } = strings;
        const right = solved(instrument);
        const left = solved({
          ...instrument,
          strings: { ...strings, actionBass: actionTreble, actionTreble: actionBass },
        });
        const reversed = [...left.stringExposure].reverse();
        right.stringExposure.forEach((exposure, i) => {
          expect(Math.abs(exposure - (reversed[i] ?? Number.NaN))).toBeLessThan(1e-12);
        });
        const others = numbersOf({ ...left, stringExposure: [] });
        for (const [path, number] of numbersOf({ ...right, stringExposure: [] }))
          expect(Math.abs((others.get(path) ?? Number.NaN) - number), path).toBeLessThan(1e-11);
      }),
      { numRuns: 60 },
    );
  });

  it("without dome is the limit of domes: ten times the radius is a tenth of the difference", () => {
    const names = [
      "tailDrop",
      "chordPitch",
      "pitch",
      "flatGap",
      "saddleExposure",
      "breakAngle",
      "cleanShim",
    ] as const;
    fc.assert(
      fc.property(builderInstrument, (instrument) => {
        const dished = (radius: number | null): Profile =>
          solved({
            ...instrument,
            dome: { ...instrument.dome, dishRadius: radius, braceRadius: radius },
          });
        const flat = dished(null);
        const [wide, wider] = [dished(1e6), dished(1e7)];
        for (const name of names) {
          const [off, less] = [wide, wider].map(
            (profile) => (profile[name] ?? 99) - (flat[name] ?? -99),
          );
          if (off === undefined || less === undefined) throw new Error(name);
          expect(Math.abs(off), name).toBeLessThan(0.2);
          expect(Math.abs(less - off / 10), name).toBeLessThan(1e-2 * Math.abs(off) + 1e-10);
        }
        // Greatest heights may move from one place to another on the way: within the dome's own rise.
        for (const name of ["maxRemoval", "stockWidth"] as const) {
          expect(Math.abs(wide[name] - flat[name])).toBeLessThan(0.2);
          expect(Math.abs(wider[name] - flat[name])).toBeLessThan(0.02);
        }
        const widest = dished(1e9);
        widest.stations.forEach(({ removal, sideDepth }, i) => {
          const station = flat.stations[i];
          expect(Math.abs(removal - (station?.removal ?? Number.NaN))).toBeLessThan(2e-4);
          expect(Math.abs(sideDepth - (station?.sideDepth ?? Number.NaN))).toBeLessThan(2e-4);
        });
      }),
      { numRuns: 60 },
    );
  });

  it("without dome keeps flat braces as the limit too", () => {
    fc.assert(
      fc.property(builderInstrument, (instrument) => {
        const gap = (dishRadius: number | null): number =>
          solved({ ...instrument, dome: { ...instrument.dome, dishRadius, braceRadius: null } })
            .flatGap;
        const [off, less] = [gap(1e6) - gap(null), gap(1e7) - gap(null)];
        expect(Math.abs(off)).toBeLessThan(0.2);
        expect(Math.abs(less - off / 10)).toBeLessThan(1e-2 * Math.abs(off) + 1e-10);
      }),
      { numRuns: 60 },
    );
  });
});
