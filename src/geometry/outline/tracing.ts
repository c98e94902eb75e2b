import { numberAt } from "../number-at.ts";
import { firstFrom, lengthOf, offRising, type Place } from "../polyline.ts";

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
  | { readonly why: "misses the tail" | "misses the neck end"; readonly by: number }
  | { readonly why: "halves differ"; readonly x: number; readonly by: number };

/** Half an outline as the drawing has it: x from the tail rising, y the half width. */
interface TracedHalf {
  readonly places: readonly Place[];
  /** How far the two halves of a whole outline lie apart at most; 0 for a half. */
  readonly apart: number;
}

export type TracedHalfResult =
  | { readonly ok: true; readonly half: TracedHalf }
  | { readonly ok: false; readonly fault: TracingFault };

/** Places nearer to the last than this say nothing new, and x rises by this much at least, mm. */
const nearest = 0.02;
const least = 0.002;
/** A run this close to the neck end's own line is its straight, mm. */
const straight = 0.05;
/** Halves further apart than this are not one outline drawn twice, mm. */
const mostApart = 6;

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
 * Half an outline from a framed drawing of it, open from tail to neck end, or of the whole, closed.
 * What runs back by no more than `slack` mm is the hand's tremble and is passed over. A whole outline's
 * halves are averaged.
 */
export function halfOf(drawn: readonly Place[], length: number, slack: number): TracedHalfResult {
  const places = thinned(drawn);
  if (places.length < 3) return refused({ why: "too few" });
  return isClosed(places) ? fromWhole(places, length, slack) : fromHalf(places, length, slack);
}

const refused = (fault: TracingFault): TracedHalfResult => ({ ok: false, fault });

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

function fromHalf(places: readonly Place[], length: number, slack: number): TracedHalfResult {
  const [first, last] = [places[0], places.at(-1)];
  if (first === undefined || last === undefined) return refused({ why: "too few" });
  const rising = first[0] <= last[0] ? places : places.toReversed();
  const mean = rising.reduce((sum, [, y]) => sum + y, 0);
  const chain = rising.map(([x, y]): Place => [x, mean < 0 ? -y : y]);
  const risen = asFunction(chain, length, slack);
  return Array.isArray(risen)
    ? { ok: true, half: { places: risen, apart: 0 } }
    : refused(risen as TracingFault);
}

function fromWhole(loop: readonly Place[], length: number, slack: number): TracedHalfResult {
  const sides = splitLoop(loop, slack);
  if (!Array.isArray(sides)) return refused(sides as TracingFault);
  const halves = sides.map((side) => asFunction(side, length, slack));
  const [left, right] = halves;
  if (!Array.isArray(left)) return refused(left as TracingFault);
  if (!Array.isArray(right)) return refused(right as TracingFault);
  const apart = left.map((place) => offRising(place, right));
  const most = Math.max(...apart);
  if (most > mostApart) {
    return refused({ why: "halves differ", x: left[apart.indexOf(most)]?.[0] ?? 0, by: most });
  }
  return { ok: true, half: { places: averaged(left, right), apart: most } };
}

/** Both sides from the tail to the neck end, half widths positive; the loop meets the centreline twice, at both ends. */
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
  return [there, back].map((side) => {
    const rising = (side[0]?.[0] ?? 0) <= (side.at(-1)?.[0] ?? 0) ? side : side.toReversed();
    return rising.map(([x, y]): Place => [x, Math.abs(y)]);
  }) as [Place[], Place[]];
}

/** A chain as half widths at strictly rising x from exactly 0 to exactly `length`, without the straight of the neck end. */
function asFunction(
  chain: readonly Place[],
  length: number,
  slack: number,
): Place[] | TracingFault {
  const [first, last] = [chain[0], chain.at(-1)];
  if (first === undefined || last === undefined) return { why: "too few" };
  if (Math.hypot(...first) > slack) return { why: "misses the tail", by: Math.hypot(...first) };
  if (Math.abs(last[0] - length) > slack) {
    return { why: "misses the neck end", by: Math.abs(last[0] - length) };
  }
  const below = chain.findIndex(([, y]) => y < -slack);
  if (below >= 0) return { why: "crosses the centreline", x: chain[below]?.[0] ?? 0 };
  const end = cornerOf(chain, length, slack);
  const risen: Place[] = [[0, 0]];
  let farthest = 0;
  for (const [x, y] of chain.slice(1, end)) {
    if (farthest - x > slack) return backward(chain, x, farthest - x);
    if (x > length + slack) return { why: "turns back", x: length, by: x - length };
    farthest = Math.max(farthest + least, x);
    if (farthest < length - least) risen.push([farthest, Math.max(0, y)]);
  }
  const corner = chain[end] ?? last;
  return [...risen, [length, Math.max(0, corner[1])]];
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

/** Half widths in the middle of both, at the places of both. */
function averaged(left: readonly Place[], right: readonly Place[]): Place[] {
  const xs = [...left, ...right].map(([x]) => x).sort((a, b) => a - b);
  const apart = xs.filter((x, i) => i === 0 || x - numberAt(xs, i - 1) >= least);
  const last = apart.length - 1;
  const end = left.at(-1)?.[0] ?? 0;
  const settled = apart.map((x, i) => (i === last ? end : x));
  return settled.map((x): Place => [x, (widthAt(left, x) + widthAt(right, x)) / 2]);
}

function widthAt(chain: readonly Place[], x: number): number {
  const i = firstFrom(chain, x);
  const [a, b] = [chain[Math.max(0, i - 1)], chain[i]];
  if (a === undefined || b === undefined) return chain.at(-1)?.[1] ?? 0;
  return b[0] === a[0] ? b[1] : a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]);
}
