import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import type { Instrument } from "../../src/instrument/instrument.ts";
import type { Station } from "../../src/profile/outcome.ts";
import { halved } from "../support/cut-rim.ts";
import { edgesOf, openWorkshop, type Solid, topOf, type Workshop } from "../support/solid.ts";
import { planned } from "../support/solved.ts";
import {
  loopOf,
  pointedCutaway,
  roundedCutaway,
  swapped,
  unevenBody,
} from "../support/uneven-bodies.ts";

/*
 * Halves that differ, cut from a solid: a dish that touches both ends of the break line is rocked on them until
 * the shim fits, cuts the body, and the board cuts the rest; what is left is measured. The outline is the core's
 * own, as a polyline; facets are inscribed, so that differences must fall with the square of their size.
 */

vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

let shop: Workshop;
beforeAll(async () => {
  shop = await openWorkshop();
});
afterAll(() => shop.close());

/** Places on each half of the polyline: so many that their chords stray less than facets do. */
const perHalf = 3000;

interface Cut {
  readonly dished: Solid;
  readonly boarded: Solid;
  /** How far facets may stand inside the sphere, and the polyline's own share, mm. */
  readonly bound: number;
}

function cut(instrument: Instrument, shim: number, facet: number): Cut {
  const { body, dome } = instrument;
  const radius = dome.dishRadius;
  if (radius === null) throw new Error("no dish");
  const loop = loopOf(instrument, perHalf).map(([x, y]): [number, number] => [x, y]);
  const level = shop.levelBodyRound(loop.toReversed());
  const breakX = body.length - dome.flatLength;
  const { left, right } = edgesOf(shop.sectionAt(level, breakX));
  const [middle, half] = [(left[0] + right[0]) / 2, (left[0] - right[0]) / 2];
  const reach = Math.sqrt(radius ** 2 - half ** 2);
  const leaning = (angle: number) => {
    const [cx, cz] = [breakX + reach * Math.sin(angle), -reach * Math.cos(angle)];
    return (x: number, y: number): number =>
      cz + Math.sqrt(radius ** 2 - (x - cx) ** 2 - (y - middle) ** 2);
  };
  const at = Math.min(instrument.shim.contact, instrument.shim.tailBlockDepth);
  const height = leaning(halved((angle) => -leaning(angle)(at, 0) - shim, -0.3, 0.3));
  const halfWidth = Math.max(...loop.map(([, y]) => Math.abs(y))) + 5;
  const dished = shop.subtract(level, shop.dishCut(height, { breakX, halfWidth, facet }));
  return {
    dished,
    boarded: shop.boardCut(dished, breakX, 0),
    bound: facet ** 2 / 4 / radius + 1e-4,
  };
}

const inDish = (instrument: Instrument): Instrument => ({
  ...instrument,
  dome: { ...instrument.dome, dishRadius: 6096, braceRadius: 6096 },
});

const bodies = [roundedCutaway, pointedCutaway, unevenBody, swapped(unevenBody)].map(inDish);

describe.each(bodies.map((body, i) => [`${i} ${body.name}`, body] as const))(
  "%s",
  (_, instrument) => {
    const { givens, profile } = planned(instrument);
    const { breakX } = givens;
    const domed = (stations: readonly Station[]): readonly Station[] =>
      stations.filter(({ x }) => x > 1 && x < breakX - 1e-6);

    it("falls at the tail, stands under the straightedge and turns as the core says", () => {
      const { boarded, dished, bound } = cut(instrument, profile.shim, 4);
      const tailDrop = -topOf(boarded, 1e-6, 0);
      expect(Math.abs(tailDrop - profile.tailDrop)).toBeLessThan(bound);
      expect(Math.abs(-topOf(dished, profile.saddleX, 0) - profile.flatGap)).toBeLessThan(bound);
      const pitch = Math.atan((tailDrop - instrument.dome.tailExtra) / breakX);
      expect(Math.abs((pitch * 180) / Math.PI - profile.pitch)).toBeLessThan(
        (bound / breakX) * (180 / Math.PI),
      );
    });

    it("loses along either edge what the core says, the less apart the finer it is cut", () => {
      const slope = Math.tan((profile.pitch * Math.PI) / 180);
      const upright = Math.cos((profile.pitch * Math.PI) / 180);
      const worst = [16, 4].map((facet) => {
        const { dished, bound } = cut(instrument, profile.shim, facet);
        const off = (side: "left" | "right", stations: readonly Station[]): number[] =>
          domed(stations).map(({ x, removal, halfWidth }) => {
            const [y, z] = edgesOf(shop.sectionAt(dished, x))[side];
            expect(Math.abs(Math.abs(y) - halfWidth), `half width at ${x}`).toBeLessThan(0.02);
            return Math.abs(((x - breakX) * slope - z) * upright - removal);
          });
        const all = [
          ...off("left", profile.stations),
          ...off("right", profile.trebleStations ?? []),
        ];
        expect(all.length).toBeGreaterThan(20);
        // Twice: the board's slope is taken from the core, which the tail's own measure bounds.
        expect(Math.max(...all), `facets of ${facet} mm`).toBeLessThan(2 * bound);
        return Math.max(...all);
      });
      expect((worst[0] ?? 0) / (worst[1] ?? 1)).toBeGreaterThan(6);
    });
  },
);
