import { lengthOf, offPolyline, offRising, type Place } from "../polyline.ts";

/** Where a drawing's centreline leaves the tail and meets the neck end, in the drawing's own coordinates, mm. */
export interface TracingEnds {
  readonly tail: Place;
  readonly neck: Place;
}

/** Why a drawing is no outline; `x` from the tail and `by` in mm. */
export type TracingFault =
  | { readonly why: "too few" }
  | { readonly why: "turns back"; readonly x: number; readonly by: number }
  | { readonly why: "folds"; readonly x: number }
  | { readonly why: "crosses the centreline"; readonly x: number }
  | { readonly why: "misses the tail" | "misses the neck end"; readonly by: number };

/** Half an outline as the drawing has it: x from the tail, rising but round a cutaway's horn, and y the half width. */
type DrawnHalf = readonly Place[];

/** What a drawing holds of a body: one half, on the side it is drawn on, or both. */
interface DrawnHalves {
  /** On the side where the framed drawing's y is positive. */
  readonly bass: DrawnHalf | null;
  readonly treble: DrawnHalf | null;
  /** How far both lie apart at most, one laid on the other; 0 where there is one. */
  readonly apart: number;
}

export type DrawnHalvesResult =
  | { readonly ok: true; readonly halves: DrawnHalves }
  | { readonly ok: false; readonly fault: TracingFault };

/** Places nearer to the last than this say nothing new, and x rises by this much at least, mm. */
const nearest = 0.02;
const least = 0.002;
/** A run this close to the neck end's own line is its straight, mm. */
const straight = 0.05;
/** Tailward of this share of the length a line that runs back is no cutaway's. */
const cutawayFrom = 0.5;

/** The drawing moved so that the tail is (0, 0) and the neck end lies along x. */
export function framed(places: readonly Place[], { tail, neck }: TracingEnds): Place[] {
  const [dx, dy] = [neck[0] - tail[0], neck[1] - tail[1]];
  const length = Math.hypot(dx, dy);
  return places.map(([x, y]) => {
    const [u, v] = [x - tail[0], y - tail[1]];
    return [(u * dx + v * dy) / length, (v * dx - u * dy) / length];
  });
}

/**
 * The halves of an outline from a framed drawing of one, open from tail to neck end, or of the whole, closed.
 * What runs back by no more than `slack` mm is the hand's tremble and is passed over; what runs back by more
 * neckward of the body's middle is a cutaway.
 */
export function halvesIn(
  drawn: readonly Place[],
  length: number,
  slack: number,
): DrawnHalvesResult {
  const places = thinned(drawn);
  if (places.length < 3) return refused({ why: "too few" });
  return isClosed(places) ? fromWhole(places, length, slack) : fromHalf(places, length, slack);
}

const refused = (fault: TracingFault): DrawnHalvesResult => ({ ok: false, fault });

/** A drawing whose ends meet goes round the whole body. */
export function isClosed(places: readonly Place[]): boolean {
  const [first, last] = [places[0], places.at(-1)];
  if (first === undefined || last === undefined) return false;
  return Math.hypot(last[0] - first[0], last[1] - first[1]) < 0.02 * lengthOf(places);
}

function thinned(drawn: readonly Place[]): Place[] {
  const places: Place[] = [];
  for (const place of drawn) {
    const before = places.at(-1);
    const far = before === undefined ? 1 : Math.hypot(place[0] - before[0], place[1] - before[1]);
    if (far >= nearest) places.push(place);
  }
  return places;
}

function fromHalf(places: readonly Place[], length: number, slack: number): DrawnHalvesResult {
  const [first, last] = [places[0], places.at(-1)];
  if (first === undefined || last === undefined) return refused({ why: "too few" });
  const rising = first[0] <= last[0] ? places : places.toReversed();
  const isBass = rising.reduce((sum, [, y]) => sum + y, 0) >= 0;
  const half = halfAlong(
    rising.map(([x, y]): Place => [x, isBass ? y : -y]),
    length,
    slack,
  );
  if (!Array.isArray(half)) return refused(half as TracingFault);
  return {
    ok: true,
    halves: { bass: isBass ? half : null, treble: isBass ? null : half, apart: 0 },
  };
}

