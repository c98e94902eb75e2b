import { numberAt } from "../number-at.ts";
import type { Place } from "../polyline.ts";
import { framed, isClosed, type TracingEnds } from "./tracing.ts";

/**
 * A first guess at where a drawing's tail and neck end are. A closed one is taken to mirror itself about
 * its centreline; an open one runs from one end to the other, along the drawing's x or y. The widest
 * place is nearer the tail. Null when the drawing has no extent.
 */
export function guessedEnds(places: readonly Place[]): TracingEnds | null {
  const ends = isClosed(places) ? endsOfWhole(places) : endsOfHalf(places);
  if (ends === null) return null;
  const length = Math.hypot(ends.neck[0] - ends.tail[0], ends.neck[1] - ends.tail[1]);
  if (!(length > 0)) return null;
  const widths = framed(places, ends);
  const widest = widths.reduce<Place>(
    (best, p) => (Math.abs(p[1]) > Math.abs(best[1]) ? p : best),
    [0, 0],
  );
  const placed = widest[0] > length / 2 ? turned(ends) : ends;
  return isClosed(places) ? alongLowerBout(places, placed) : placed;
}

/** A closed drawing whose two sides lie farther apart, in shares of its length, has a cutaway or is no even body. */
const uneven = 0.002;

/** The part of the length a cutaway does not reach, in shares from the tail, and how many looks are taken there. */
const looks = { from: 0.05, to: 0.68, count: 16 };

/**
 * The axis of a body whose halves differ: the one about which its tailward part mirrors itself best, where a
 * cutaway is not. Found from the axis given by Gauss and Newton's steps, halved where they would make it worse.
 */
function alongLowerBout(places: readonly Place[], ends: TracingEnds): TracingEnds {
  const length = Math.hypot(ends.neck[0] - ends.tail[0], ends.neck[1] - ends.tail[1]);
  const laid = framed(places, ends);
  if (unevenness(laid) < uneven * length) return ends;
  const every = Math.ceil(laid.length / 1000);
  const few = laid.filter((_, i) => i % every === 0);
  const axis = bestAxis((line) => middlesOff(few, line), length);
  const met = crossingsOf(framed(laid, axis));
  if (met.length < 2) return ends;
  const [ux, uy] = [(ends.neck[0] - ends.tail[0]) / length, (ends.neck[1] - ends.tail[1]) / length];
  const on = (u: number): Place => {
    const [x, y] = [
      axis.tail[0] + u * (axis.neck[0] - axis.tail[0]),
      axis.tail[1] + u * (axis.neck[1] - axis.tail[1]),
    ];
    return [ends.tail[0] + ux * x - uy * y, ends.tail[1] + uy * x + ux * y];
  };
  return { tail: on(Math.min(...met)), neck: on(Math.max(...met)) };
}

/** How far off an axis the middles between both sides lie, at places along the tailward part. */
function middlesOff(laid: readonly Place[], axis: TracingEnds): readonly number[] {
  const along = framed(laid, axis);
  const us = along.map(([u]) => u);
  const [low, high] = [Math.min(...us), Math.max(...us)];
  return Array.from({ length: looks.count }, (_, i) => {
    const share = looks.from + ((looks.to - looks.from) * i) / (looks.count - 1);
    const met = crossingsOf(along.map(([a, b]): Place => [b, a - low - share * (high - low)]));
    return (Math.max(...met) + Math.min(...met)) / 2;
  });
}

/** The axis, a unit long, with the least squares of what lies off it, from y = 0 on. */
function bestAxis(off: (axis: TracingEnds) => readonly number[], length: number): TracingEnds {
  const axisOf = ([at, turn]: Place): TracingEnds => ({
    tail: [0, at],
    neck: [Math.cos(turn), at + Math.sin(turn)],
  });
  const sum = (values: readonly number[]): number => values.reduce((all, v) => all + v * v, 0);
  let best: Place = [0, 0];
  for (let round = 0; round < 20; round++) {
    const here = off(axisOf(best));
    const [step, twist] = [1e-3 * length, 1e-3];
    const byAt = off(axisOf([best[0] + step, best[1]])).map(
      (v, i) => (v - numberAt(here, i)) / step,
    );
    const byTurn = off(axisOf([best[0], best[1] + twist])).map(
      (v, i) => (v - numberAt(here, i)) / twist,
    );
    const dot = (a: readonly number[], b: readonly number[]): number =>
      a.reduce((all, v, i) => all + v * numberAt(b, i), 0);
    const [aa, at, tt] = [dot(byAt, byAt), dot(byAt, byTurn), dot(byTurn, byTurn)];
    const [ra, rt] = [dot(byAt, here), dot(byTurn, here)];
    const det = aa * tt - at * at;
    const move: Place = [(at * rt - tt * ra) / det, (at * ra - aa * rt) / det];
    const tried = [1, 0.5, 0.25, 0.125]
      .map((share): Place => [best[0] + share * move[0], best[1] + share * move[1]])
      .find((next) => sum(off(axisOf(next))) < sum(here));
    if (tried === undefined) break;
    best = tried;
  }
  return axisOf(best);
}

