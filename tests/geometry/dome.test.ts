import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type Dome,
  domeLeaning,
  domeThrough,
  domeTilt,
  domeTurn,
  domeZ,
} from "../../src/geometry/dome.ts";
import { even } from "./even.ts";

fc.configureGlobal({ seed: 20261125 });

/** What a dome is asked to pass: the break's rim points and one point of its centreline. */
const asked = fc.record({
  radius: even(2000, 60_000),
  axis: even(150, 900),
  halfWidth: even(0, 250),
  share: even(0, 0.7),
  z: even(-60, 10),
});

interface Asked {
  readonly radius: number;
  readonly axis: number;
  readonly halfWidth: number;
  readonly share: number;
  readonly z: number;
}

const domeOf = ({ radius, axis, halfWidth, share, z }: Asked): Dome | null =>
  domeThrough(1 / radius, axis, halfWidth, share * axis, z);

function found(dome: Dome | null): Dome {
  if (dome === null) throw new Error("no dome");
  return dome;
}

/** The textbook's centre of a dome with curvature. */
const centreOf = ({ curvature, axis, lean, rise }: Dome) => ({
  cx: axis - lean / curvature,
  cz: -rise / curvature,
});

/** Distance from the sphere's surface, by (x − cx)² + y² + (z − cz)² = R². */
function offSphere(dome: Dome, x: number, y: number, z: number): number {
  const { cx, cz } = centreOf(dome);
  return Math.hypot(x - cx, y, z - cz) - 1 / dome.curvature;
}

describe("the dome through the break and one point", () => {
  it("holds all three points by the textbook equation, to 1e-9 mm, its centre below", () => {
    fc.assert(
      fc.property(asked, (wanted) => {
        const { axis, halfWidth, share, z } = wanted;
        const dome = found(domeOf(wanted));
        expect(Math.abs(offSphere(dome, axis, halfWidth, 0))).toBeLessThan(1e-9);
        expect(Math.abs(offSphere(dome, axis, -halfWidth, 0))).toBeLessThan(1e-9);
        expect(Math.abs(offSphere(dome, share * axis, 0, z))).toBeLessThan(1e-9);
        expect(centreOf(dome).cz).toBeLessThan(0);
      }),
      { numRuns: 1000 },
    );
  });

  it("stands at each of the three where it was asked to, to 1e-9 mm", () => {
    fc.assert(
      fc.property(asked, (wanted) => {
        const { axis, halfWidth, share, z } = wanted;
        const dome = found(domeOf(wanted));
        expect(domeZ(dome, axis, halfWidth)).toBeCloseTo(0, 12);
        expect(domeZ(dome, axis, -halfWidth)).toBeCloseTo(0, 12);
        expect(Math.abs(domeZ(dome, share * axis, 0) - z)).toBeLessThan(1e-9);
      }),
      { numRuns: 1000 },
    );
  });

  it("stands everywhere at cz + √(R² − (x − cx)² − y²), to 1e-9 mm", () => {
    fc.assert(
      fc.property(asked, even(-50, 900), even(-400, 400), (wanted, x, y) => {
        const dome = found(domeOf(wanted));
        const { cx, cz } = centreOf(dome);
        const under = wanted.radius ** 2 - (x - cx) ** 2 - y ** 2;
        fc.pre(under > 0);
        expect(Math.abs(domeZ(dome, x, y) - (cz + Math.sqrt(under)))).toBeLessThan(1e-9);
      }),
      { numRuns: 1000 },
    );
  });

  it("is the same to the left as to the right", () => {
    fc.assert(
      fc.property(asked, even(0, 900), even(0, 300), (wanted, x, y) => {
        const dome = found(domeOf(wanted));
        expect(Math.abs(domeZ(dome, x, -y) - domeZ(dome, x, y))).toBeLessThan(1e-12);
      }),
    );
  });

  it("grows with everything else: lengths s times as long give heights s times as high", () => {
    fc.assert(
      fc.property(asked, even(0.1, 10), (wanted, s) => {
        const { radius, axis, halfWidth, share, z } = wanted;
        const dome = found(domeOf(wanted));
        const grown = found(
          domeOf({ radius: s * radius, axis: s * axis, halfWidth: s * halfWidth, share, z: s * z }),
        );
        const [x, y] = [0.3 * axis, 0.7 * halfWidth];
        expect(Math.abs(domeZ(grown, s * x, s * y) - s * domeZ(dome, x, y))).toBeLessThan(
          1e-10 * s,
        );
      }),
    );
  });

  it("is none exactly where the two circles of the centreline do not meet, or the point is not tailward", () => {
    const wide = fc.record({
      radius: even(50, 500),
      axis: fc.constant(400),
      halfWidth: even(0, 600),
      share: even(-0.5, 0.99),
      z: even(-300, 0),
    });
    fc.assert(
      fc.property(wide, (wanted) => {
        const { radius, axis, halfWidth, share, z } = wanted;
        const chord = Math.hypot(axis * (1 - share), z);
        const about = Math.sqrt(radius ** 2 - halfWidth ** 2);
        const meet = chord <= radius + about && chord >= radius - about;
        const dome = domeOf(wanted);
        // Centre below all three: of the two meeting points the lower, and the point on its upper half.
        if (!meet) expect(dome).toBeNull();
        else if (dome !== null) {
          expect(Math.abs(offSphere(dome, share * axis, 0, z))).toBeLessThan(1e-9);
          expect(Math.abs(domeZ(dome, share * axis, 0) - z)).toBeLessThan(1e-6);
          expect(centreOf(dome).cz).toBeLessThan(0);
        } else expect(lowerCentreZ(wanted)).toBeGreaterThanOrEqual(Math.min(0, z) - 1e-6);
      }),
      { numRuns: 1000 },
    );
    expect(domeThrough(1 / 8000, 400, 100, 400, -5)).toBeNull();
    expect(domeThrough(1 / 8000, 400, 100, 450, -5)).toBeNull();
    expect(domeThrough(1 / 200, 400, 0, 450, -300)).toBeNull();
  });
});