function fromWhole(loop: readonly Place[], length: number, slack: number): DrawnHalvesResult {
  const sides = splitLoop(loop, slack);
  if (!Array.isArray(sides)) return refused(sides as TracingFault);
  const [bass, treble] = sides.map((side) => halfAlong(side, length, slack));
  if (!Array.isArray(bass)) return refused(bass as TracingFault);
  if (!Array.isArray(treble)) return refused(treble as TracingFault);
  return { ok: true, halves: { bass, treble, apart: apartAtMost(bass, treble) } };
}

/** Each half is measured against the other: a horn on one reaches farther than all of the other. */
function apartAtMost(one: DrawnHalf, two: DrawnHalf): number {
  const off = (from: DrawnHalf, to: DrawnHalf): number => {
    const every = Math.ceil(from.length / lookedAt);
    const places = from.filter((_, i) => i % every === 0);
    const rises = to.every(([x], i) => x > (to[i - 1]?.[0] ?? Number.NEGATIVE_INFINITY));
    return Math.max(...places.map((place) => (rises ? offRising : offPolyline)(place, to)));
  };
  return Math.max(off(one, two), off(two, one));
}

/** So many places of a half are laid on the other at most. */
const lookedAt = 400;

/** Both sides from the tail to the neck end, the bass side first, half widths positive; the loop meets the centreline twice, at both ends. */
function splitLoop(
  closed: readonly Place[],
  slack: number,
): readonly [Place[], Place[]] | TracingFault {
  const [first, last] = [closed[0], closed.at(-1)];
  const same = first && last && Math.hypot(first[0] - last[0], first[1] - last[1]) < nearest;
  const loop = same ? closed.slice(0, -1) : closed;
  const ring: Place[] = [];
  const crossings: number[] = [];
  loop.forEach((a, i) => {
    const b = loop[(i + 1) % loop.length] ?? a;
    if (a[1] === 0) crossings.push(ring.length);
    ring.push(a);
    if (a[1] * b[1] < 0) {
      crossings.push(ring.length);
      ring.push([a[0] + ((b[0] - a[0]) * a[1]) / (a[1] - b[1]), 0]);
    }
  });
  const xOf = (i: number): number => ring[i]?.[0] ?? 0;
  const byX = [...crossings].sort((a, b) => xOf(a) - xOf(b));
  const [tail, neck] = [byX[0], byX.at(-1)];
  if (tail === undefined || neck === undefined || tail === neck) {
    return { why: "misses the tail", by: Math.min(...loop.map(([, y]) => Math.abs(y))) };
  }
  const stray = byX.find((i) => xOf(i) - xOf(tail) > slack && xOf(neck) - xOf(i) > slack);
  if (stray !== undefined) return { why: "crosses the centreline", x: xOf(stray) };
  const [one, two] = [Math.min(tail, neck), Math.max(tail, neck)];
  const there = ring.slice(one, two + 1);
  const back = [...ring.slice(two), ...ring.slice(0, one + 1)];
  const height = (side: readonly Place[]): number => side.reduce((sum, [, y]) => sum + y, 0);
  const sides = height(there) >= height(back) ? [there, back] : [back, there];
  return sides.map((side) => {
    const rising = (side[0]?.[0] ?? 0) <= (side.at(-1)?.[0] ?? 0) ? side : side.toReversed();
    return rising.map(([x, y]): Place => [x, Math.abs(y)]);
  }) as [Place[], Place[]];
}

/**
 * A chain as half widths from exactly (0, 0) to exactly `length`, without the straight of the neck end: at strictly
 * rising x, but from a cutaway's horn on as drawn.
 */
