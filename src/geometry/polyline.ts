import { numberAt } from "./number-at.ts";

/** A place in a plane, mm. */
export type Place = readonly [x: number, y: number];

/** Steps each piece is cut into before it is looked at, so that no bend hides between two looks. */
const first = 4;
const deepest = 24;

/**
 * Places along the curve `place(t)` from t = `from` to `to`, so close that straight lines between them
 * stray no more than `tolerance` (mm) from it. The `corners` between are met exactly; the curve must be
 * smooth from one to the next.
 */
export function polylineAlong(
  place: (t: number) => Place,
  from: number,
  to: number,
  tolerance: number,
  corners: readonly number[] = [],
): Place[] {
  const within = corners.filter((t) => t > from && t < to).sort((a, b) => a - b);
  const ends = [from, ...within, to];
  const places: Place[] = [place(from)];
  for (let piece = 1; piece < ends.length; piece++) {
    const [start, span] = [
      numberAt(ends, piece - 1),
      numberAt(ends, piece) - numberAt(ends, piece - 1),
    ];
    for (let step = 0; step < first; step++) {
      const [a, b] = [start + (span * step) / first, start + (span * (step + 1)) / first];
      bend(place, a, place(a), b, place(b), tolerance, deepest, places);
    }
  }
  return places;
}

/** Adds the places after t = a up to t = b. */
function bend(
  place: (t: number) => Place,
  a: number,
  pa: Place,
  b: number,
  pb: Place,
  tolerance: number,
  depth: number,
  places: Place[],
): void {
  const middle = place((a + b) / 2);
  const looks = [place(a + (b - a) / 4), middle, place(b - (b - a) / 4)];
  // Asked so that a place that is no number ends the splitting.
  if (depth === 0 || !looks.some((look) => offLine(look, pa, pb) > tolerance)) {
    places.push(pb);
    return;
  }
  bend(place, a, pa, (a + b) / 2, middle, tolerance, depth - 1, places);
  bend(place, (a + b) / 2, middle, b, pb, tolerance, depth - 1, places);
}

/** Distance of a place from the straight line between two others, its ends included. */
function offLine([x, y]: Place, [ax, ay]: Place, [bx, by]: Place): number {
  const [dx, dy] = [bx - ax, by - ay];
  const length2 = dx * dx + dy * dy;
  const share = length2 === 0 ? 0 : ((x - ax) * dx + (y - ay) * dy) / length2;
  const held = Math.min(1, Math.max(0, share));
  return Math.hypot(x - ax - held * dx, y - ay - held * dy);
}

/** Least distance of a place from the polyline. */
export function offPolyline(place: Place, places: readonly Place[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < places.length; i++) {
    const [a, b] = [places[i - 1], places[i]];
    if (a !== undefined && b !== undefined) least = Math.min(least, offLine(place, a, b));
  }
  return least;
}

/** The same of a polyline whose x rises: looks only as far to both sides as a nearer place could lie. */
export function offRising(place: Place, places: readonly Place[]): number {
  const start = firstFrom(places, place[0]);
  let least = Number.POSITIVE_INFINITY;
  for (let i = start; i < places.length; i++) {
    const [a, b] = [places[i - 1], places[i]];
    if (a === undefined || b === undefined) continue;
    if (a[0] - place[0] > least) break;
    least = Math.min(least, offLine(place, a, b));
  }
  for (let i = start - 1; i > 0; i--) {
    const [a, b] = [places[i - 1], places[i]];
    if (a === undefined || b === undefined || place[0] - b[0] > least) break;
    least = Math.min(least, offLine(place, a, b));
  }
  return least;
}

/** The first of places of rising x that stands at `x` or beyond; their number where none does. */
function firstFrom(places: readonly Place[], x: number): number {
  let [low, high] = [0, places.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((places[middle]?.[0] ?? 0) < x) low = middle + 1;
    else high = middle;
  }
  return low;
}

export function lengthOf(places: readonly Place[]): number {
  let sum = 0;
  for (let i = 1; i < places.length; i++) {
    const [a, b] = [places[i - 1], places[i]];
    if (a !== undefined && b !== undefined) sum += Math.hypot(b[0] - a[0], b[1] - a[1]);
  }
  return sum;
}
