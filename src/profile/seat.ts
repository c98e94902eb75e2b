import { type Dome, domeLeaning, domeThrough, domeTilt, domeZ } from "../geometry/dome.ts";
import { highest, type Peak } from "../geometry/peak.ts";
import { rootBetween } from "../geometry/root.ts";
import type { Range } from "../instrument/instrument.ts";
import type { Givens, SeatPlace } from "./givens.ts";
import { spanAt } from "./halves.ts";
import type { SeatCut } from "./outcome.ts";
import { braceLift, topZ } from "./top.ts";

/*
 * The seat's way: rim and top are domed all over, then the fingerboard's seat is sanded flat. Its plane
 * is z = 0, and the plate's lowest place on the seat, always a corner, stands `leastCut` over it. That
 * leaves the dome one freedom, here its tilt at the neck end, κ·(L − cx): the less it is the lower the
 * tail lies, and the thicker the spacer. Which corner is the lowest changes once on the way.
 */

/** Of the seat's outline; y toward the bass side. */
interface Corner {
  readonly x: number;
  readonly y: number;
}

/** The fingerboard's end first; on the bass side alone where the treble half mirrors it. */
function cornersOf({ halves, outline }: Givens, seat: SeatPlace): readonly Corner[] {
  const sides = halves.length === 1 ? 1 : 2;
  return [
    ...seat.end.slice(0, sides).map((y) => ({ x: seat.fromX, y })),
    ...seat.neckEnd.slice(0, sides).map((y) => ({ x: outline.length, y })),
  ];
}

/** How high over the seat's plane the plate's lower corner stands at the fingerboard's end and at the neck end. */
export function lowestAtEnds(
  givens: Givens,
  seat: SeatPlace,
  dome: Dome,
): readonly [end: number, neckEnd: number] {
  const lower = (x: number, corners: readonly number[]): number =>
    Math.min(...corners.map((y) => plateZ(givens, dome, x, y)));
  return [lower(seat.fromX, seat.end), lower(givens.outline.length, seat.neckEnd)];
}

/** Height of the plate over the seat's plane at (x, y), before it is cut: the dome, and what the braces add between the rims. */
export function plateZ(givens: Givens, dome: Dome, x: number, y: number): number {
  return domeZ(dome, x, y) + liftAt(givens, domeTilt(dome, x), { x, y });
}

/** What braces of another radius than the dish add at a place, where the dome has this tilt. */
const liftAt = (givens: Givens, tilt: number, { x, y }: Corner): number =>
  givens.braceCurvature === givens.dishCurvature
    ? 0
    : braceLift(givens, tilt, spanAt(givens.halves, x), y);

/** The dome with this tilt at the neck end whose seat's lowest corner stands `leastCut` over the seat; null where it has no top. */
export function domeTilted(givens: Givens, seat: SeatPlace, tilt: number): Dome | null {
  const { dishCurvature, outline, instrument } = givens;
  const domes = cornersOf(givens, seat).map((corner) => {
    const lean = tilt - dishCurvature * (outline.length - corner.x);
    const level = instrument.seat.leastCut - liftAt(givens, lean, corner);
    return domeLeaning(dishCurvature, corner.x, Math.abs(corner.y), lean, level);
  });
  return higherOf(givens, seat, domes);
}

/** The dome whose other corners are the highest: each stands on one corner, and only that one leaves none below. */
function higherOf(givens: Givens, seat: SeatPlace, domes: readonly (Dome | null)[]): Dome | null {
  const corners = cornersOf(givens, seat);
  const lowestOther = (dome: Dome, on: number): number =>
    Math.min(...corners.filter((_, i) => i !== on).map(({ x, y }) => plateZ(givens, dome, x, y)));
  return domes.reduce<{ dome: Dome | null; lowest: number }>(
    (best, dome, on) => {
      const lowest = dome === null ? Number.NEGATIVE_INFINITY : lowestOther(dome, on);
      return best.dome === null || lowest > best.lowest ? { dome, lowest } : best;
    },
    { dome: null, lowest: Number.NEGATIVE_INFINITY },
  ).dome;
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
    const lift = liftAt(givens, 0, { x, y: 0 });
    const domes = cornersOf(givens, seat).map((corner) => {
      const level = instrument.seat.leastCut - liftAt(givens, 0, corner);
      return domeThrough(dishCurvature, corner.x, Math.abs(corner.y), x, z - lift, level);
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
  const neckOver = (tilt: number): number => {
    const dome = domeTilted(givens, seat, tilt);
    if (dome === null) return Number.NaN;
    const [end, neckEnd] = lowestAtEnds(givens, seat, dome);
    return neckEnd - end;
  };
  return rootBetween(neckOver, low, high);
}