export const turned = ({ tail, neck }: TracingEnds): TracingEnds => ({ tail: neck, neck: tail });

function endsOfHalf(places: readonly Place[]): TracingEnds | null {
  const [tail, last] = [places[0], places.at(-1)];
  if (tail === undefined || last === undefined) return null;
  const [dx, dy] = [last[0] - tail[0], last[1] - tail[1]];
  const aslant = Math.min(Math.abs(dx), Math.abs(dy)) / Math.max(Math.abs(dx), Math.abs(dy));
  // The end that is not on the centreline is the neck end's corner.
  if (aslant > 0.25) return { tail, neck: last };
  const across = Math.abs(dx) > Math.abs(dy) ? 1 : 0;
  const onLine = (from: Place, to: Place): TracingEnds => ({
    tail: from,
    neck: across === 1 ? [to[0], from[1]] : [from[0], to[1]],
  });
  const ways = [onLine(tail, last), turned(onLine(last, tail))];
  // The centreline passes through the tail, and the outline lies on one side of it.
  const under = ways.map((way) => {
    const offs = framed(places, way).map(([, y]) => y);
    return Math.min(Math.abs(Math.min(...offs)), Math.abs(Math.max(...offs)));
  });
  return (numberAt(under, 0) <= numberAt(under, 1) ? ways[0] : ways[1]) ?? null;
}

/** Along the axis of its area about which it mirrors itself better. */
function endsOfWhole(places: readonly Place[]): TracingEnds | null {
  const area = areaOf(places);
  if (area === null) return null;
  const { centre, angle } = area;
  const axes = [angle, angle + Math.PI / 2].map((turn): TracingEnds => {
    const way: Place = [Math.cos(turn), Math.sin(turn)];
    return { tail: centre, neck: [centre[0] + way[0], centre[1] + way[1]] };
  });
  const ways = axes.map((axis) => {
    const laid = framed(places, axis);
    return { axis, laid, uneven: unevenness(laid) };
  });
  const [one, two] = ways;
  if (one === undefined || two === undefined) return null;
  const { axis, laid } = one.uneven <= two.uneven ? one : two;
  const met = crossingsOf(laid);
  if (met.length < 2) return null;
  const along = (u: number): Place => [
    axis.tail[0] + u * (axis.neck[0] - axis.tail[0]),
    axis.tail[1] + u * (axis.neck[1] - axis.tail[1]),
  ];
  return { tail: along(Math.min(...met)), neck: along(Math.max(...met)) };
}

interface Area {
  readonly centre: Place;
  /** Of one of its two principal axes. */
  readonly angle: number;
}

/** Centre and principal axis of the area within a closed line, by its moments. */
function areaOf(places: readonly Place[]): Area | null {
  const [ox, oy] = places[0] ?? [0, 0];
  let [area, mx, my, xx, yy, xy] = [0, 0, 0, 0, 0, 0];
  places.forEach((place, i) => {
    const next = places[(i + 1) % places.length] ?? place;
    const [ax, ay, bx, by] = [place[0] - ox, place[1] - oy, next[0] - ox, next[1] - oy];
    const twice = ax * by - bx * ay;
    area += twice / 2;
    mx += (twice * (ax + bx)) / 6;
    my += (twice * (ay + by)) / 6;
    xx += (twice * (ax * ax + ax * bx + bx * bx)) / 12;
    yy += (twice * (ay * ay + ay * by + by * by)) / 12;
    xy += (twice * (2 * ax * ay + ax * by + bx * ay + 2 * bx * by)) / 24;
  });
  if (!(Math.abs(area) > 0)) return null;
  const [cx, cy] = [mx / area, my / area];
  const [sxx, syy, sxy] = [xx / area - cx * cx, yy / area - cy * cy, xy / area - cx * cy];
  return { centre: [cx + ox, cy + oy], angle: Math.atan2(2 * sxy, sxx - syy) / 2 };
}

/** How unlike the two sides of the axis are: their widths at the same places, as a mean. */
function unevenness(laid: readonly Place[]): number {
  const us = laid.map(([u]) => u);
  const [low, high] = [Math.min(...us), Math.max(...us)];
  let sum = 0;
  const steps = 24;
  for (let i = 1; i < steps; i++) {
    const u = low + ((high - low) * i) / steps;
    const met = crossingsOf(laid.map(([a, b]): Place => [b, a - u]));
    sum += Math.abs(Math.max(...met) + Math.min(...met));
  }
  return sum / steps;
}

/** Where a closed line meets y = 0. */
function crossingsOf(laid: readonly Place[]): number[] {
  return laid.flatMap((a, i) => {
    const b = laid[(i + 1) % laid.length] ?? a;
    if (a[1] === 0) return [a[0]];
    return a[1] * b[1] < 0 ? [a[0] + ((b[0] - a[0]) * a[1]) / (a[1] - b[1])] : [];
  });
}
