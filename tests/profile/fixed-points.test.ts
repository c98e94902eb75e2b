import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Instrument } from "../../src/instrument/instrument.ts";
import type { Profile } from "../../src/profile/outcome.ts";
import { aimed, breakTargets, solved } from "../support/solved.ts";
import { domedInstrument } from "./builder-instrument.ts";
import { Book } from "./by-the-book.ts";

fc.configureGlobal({ seed: 20261125 });

/** Distance of (x, y, z) from the profile's sphere, by its centre and radius. */
function offSphere({ dome }: Profile, radius: number, x: number, y: number, z: number): number {
  const cx = dome.axis - dome.lean / dome.curvature;
  const cz = -dome.rise / dome.curvature;
  return Math.hypot(x - cx, y, z - cz) - radius;
}

const radiusOf = (instrument: Instrument): number => instrument.dome.dishRadius ?? Number.NaN;

/** An instrument and its profile for one kind of target, set to what its shim brings. */
const solvedFor = fc
  .record({ instrument: domedInstrument, kind: fc.constantFrom(...breakTargets) })
  .map(({ instrument, kind }) => {
    const asked = aimed(instrument, kind, solved(instrument)[kind]);
    return { instrument: asked, profile: solved(asked) };
  });

describe("the dome", { timeout: 30_000 }, () => {
  it("holds the break's rim points and the shim's contact, whatever the target, to 1e-9 mm", () => {
    fc.assert(
      fc.property(solvedFor, ({ instrument, profile }) => {
        const { breakX, breakHalfWidth, shim } = profile;
        const points = [
          [breakX, breakHalfWidth, 0],
          [breakX, -breakHalfWidth, 0],
          [Math.min(instrument.shim.contact, instrument.shim.tailBlockDepth), 0, -shim],
          [0, 0, -profile.tailDrop],
        ] as const;
        for (const [x, y, z] of points)
          expect(Math.abs(offSphere(profile, radiusOf(instrument), x, y, z))).toBeLessThan(1e-9);
      }),
      { numRuns: 150 },
    );
  });

  it("holds the finished rim all round, as the stations give it, to 1e-9 mm", () => {
    fc.assert(
      fc.property(domedInstrument, (instrument) => {
        const profile = solved(instrument);
        const tilt = (profile.pitch * Math.PI) / 180;
        for (const { x, halfWidth, removal, zone } of profile.stations) {
          const z = (x - profile.breakX) * Math.tan(tilt) - removal / Math.cos(tilt);
          if (zone === "flat") expect(Math.abs(z)).toBeLessThan(1e-12);
          else
            expect(
              Math.abs(offSphere(profile, radiusOf(instrument), x, halfWidth, z)),
            ).toBeLessThan(1e-9);
        }
      }),
      { numRuns: 100 },
    );
  });

  it("has its centre where two circles about break and contact meet, the lower of the two", () => {
    fc.assert(
      fc.property(domedInstrument, (instrument) => {
        const { dome, shim } = solved(instrument);
        const centre = new Book(instrument, shim).centre ?? { cx: Number.NaN, cz: Number.NaN };
        // The circles cross at a slant: the crossing is known to some 1e-8 of R, the surface to all digits.
        expect(Math.abs(dome.axis - dome.lean / dome.curvature - centre.cx)).toBeLessThan(1e-7);
        expect(Math.abs(-dome.rise / dome.curvature - centre.cz)).toBeLessThan(1e-7);
      }),
      { numRuns: 150 },
    );
  });

  it("with no dome is a plane: the rim falls in a straight line from the break to the contact", () => {
    fc.assert(
      fc.property(domedInstrument, (domed) => {
        const instrument = { ...domed, dome: { ...domed.dome, dishRadius: null } };
        const { stations, breakX, pitch, shim } = solved(instrument);
        const tilt = (pitch * Math.PI) / 180;
        for (const { x, removal } of stations) {
          const z = (x - breakX) * Math.tan(tilt) - removal / Math.cos(tilt);
          const fall =
            (shim * Math.max(0, breakX - x)) /
            (breakX - Math.min(domed.shim.contact, domed.shim.tailBlockDepth));
          expect(Math.abs(z + fall)).toBeLessThan(1e-9);
        }
      }),
      { numRuns: 50 },
    );
  });
});
