import { describe, expect, it } from "vitest";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { presets } from "../../src/instrument/presets.ts";
import { profileOf } from "../../src/profile/profile.ts";
import { type Exact, exact, root } from "../support/high-precision.ts";
import { drop, type Ground, groundOf, legOf, toBridge } from "../support/precise-dome.ts";
import { randomInstruments } from "../support/random-instrument.ts";
import { onSeat } from "../support/solved.ts";

/*
 * The seat's way from its statement, in 50 digits: a sphere whose centre is looked for until the plate's
 * lowest corner stands `leastCut` over the seat and the top at the saddle line `spacer` under it. No closed
 * form of the core's is used.
 */

interface Plate {
  readonly centreX: Exact;
  /** Height of the plate, and of the rim's sphere. */
  readonly plate: (x: Exact, y: Exact) => Exact;
  readonly sphere: (x: Exact, y: Exact) => Exact;
}

interface Corner {
  readonly x: Exact;
  readonly y: Exact;
}

function cornersOf(ground: Ground): readonly [Corner, Corner] {
  const { instrument, outline } = ground;
  const { body, neck, seat } = instrument;
  const length = exact(body.length);
  const end = length
    .minus(toBridge(neck.scale, neck.joinFret))
    .plus(toBridge(neck.scale, neck.lastFret))
    .minus(neck.fingerboardOverhang);
  const fromX = end.gt(length) ? length : end;
  const half = exact(seat.fingerboardWidth).div(2);
  const narrower = (wide: Exact): Exact => (wide.lt(half) ? wide : half);
  return [
    { x: fromX, y: narrower(outline.halfWidth(fromX)) },
    { x: length, y: narrower(exact(body.neckEndWidth).div(2)) },
  ];
}

/** The plate with its centre over x, raised until its lower corner stands `leastCut` over the seat. */
function plateAt(ground: Ground, radius: Exact, centreX: Exact): Plate {
  const { instrument, outline } = ground;
  const { braceRadius } = instrument.dome;
  const bare = (x: Exact, y: Exact): Exact => legOf(legOf(radius, x.minus(centreX)), y);
  const lift = (x: Exact, y: Exact): Exact => {
    const across = outline.halfWidth(x);
    const dish = legOf(radius, x.minus(centreX));
    const brace =
      braceRadius === null
        ? null
        : legOf(
            exact(braceRadius),
            exact(braceRadius).times(x.minus(centreX)).div(radius).times(radius.div(braceRadius)),
          );
    return drop(brace, across).minus(drop(brace, y)).minus(drop(dish, across)).plus(drop(dish, y));
  };
  const heights = cornersOf(ground).map(({ x, y }) => bare(x, y).plus(lift(x, y)));
  const [end, neck] = heights as [Exact, Exact];
  const centreZ = exact(instrument.seat.leastCut).minus(end.lt(neck) ? end : neck);
  return {
    centreX,
    plate: (x, y) => centreZ.plus(bare(x, y)).plus(lift(x, y)),
    sphere: (x, y) => centreZ.plus(bare(x, y)),
  };
}

function plateOn(ground: Ground, spacer: number): Plate {
  const radius = exact(ground.instrument.dome.dishRadius ?? 0);
  const miss = (centreX: Exact): Exact =>
    plateAt(ground, radius, centreX).plate(ground.saddleX, exact(0)).plus(spacer);
  const length = ground.instrument.body.length;
  // The farther the centre lies toward the neck, the lower the saddle.
  return plateAt(ground, radius, root(miss, exact(-0.1 * length), exact(1.4 * length)));
}

const near = (value: number, expected: Exact): void =>
  expect(Math.abs(exact(value).minus(expected).toNumber())).toBeLessThan(2e-11);

function expectSeat(instrument: Instrument): boolean {
  const result = profileOf(onSeat(instrument));
  if (!result.ok || result.profile.seat === null) return false;
  const { profile } = result;
  const ground = groundOf(onSeat(instrument));
  const plate = plateOn(ground, profile.seat?.spacer ?? Number.NaN);
  const length = exact(instrument.body.length);
  const zero = exact(0);
  const [end] = cornersOf(ground);
  const [neckZ, tailZ] = [plate.sphere(length, zero), plate.sphere(zero, zero)];
  near(profile.tailDrop, tailZ.negated());
  const rise = neckZ.minus(tailZ).minus(instrument.dome.tailExtra);
  const pitch = rise.div(length).atan();
  expect(Math.abs((profile.pitch * Math.PI) / 180 - pitch.toNumber())).toBeLessThan(1e-13);
  near(profile.seat?.endCut ?? Number.NaN, plate.plate(end.x, zero));
  near(profile.seat?.neckEndCut ?? Number.NaN, plate.plate(length, zero));
  for (const { x, halfWidth, removal } of profile.stations) {
    const z = plate.sphere(exact(x), exact(halfWidth));
    const off = exact(x).minus(length).times(pitch.sin()).minus(z.minus(neckZ).times(pitch.cos()));
    near(removal, off);
  }
  return true;
}

describe("a seat, worked out in 50 digits", () => {
  it.each(presets.map((one) => [one.name, one] as const))("%s", (_, preset) => {
    expect(expectSeat({ ...preset, target: { kind: "stringHeight", value: 12.5 } })).toBe(true);
  });

  it("instruments at random, braces arched as the dish and otherwise", () => {
    let seen = 0;
    for (const one of randomInstruments(60, 77)) {
      if (one.dome.dishRadius === null || one.dome.braceRadius === null) continue;
      const instrument = { ...one, target: { kind: "pitch", value: 1.1 } } as const;
      if (expectSeat(instrument)) seen++;
    }
    expect(seen).toBeGreaterThan(15);
  });
});
