import fc from "fast-check";
import { afterAll, beforeAll, expect, it } from "vitest";
import { defaultInstrument } from "../../src/instrument/default-instrument.ts";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { cutRim } from "../support/cut-rim.ts";
import { openWorkshop, topOf, type Workshop } from "../support/solid.ts";
import { solved, withShim } from "../support/solved.ts";
import { builderInstrument } from "./builder-instrument.ts";
import { Book, fretPlaneByTheBook, stringByTheBook, toDegrees } from "./by-the-book.ts";

/*
 * The break angle from places in space: the string's ends, and the pin's hole laid out from the saddle
 * along the top's own surface. The angle is taken between the two directions, no slope by itself.
 */

fc.configureGlobal({ seed: 20261126 });

type Point = readonly [x: number, z: number];

const moved = ([x, z]: Point, [dx, dz]: Point, by: number): Point => [x + by * dx, z + by * dz];
const toward = ([x, z]: Point, [ax, az]: Point): Point => {
  const far = Math.hypot(ax - x, az - z);
  return [(ax - x) / far, (az - z) / far];
};
const squareTo = ([dx, dz]: Point): Point => [-dz, dx];

/** How far the middle string turns at the saddle, over a top whose height is asked `span` mm to either side of it. */
function turnOfString(instrument: Instrument, topAt: (x: number) => number, span: number): number {
  const { neck, bridge, body } = instrument;
  const flatBoard = { ...instrument, neck: { ...neck, fingerboardRadius: null } };
  const middle = stringByTheBook(flatBoard, 0.5);
  const x = body.length - (neck.scale * 2 ** (-neck.joinFret / 12) + bridge.compensation);
  const saddle: Point = [x, fretPlaneByTheBook(instrument, x) + middle.saddle];
  const exposed = saddle[1] - topAt(x) - bridge.thickness;

  const frets = toward(
    [x, fretPlaneByTheBook(instrument, x)],
    [x + 1, fretPlaneByTheBook(instrument, x + 1)],
  );
  const overNut = moved(saddle, frets, neck.scale + bridge.compensation);
  const nut = moved(overNut, squareTo(frets), middle.nut - middle.saddle);

  const tailward = toward([x + span, topAt(x + span)], [x - span, topAt(x - span)]);
  const overPin = moved(saddle, tailward, bridge.pinDistance);
  const pin = moved(overPin, squareTo(tailward), exposed + bridge.pinRamp);

  const [ax, az] = toward(nut, saddle);
  const [bx, bz] = toward(saddle, pin);
  return toDegrees(Math.atan2(ax * bz - az * bx, ax * bx + az * bz));
}

it("is the turn between the string's two parts, over the top of any instrument", () => {
  fc.assert(
    fc.property(builderInstrument, (instrument) => {
      const { breakAngle, shim } = solved(instrument);
      const book = new Book(instrument, shim);
      const turn = turnOfString(instrument, (x) => book.topZ(x), 0.05);
      expect(Math.abs(turn - breakAngle)).toBeLessThan(1e-5);
    }),
    { numRuns: 200 },
  );
});

let shop: Workshop;
beforeAll(async () => {
  shop = await openWorkshop();
});
afterAll(() => shop.close());

it.each([7.5, 9.5])("is that over a solid cut by dish and board on a shim of %d mm", (shim) => {
  const { dome } = defaultInstrument;
  const instrument = withShim(
    { ...defaultInstrument, dome: { ...dome, braceRadius: dome.dishRadius } },
    shim,
  );
  const rim = cutRim(shop, instrument, shim, { chords: 64, facet: 4 });
  const turn = turnOfString(instrument, (x) => topOf(rim.dished, x, 0), 20);
  // Facets stand under the sphere by at most `dishSag`, which tilts 40 mm of it by no more than this.
  const tilt = toDegrees(rim.dishSag / 40);
  expect(Math.abs(turn - solved(instrument).breakAngle)).toBeLessThan(tilt + 1e-3);
});
