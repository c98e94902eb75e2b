import { offPolyline, type Place } from "../polyline.ts";
import { type Spline, splineThrough, splineX, splineY } from "./spline.ts";

export interface TracingFit {
  /** Those of the places that the curve is led through. */
  readonly places: readonly Place[];
  /** Farthest that any of the places lies from the curve, mm. */
  readonly error: number;
}

const stepsPerPiece = 16;
/** So many of the places are looked at until those lie near enough, and only then each. */
const lookedAt = 1000;
/** Room is kept between the places led through, mm: nearer ones would only repeat the hand's tremble. */
const closest = 0.8;

/**
 * The fewest of the places, found by adding the worst of those left out to each piece until all lie
 * within `error` mm of the smooth curve through those kept. Stops at `most` places, with what error there is.
 */
export function fitted(places: readonly Place[], error: number, most: number): TracingFit {
  let kept = startOf(places);
  let every = Math.ceil(places.length / lookedAt);
  for (;;) {
    const chosen = kept.map((i) => placeAt(places, i));
    const offs = offsFrom(splineThrough(chosen, "square", "free"), kept, places, every);
    const worst = Math.max(...offs);
    const added = worst <= error ? [] : worstOfEach(kept, places, offs, error);
    if (added.length > 0 && kept.length + added.length <= most)
      kept = [...kept, ...added].sort((a, b) => a - b);
    else if (every > 1) every = 1;
    else return { places: chosen, error: worst };
  }
}

/** Both ends, a few between, evenly, and where a cutaway's edge turns back and forth along the body. */
function startOf(places: readonly Place[]): number[] {
  const last = places.length - 1;
  const between = [0.2, 0.4, 0.6, 0.8].map((share) => Math.round(share * last));
  const starts = new Set([0, ...between, ...turnsIn(places), last]);
  return [...starts].sort((a, b) => a - b);
}

/** A turn back by less than this is the hand's tremble, mm. */
const tremble = 1;

/** The places where x turns from rising to falling or back, by more than a tremble. */
function turnsIn(places: readonly Place[]): number[] {
  const turns: number[] = [];
  let [way, far] = [1, 0];
  places.forEach(([x], i) => {
    const gone = way * (x - placeAt(places, far)[0]);
    if (gone > 0) far = i;
    else if (gone < -tremble) {
      turns.push(far);
      [way, far] = [-way, i];
    }
  });
  return turns;
}

const placeAt = (places: readonly Place[], i: number): Place =>
  places[i] ?? [Number.NaN, Number.NaN];

/** Distance of every so many places from the curve near it; 0 for the others. */
function offsFrom(
  spline: Spline,
  kept: readonly number[],
  places: readonly Place[],
  every: number,
): number[] {
  const lines = spline.chords.map((_, piece) =>
    Array.from({ length: stepsPerPiece + 1 }, (_, i): Place => {
      const t = i / stepsPerPiece;
      return [splineX(spline, piece, t), splineY(spline, piece, t)];
    }),
  );
  let piece = 0;
  return places.map((place, i) => {
    if (i % every > 0) return 0;
    while (piece < lines.length - 1 && i > (kept[piece + 1] ?? 0)) piece++;
    const near = [lines[piece - 1], lines[piece], lines[piece + 1]];
    return Math.min(
      ...near.map((line) => (line === undefined ? Infinity : offPolyline(place, line))),
    );
  });
}

/** In each piece the place farthest off, where it is too far. */
function worstOfEach(
  kept: readonly number[],
  places: readonly Place[],
  offs: readonly number[],
  error: number,
): number[] {
  return kept.slice(1).flatMap((end, piece) => {
    const start = kept[piece] ?? 0;
    let worst = -1;
    for (let i = start + 1; i < end; i++) {
      const free = [start, end].every((k) => distance(places[i], places[k]) >= closest);
      if (free && (offs[i] ?? 0) > Math.max(error, offs[worst] ?? 0)) worst = i;
    }
    return worst < 0 ? [] : [worst];
  });
}

const distance = (a: Place | undefined, b: Place | undefined): number =>
  a === undefined || b === undefined ? 0 : Math.hypot(a[0] - b[0], a[1] - b[1]);
