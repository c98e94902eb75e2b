import { describe, expect, it, vi } from "vitest";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { halfOn } from "../../src/profile/halves.ts";
import { Exact, exact } from "../support/high-precision.ts";
import { outerToOuter } from "../support/precise-strings.ts";
import { planned } from "../support/solved.ts";
import { pointedCutaway, roundedCutaway, swapped, unevenBody } from "../support/uneven-bodies.ts";

/*
 * Halves that differ, at 50 digits: the centre from three points of the sphere by Newton on the sphere's own equation in
 * all three coordinates, no plane of symmetry taken for granted. The edges' half widths are the core's own; what curves
 * give them is tested apart.
 */

vi.setConfig({ testTimeout: 60_000 });

const agreed = 1e-9;
const pi = Exact.acos(-1);

type Point = readonly [Exact, Exact, Exact];

/** The centre R from all three points, under them: Newton's steps, the three equations solved by Cramer's rule. */
function centreOf(radius: Exact, points: readonly [Point, Point, Point]): Point {
  let centre: Point = [points[2][0].plus(200), exact(0), radius.negated()];
  for (let turn = 0; turn < 60; turn++) {
    const rows = points.map((point) => {
      const off = point.map((value, i) => value.minus(centre[i] ?? 0)) as [Exact, Exact, Exact];
      const miss = off.reduce((sum, d) => sum.plus(d.pow(2)), exact(0)).minus(radius.pow(2));
      return { off, half: miss.div(2) };
    });
    const step = solved3(
      rows.map(({ off }) => off),
      rows.map(({ half }) => half),
    );
    centre = centre.map((value, i) => value.plus(step[i] ?? 0)) as unknown as Point;
    if (step.every((one) => one.abs().lt("1e-40"))) return centre;
  }
  throw new Error("no sphere");
}

const det = ([a, b, c]: readonly (readonly Exact[])[]): Exact => {
  const [a0, a1, a2, b0, b1, b2, c0, c1, c2] = [a, b, c]
    .flat()
    .map((v) => v ?? exact(0)) as Exact[];
  if (!a0 || !a1 || !a2 || !b0 || !b1 || !b2 || !c0 || !c1 || !c2)
    throw new Error("not three rows");
  return a0
    .times(b1.times(c2).minus(b2.times(c1)))
    .minus(a1.times(b0.times(c2).minus(b2.times(c0))))
    .plus(a2.times(b0.times(c1).minus(b1.times(c0))));
};

function solved3(rows: readonly (readonly Exact[])[], right: readonly Exact[]): Exact[] {
  const whole = det(rows);
  return [0, 1, 2].map((column) =>
    det(rows.map((row, i) => row.map((v, j) => (j === column ? (right[i] ?? exact(0)) : v)))).div(
      whole,
    ),
  );
}

const near = (what: string, actual: number, expected: Exact): void => {
  const off = exact(actual).minus(expected).abs().toNumber();
  expect(off, `${what}: ${actual} against ${expected.toFixed(15)}`).toBeLessThanOrEqual(agreed);
};

const withDome = (instrument: Instrument, dome: Partial<Instrument["dome"]>): Instrument => ({
  ...instrument,
  dome: { ...instrument.dome, ...dome },
});

/** Twelve strings in pairs over fanned frets and a slanted saddle, that settle. */
const twelveAskew = (instrument: Instrument): Instrument => ({
  ...instrument,
  neck: { ...instrument.neck, fan: 20 },
  bridge: { ...instrument.bridge, slant: 3 },
  strings: { ...instrument.strings, count: 12, pairGap: 2.2, settling: 0.4 },
});

const instruments = [roundedCutaway, pointedCutaway, unevenBody, swapped(unevenBody)].flatMap(
  (one) => [
    one,
    withDome(one, { dishRadius: 4572, braceRadius: 4572, tailExtra: 1 }),
    withDome(one, { dishRadius: 8534.4, braceRadius: 5000 }),
    withDome(one, { dishRadius: 7620, braceRadius: null, flatLength: 110 }),
    twelveAskew(withDome(one, { dishRadius: 8534.4, braceRadius: 5000 })),
  ],
);

