import { type Dome, domeLeaning, domeThrough, domeTilt, domeZ } from "../geometry/dome.ts";
import { highest, type Peak } from "../geometry/peak.ts";
import { rootBetween } from "../geometry/root.ts";
import type { Range } from "../instrument/instrument.ts";
import type { Givens, SeatPlace } from "./givens.ts";
import type { SeatCut } from "./outcome.ts";
import { braceLift, topZ } from "./top.ts";

/*
 * The seat's way: rim and top are domed all over, then the fingerboard's seat is sanded flat. Its plane
 * is z = 0, and the plate's lowest place on the seat, always a corner, stands `leastCut` over it. That
 * leaves the dome one freedom, here its tilt at the neck end, κ·(L − cx): the less it is the lower the
 * tail lies, and the thicker the spacer. Which corner is the lowest changes once on the way.
 */

/** Half of the seat's outline at one of its ends. */
interface Corner {
  readonly x: number;
  readonly halfWidth: number;
}

const cornersOf = (givens: Givens, seat: SeatPlace): readonly [end: Corner, neck: Corner] => [
  { x: seat.fromX, halfWidth: seat.halfWidth },
  { x: givens.outline.length, halfWidth: seat.neckHalfWidth },
];

/** Height of the plate over the seat's plane at (x, y), before it is cut: the dome, and what the braces add between the rims. */
export function plateZ(givens: Givens, dome: Dome, x: number, y: number): number {
  return domeZ(dome, x, y) + liftAt(givens, domeTilt(dome, x), { x, halfWidth: y });
}

/** What braces of another radius than the dish add at a place, where the dome has this tilt. */
function liftAt(givens: Givens, tilt: number, { x, halfWidth }: Corner): number {
  if (givens.braceCurvature === givens.dishCurvature) return 0;
  const across = givens.outline.halfWidth(x);
  return braceLift(givens, tilt, across) - braceLift(givens, tilt, halfWidth);
}

/** The dome with this tilt at the neck end whose seat's lowest corner stands `leastCut` over the seat; null where it has no top. */
export function domeTilted(givens: Givens, seat: SeatPlace, tilt: number): Dome | null {
  const { dishCurvature, outline, instrument } = givens;
  const domes = cornersOf(givens, seat).map((corner) => {
    const lean = tilt - dishCurvature * (outline.length - corner.x);
    const level = instrument.seat.leastCut - liftAt(givens, lean, corner);
    return domeLeaning(dishCurvature, corner.x, corner.halfWidth, lean, level);
  });
  return higherOf(givens, seat, domes);
}

/** The dome whose other corner is the higher: both stand on one corner each, and only that one leaves none below. */
function higherOf(givens: Givens, seat: SeatPlace, domes: readonly (Dome | null)[]): Dome | null {
  const [end, neck] = cornersOf(givens, seat);
  const [onEnd, onNeck] = domes;
  if (onEnd == null || onNeck == null) return onEnd ?? onNeck ?? null;
  const other = plateZ(givens, onEnd, neck.x, neck.halfWidth);
  return other >= plateZ(givens, onNeck, end.x, end.halfWidth) ? onEnd : onNeck;
}

/**
 * The dome whose top stands at z at x on the centreline. In closed form where what the braces add does
 * not depend on the dome: two points of known height, the corner and this one. Otherwise the one root over
 * the tilts given.
 */
export function domeUnder(
  givens: Givens,
  seat: SeatPlace,
  [x, z]: readonly [number, number],
  tilts: Range,
): Dome | null {
  const { dishCurvature, braceCurvature, instrument } = givens;
  if (braceCurvature === dishCurvature || dishCurvature === 0) {
    const lift = liftAt(givens, 0, { x, halfWidth: 0 });
    const domes = cornersOf(givens, seat).map((corner) => {
      const level = instrument.seat.leastCut - liftAt(givens, 0, corner);
      return domeThrough(dishCurvature, corner.x, corner.halfWidth, x, z - lift, level);
    });
    return higherOf(givens, seat, domes);
  }
  const over = (tilt: number): number => {
    const dome = domeTilted(givens, seat, tilt);
    return dome === null ? Number.NaN : topZ(givens, dome, x) - z;
  };
  const [low, high] = tilts;
  return over(low) <= 0 && over(high) >= 0
    ? domeTilted(givens, seat, rootBetween(over, low, high))
    : null;
}

/**
 * The tilt at the neck end of a dome whose neck end stands `rise` mm over its tail end, L apart. The
 * centre lies under the chord's middle, square to it: κ(L − cx) = κL/2 − (rise/c)·√(1 − κ²c²/4),
 * c² = L² + rise². NaN where the sphere is too small for the chord.
 */
export function tiltRising({ dishCurvature, outline }: Givens, rise: number): number {
  const chord = Math.hypot(outline.length, rise);
  const half = (dishCurvature * chord) / 2;
  return (dishCurvature * outline.length) / 2 - (rise / chord) * Math.sqrt((1 - half) * (1 + half));
}

/** Where on the seat the plate stands highest on the centreline, and how much is cut there and at its ends. */
export function cutOf(givens: Givens, seat: SeatPlace, dome: Dome): SeatCut {
  const most = mostCutOf(givens, seat, dome, () => 0);
  return {
    mostCut: most.value,
    mostCutX: most.x,
    endCut: topZ(givens, dome, seat.fromX),
    neckEndCut: topZ(givens, dome, givens.outline.length),
  };
}

/** The most that is cut on the centreline, and where, once the seat lies `lowered` mm under its plane at x. */
export function mostCutOf(
  givens: Givens,
  { fromX }: SeatPlace,
  dome: Dome,
  lowered: (x: number) => number,
): Peak {
  const length = givens.outline.length;
  const cut = (x: number): number => topZ(givens, dome, x) + lowered(x);
  const xs = Array.from({ length: samples + 1 }, (_, i) =>
    i === samples ? length : fromX + ((length - fromX) * i) / samples,
  );
  return fromX < length ? highest(cut, xs, xs.map(cut)) : { x: length, value: cut(length) };
}

const samples = 8;

/**
 * The tilts at which the seat's two lowest corners change place, and the plate is cut least: the nearest of
 * `tilts` where they do not within them.
 */
export function evenTilt(givens: Givens, seat: SeatPlace, [low, high]: Range): number {
  const [end, neck] = cornersOf(givens, seat);
  const neckOver = (tilt: number): number => {
    const dome = domeTilted(givens, seat, tilt);
    return dome === null
      ? Number.NaN
      : plateZ(givens, dome, neck.x, neck.halfWidth) - plateZ(givens, dome, end.x, end.halfWidth);
  };
  return rootBetween(neckOver, low, high);
}
