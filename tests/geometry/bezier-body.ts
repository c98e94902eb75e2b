import fc from "fast-check";
import type { Bouts } from "../../src/geometry/outline/outline.ts";
import { even } from "./even.ts";

/*
 * The body's outline by its control points alone, drawn by de Casteljau's halving and solved by
 * bisection: slow, plain, and sharing nothing with the core but the points.
 */

export type Point = readonly [x: number, y: number];
export type Controls = readonly [Point, Point, Point, Point];

const kappa = 0.5522847498;
const ease = 0.45;

const between = (p: Point, q: Point, s: number): Point => [
  p[0] * (1 - s) + q[0] * s,
  p[1] * (1 - s) + q[1] * s,
];

/** Point and derivative at parameter s. */
export function onCurve([p0, p1, p2, p3]: Controls, s: number): { at: Point; velocity: Point } {
  const [a, b, c] = [between(p0, p1, s), between(p1, p2, s), between(p2, p3, s)];
  const [d, e] = [between(a, b, s), between(b, c, s)];
  return { at: between(d, e, s), velocity: [3 * (e[0] - d[0]), 3 * (e[1] - d[1])] };
}

/** The four pieces; the last from the neck end back, its x measured from there, where the edge is steep. */
export function controlsOf(body: Bouts): readonly [Controls, Controls, Controls, Controls] {
  const { length, lowerBoutAt: xl, waistAt: xw, upperBoutAt: xu } = body;
  const [wl, ww] = [body.lowerBoutWidth / 2, body.waistWidth / 2];
  const [wu, wn] = [body.upperBoutWidth / 2, body.neckEndWidth / 2];
  const easing = (from: Point, to: Point): Controls => {
    const reach = ease * (to[0] - from[0]);
    return [from, [from[0] + reach, from[1]], [to[0] - reach, to[1]], to];
  };
  const back = length - xu;
  return [
    [
      [0, 0],
      [0, kappa * wl],
      [xl - kappa * xl, wl],
      [xl, wl],
    ],
    easing([xl, wl], [xw, ww]),
    easing([xw, ww], [xu, wu]),
    [
      [0, wn],
      [0, wn + kappa * (wu - wn)],
      [back - kappa * back, wu],
      [back, wu],
    ],
  ];
}

/** Parameter at which a rising x reaches the one wanted. */
function parameterByBisection(controls: Controls, x: number): number {
  let [low, high] = [0, 1];
  for (let halving = 0; halving < 200; halving++) {
    const middle = (low + high) / 2;
    if (onCurve(controls, middle).at[0] < x) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Which piece x is on, and the parameter there. */
export function placeOn(body: Bouts, x: number): { controls: Controls; s: number; piece: number } {
  const [first, second, third, last] = controlsOf(body);
  const { length, lowerBoutAt, waistAt, upperBoutAt } = body;
  const found = (controls: Controls, along: number, piece: number) => ({
    controls,
    s: parameterByBisection(controls, along),
    piece,
  });
  if (x <= lowerBoutAt) return found(first, x, 0);
  if (x <= waistAt) return found(second, x, 1);
  if (x <= upperBoutAt) return found(third, x, 2);
  return found(last, length - x, 3);
}

export function halfWidthByBisection(body: Bouts, x: number): number {
  const { controls, s } = placeOn(body, x);
  return onCurve(controls, s).at[1];
}

const shareOfRoom = fc.integer({ min: 0, max: 1000 });
const anyWidth = fc.oneof(even(1, 1500), fc.constantFrom(1, 300, 1500));

/** Any body the fields allow, its places apart by 1 mm or more. */
export const anyBouts: fc.Arbitrary<Bouts> = fc
  .record({
    length: even(100, 1500),
    shares: fc.tuple(shareOfRoom, shareOfRoom, shareOfRoom, shareOfRoom),
    widths: fc.tuple(anyWidth, anyWidth, anyWidth),
    neckEndWidth: fc.oneof(even(0, 1500), fc.constant(0)),
  })
  .map(({ length, shares, widths: [lower, waist, upper], neckEndWidth }) => {
    const whole = shares.reduce((sum, share) => sum + share, 0);
    const spare = length - 4.001;
    const step = (share: number): number => 1 + (spare * share) / Math.max(1, whole);
    const lowerBoutAt = step(shares[0]);
    const waistAt = lowerBoutAt + step(shares[1]);
    const upperBoutAt = waistAt + step(shares[2]);
    return {
      length,
      lowerBoutAt,
      waistAt,
      upperBoutAt,
      lowerBoutWidth: lower,
      waistWidth: waist,
      upperBoutWidth: upper,
      neckEndWidth,
    };
  });

/** Bodies of the proportions guitars have, and well past them. */
export const guitarBouts: fc.Arbitrary<Bouts> = fc
  .record({
    length: even(250, 700),
    places: fc.tuple(even(0.15, 0.35), even(0.45, 0.65), even(0.72, 0.92)),
    widths: fc.tuple(even(0.4, 1), even(0.25, 1), even(0.25, 1), even(0, 0.4)),
  })
  .map(({ length, places: [lowerAt, waistAt, upperAt], widths: [lower, waist, upper, neck] }) => ({
    length,
    lowerBoutAt: length * lowerAt,
    waistAt: length * waistAt,
    upperBoutAt: length * upperAt,
    lowerBoutWidth: length * lower,
    waistWidth: length * waist,
    upperBoutWidth: length * upper,
    neckEndWidth: length * neck,
  }));

/** An ordinary body. */
export const plainBouts: Bouts = {
  length: 492,
  lowerBoutWidth: 385,
  lowerBoutAt: 125,
  waistWidth: 240,
  waistAt: 292,
  upperBoutWidth: 286,
  upperBoutAt: 395,
  neckEndWidth: 60,
};