describe.each(instruments.map((one, i) => [`${i} ${one.name}`, one] as const))(
  "%s",
  (_, instrument) => {
    const { givens, profile } = planned(instrument);
    const { dome, shim } = instrument;
    const width = (side: "bass" | "treble", x: number): Exact =>
      exact(halfOn(givens.halves, side).outline.halfWidth(x));
    const radius = exact(Number(dome.dishRadius));
    const contact = exact(Math.min(shim.contact, shim.tailBlockDepth));
    const breakX = exact(instrument.body.length).minus(dome.flatLength);
    const [cx, cy, cz] = centreOf(radius, [
      [breakX, width("bass", breakX.toNumber()), exact(0)],
      [breakX, width("treble", breakX.toNumber()).negated(), exact(0)],
      [contact, exact(0), exact(profile.shim).negated()],
    ]);
    const height = (x: Exact, y: Exact): Exact =>
      cz.plus(radius.pow(2).minus(x.minus(cx).pow(2)).minus(y.minus(cy).pow(2)).sqrt());
    const turn = height(exact(0), exact(0)).negated().minus(dome.tailExtra).div(breakX).atan();

    it("agrees on the dome, its middle and the pitch", () => {
      near("breakMiddle", profile.breakMiddle, cy);
      near("tailDrop", profile.tailDrop, height(exact(0), exact(0)).negated());
      near("pitch", profile.pitch, turn.times(180).div(pi));
    });

    /** The top on the centreline, its braces arched over the span between both edges. */
    const topAt = (x: Exact): Exact => {
      const [bass, treble] = [width("bass", x.toNumber()), width("treble", x.toNumber())];
      const [half, middle] = [bass.plus(treble).div(2), bass.minus(treble).div(2)];
      const arch = (full: Exact | null): Exact => {
        if (full === null) return exact(0);
        const section2 = full.pow(2).minus(x.minus(cx).pow(2));
        // How much higher a circle stands at `middle` than at `half` from its crest.
        return section2
          .minus(middle.pow(2))
          .sqrt()
          .minus(section2.minus(half.pow(2)).sqrt());
      };
      const braces = dome.braceRadius === null ? null : exact(dome.braceRadius);
      return height(x, exact(0)).plus(arch(braces)).minus(arch(radius));
    };

    it("agrees on the gap, braces arched over the span between both edges", () => {
      near("flatGap", profile.flatGap, topAt(exact(profile.saddleX)).negated());
    });

    it("agrees on every string's height over the bridge, at its own place on the saddle", () => {
      const { body, neck, bridge, strings } = instrument;
      const tilt = exact(neck.neckTilt).times(pi).div(180).tan();
      const lines = outerToOuter(instrument);
      expect(profile.stringExposure).toHaveLength(lines.length);
      lines.forEach(({ atSaddle, saddleX }, i) => {
        const plane = exact(neck.fingerboardThickness)
          .plus(neck.fretHeight)
          .plus(exact(body.length).minus(saddleX).times(tilt));
        near(
          `string ${i}`,
          profile.stringExposure[i] ?? Number.NaN,
          plane
            .plus(atSaddle)
            .minus(strings.settling)
            .minus(topAt(saddleX))
            .minus(bridge.thickness),
        );
      });
    });

    it("agrees on what comes off along both edges", () => {
      for (const [stations, sign] of [
        [profile.stations, 1],
        [profile.trebleStations ?? [], -1],
      ] as const)
        for (const { x, halfWidth, removal } of stations) {
          const place = exact(x);
          const z = place.lt(breakX) ? height(place, exact(sign * halfWidth)) : exact(0);
          const level = place.minus(breakX).times(turn.tan());
          near(`removal at ${x}`, removal, level.minus(z).times(turn.cos()));
        }
      expect(profile.trebleStations?.length).toBeGreaterThan(10);
    });
  },
);