function halfAlong(chain: readonly Place[], length: number, slack: number): Place[] | TracingFault {
  const [first, last] = [chain[0], chain.at(-1)];
  if (first === undefined || last === undefined) return { why: "too few" };
  if (Math.hypot(...first) > slack) return { why: "misses the tail", by: Math.hypot(...first) };
  if (Math.abs(last[0] - length) > slack) {
    return { why: "misses the neck end", by: Math.abs(last[0] - length) };
  }
  const below = chain.findIndex(([, y]) => y < -slack);
  if (below >= 0) return { why: "crosses the centreline", x: chain[below]?.[0] ?? 0 };
  const end = cornerOf(chain, length, slack);
  const corner: Place = [length, Math.max(0, (chain[end] ?? last)[1])];
  const body = chain.slice(1, end);
  const past = body.find(([x]) => x > length + slack);
  if (past !== undefined) return { why: "turns back", x: length, by: past[0] - length };
  const horn = hornIn(body, slack);
  const rising = horn === null ? body : body.slice(0, horn + 1);
  const beyond = horn === null ? [] : body.slice(horn + 1);
  const deepest = Math.min(...beyond.map(([x]) => x));
  if (deepest < cutawayFrom * length)
    return backward(chain, deepest, (body[horn ?? 0]?.[0] ?? 0) - deepest);
  const crossing = horn === null ? null : selfCrossing(chain);
  if (crossing !== null) return { why: "folds", x: crossing[0] };
  return [
    ...risenFrom(rising, length),
    ...beyond.filter(([x]) => x < length - least).map(([x, y]): Place => [x, Math.max(0, y)]),
    corner,
  ];
}

/** The place the line runs back from, by more than `slack`; null where it does nowhere. */
function hornIn(places: readonly Place[], slack: number): number | null {
  let farthest = 0;
  for (let i = 1; i < places.length; i++) {
    const [x, most] = [places[i]?.[0] ?? 0, places[farthest]?.[0] ?? 0];
    if (x > most) farthest = i;
    else if (most - x > slack) return farthest;
  }
  return null;
}

/** The places with x made to rise strictly, from the tail to short of the neck end. */
function risenFrom(places: readonly Place[], length: number): Place[] {
  const risen: Place[] = [[0, 0]];
  let farthest = 0;
  for (const [x, y] of places) {
    farthest = Math.max(farthest + least, x);
    if (farthest < length - least) risen.push([farthest, Math.max(0, y)]);
  }
  return risen;
}

/** The first place from which on all lie on the neck end's own line, drawn exactly, nearly, or by a trembling hand. */
function cornerOf(chain: readonly Place[], length: number, slack: number): number {
  const onLine = (within: number): number => {
    let i = chain.length - 1;
    while (i > 0 && (chain[i - 1]?.[0] ?? 0) >= length - within) i--;
    return i;
  };
  const corners = [least, straight, slack].map(onLine);
  return corners.find((i) => (chain[i]?.[1] ?? 0) > 1) ?? onLine(slack);
}

/** Runs back toward the tail; where it also crosses itself, that is the better word for it. */
function backward(chain: readonly Place[], x: number, by: number): TracingFault {
  const crossing = selfCrossing(chain);
  return crossing === null ? { why: "turns back", x, by } : { why: "folds", x: crossing[0] };
}

/** More places than this are not searched for a crossing pair by pair. */
const searched = 3000;

/** A place near which a line crosses itself; null where it does not, or is too long to be searched. */
export function selfCrossing(chain: readonly Place[]): Place | null {
  if (chain.length > searched) return null;
  for (let i = 1; i < chain.length; i++) {
    for (let j = i + 2; j < chain.length; j++) {
      const [a, b, c, d] = [chain[i - 1], chain[i], chain[j - 1], chain[j]];
      if (a && b && c && d && crosses(a, b, c, d)) return c;
    }
  }
  return null;
}

function crosses(a: Place, b: Place, c: Place, d: Place): boolean {
  const side = (p: Place, q: Place, r: Place): number =>
    (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}