/** z of the lower of the two centres that are R from the point and √(R² − yb²) from the break. */
function lowerCentreZ({ radius, axis, halfWidth, share, z }: Asked): number {
  const [dx, chord] = [share * axis - axis, Math.hypot(axis * (1 - share), z)];
  const along = (chord ** 2 - halfWidth ** 2) / (2 * chord);
  const across = Math.sqrt(Math.max(0, radius ** 2 - halfWidth ** 2 - along ** 2));
  return Math.min((along * z + across * dx) / chord, (along * z - across * dx) / chord);
}

describe("no dome", () => {
  it("of curvature 0 is the plane through break and point: any three places on a line stay on it", () => {
    fc.assert(
      fc.property(asked, even(0, 900), even(-300, 300), ({ axis, halfWidth, share, z }, x, y) => {
        const plane = found(domeThrough(0, axis, halfWidth, share * axis, z));
        const slope = z / (share * axis - axis);
        expect(Math.abs(domeZ(plane, x, y) - slope * (x - axis))).toBeLessThan(1e-10);
      }),
    );
  });

  it("is what a growing radius comes to, the difference falling as one over it", () => {
    fc.assert(
      fc.property(asked, even(0, 300), even(5, 300), ({ axis, halfWidth, share, z }, x, y) => {
        const at = (curvature: number): number =>
          domeZ(found(domeThrough(curvature, axis, halfWidth, share * axis, z)), x, y);
        const off = (radius: number): number => at(1 / radius) - at(0);
        // Times the radius it settles to a constant.
        const [once, tenfold] = [off(1e6) * 1e6, off(1e7) * 1e7];
        expect(Math.abs(tenfold - once)).toBeLessThan(1e-2 * Math.abs(tenfold) + 1e-2 * axis);
        expect(Math.abs(off(1e9))).toBeLessThan(1e-2);
        expect(Math.abs(off(1e9))).toBeLessThanOrEqual(2e-3 * Math.abs(off(1e6)) + 1e-10);
      }),
      { numRuns: 500 },
    );
  });
});

describe("the dome of a given lean", () => {
  it("is the very dome that leans so", () => {
    fc.assert(
      fc.property(asked, (wanted) => {
        const dome = found(domeOf(wanted));
        const again = found(domeLeaning(dome.curvature, dome.axis, dome.halfWidth, dome.lean));
        expect(Math.abs(again.rise - dome.rise)).toBeLessThan(1e-14);
        expect(again).toEqual({ ...dome, rise: again.rise });
      }),
    );
  });

  it("is none when it would lie on its side or the break is wider than the sphere", () => {
    expect(domeLeaning(1 / 8000, 400, 100, 1)).toBeNull();
    expect(domeLeaning(1 / 8000, 400, 100, -1.5)).toBeNull();
    expect(domeLeaning(1 / 100, 400, 100, 0)).toBeNull();
  });
});

it("the turn at x is how its height follows the lean, the rim points held", () => {
  fc.assert(
    fc.property(asked, even(0, 0.9), (wanted, share) => {
      const dome = found(domeOf(wanted));
      const x = share * dome.axis;
      const h = 1e-5;
      const at = (lean: number): number =>
        domeZ(found(domeLeaning(dome.curvature, dome.axis, dome.halfWidth, lean)), x, 0);
      const quotient = (at(dome.lean + h) - at(dome.lean - h)) / (2 * h);
      expect(Math.abs(domeTurn(dome, x) - quotient)).toBeLessThan(1e-5 * dome.axis);
    }),
  );
});

it("the tilt at x is (x − cx)/R", () => {
  fc.assert(
    fc.property(asked, even(0, 900), (wanted, x) => {
      const dome = found(domeOf(wanted));
      const { cx } = centreOf(dome);
      expect(Math.abs(domeTilt(dome, x) - (x - cx) / wanted.radius)).toBeLessThan(1e-12);
    }),
  );
});
