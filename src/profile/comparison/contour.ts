import { numberAt } from "../../geometry/number-at.ts";
import { rootBetween } from "../../geometry/root.ts";

/**
 * The part of a map where `holds` is true, as closed polygons, one or more a cell, wound alike so
 * that they fill as one. Its edge crosses the grid where halving finds the change, to a millionth of
 * a cell; between crossings it runs straight. What is thinner than a cell may be missed. Yields after
 * each row, of the grid and then of the cells.
 */
export function* regionIn(
  holds: (x: number, y: number) => boolean,
  xs: readonly number[],
  ys: readonly number[],
): Generator<void, readonly (readonly Place[])[]> {
  const known: boolean[][] = [];
  for (const y of ys) {
    known.push(xs.map((x) => holds(x, y)));
    yield;
  }
  const cuts = new Map<string, Place>();
  const cutBetween = (a: Place, b: Place, aHolds: boolean): Place => {
    const [first, last] = a[0] < b[0] || a[1] < b[1] ? [a, b] : [b, a];
    const key = `${first[0]} ${first[1]} ${last[0]} ${last[1]}`;
    const cut = cuts.get(key) ?? (aHolds ? changeBetween(holds, a, b) : changeBetween(holds, b, a));
    cuts.set(key, cut);
    return cut;
  };
  const cellsOf = (j: number): readonly (readonly Place[])[] =>
    xs.slice(1).flatMap((_, i) => {
      const places: readonly Place[] = [
        [numberAt(xs, i), numberAt(ys, j)],
        [numberAt(xs, i + 1), numberAt(ys, j)],
        [numberAt(xs, i + 1), numberAt(ys, j + 1)],
        [numberAt(xs, i), numberAt(ys, j + 1)],
      ];
      const inside = [known[j]?.[i], known[j]?.[i + 1], known[j + 1]?.[i + 1], known[j + 1]?.[i]];
      const polygon = places.flatMap((place, corner) => {
        const next = places[(corner + 1) % 4] ?? place;
        const [here, there] = [inside[corner] === true, inside[(corner + 1) % 4] === true];
        const cut = here === there ? [] : [cutBetween(place, next, here)];
        return here ? [place, ...cut] : cut;
      });
      return polygon.length > 2 ? [polygon] : [];
    });
  const polygons: (readonly Place[])[] = [];
  for (const j of ys.slice(1).keys()) {
    polygons.push(...cellsOf(j));
    yield;
  }
  return polygons;
}

/** Between a place that holds and one that does not, the last that does. */
function changeBetween(holds: (x: number, y: number) => boolean, yes: Place, no: Place): Place {
  let [inside, outside] = [0, 1];
  const along = (share: number): Place => [
    yes[0] + (no[0] - yes[0]) * share,
    yes[1] + (no[1] - yes[1]) * share,
  ];
  for (let halving = 0; halving < 20; halving++) {
    const middle = (inside + outside) / 2;
    const [x, y] = along(middle);
    if (holds(x, y)) inside = middle;
    else outside = middle;
  }
  return along(inside);
}

/** A place on a map of two inputs. */
export type Place = readonly [x: number, y: number];

/** A function sampled at the corners of a grid of rising xs and ys; `values[j][i]` is f(xs[i], ys[j]), NaN where there is none. */
export interface Grid {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly values: readonly (readonly number[])[];
}

/** Yields after each row. */
export function* gridIn(
  f: (x: number, y: number) => number,
  xs: readonly number[],
  ys: readonly number[],
): Generator<void, Grid> {
  const values: number[][] = [];
  for (const y of ys) {
    values.push(xs.map((x) => f(x, y)));
    yield;
  }
  return { xs, ys, values };
}

const valueOn = (grid: Grid, i: number, j: number): number => numberAt(grid.values[j] ?? [], i);

/** A cell's corners counter-clockwise from the lower left, as steps from (i, j). */
const corners = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
] as const;

/**
 * The lines where f = level, by marching squares over the grid. Each line crosses the grid's edges at
 * exact roots of f along them and runs straight between. A cell cut twice (a saddle) is joined by the
 * value in its middle.
 */
export function contourLines(
  f: (x: number, y: number) => number,
  grid: Grid,
  level: number,
): readonly (readonly Place[])[] {
  const crossing = crossingsOn(f, grid, level);
  const segments: (readonly [string, string])[] = [];
  const places = new Map<string, Place>();
  for (let j = 0; j + 1 < grid.ys.length; j++) {
    for (let i = 0; i + 1 < grid.xs.length; i++) {
      const cut = [0, 1, 2, 3].flatMap((edge) => crossing(i, j, edge) ?? []);
      for (const { key, place } of cut) places.set(key, place);
      for (const [a, b] of pairs(cut, () => middleIsOver(f, grid, i, j, level)))
        segments.push([a, b]);
    }
  }
  return joined(segments, places);
}

interface Cut {
  readonly key: string;
  readonly place: Place;
  /** Whether f is over the level at the corner this edge starts from. */
  readonly startsOver: boolean;
}

/** Edge 0 is a cell's lower one, then counter-clockwise. Neighbours share an edge, and so its crossing. */
function crossingsOn(f: (x: number, y: number) => number, grid: Grid, level: number) {
  const known = new Map<string, Place>();
  return (i: number, j: number, edge: number): Cut | null => {
    const [a, b] = [corners[edge], corners[(edge + 1) % 4]];
    if (a === undefined || b === undefined) return null;
    const [ai, aj, bi, bj] = [i + a[0], j + a[1], i + b[0], j + b[1]];
    const [from, to] = [valueOn(grid, ai, aj) - level, valueOn(grid, bi, bj) - level];
    if (Number.isNaN(from + to) || from > 0 === to > 0) return null;
    const key = `${Math.min(ai, bi)} ${Math.min(aj, bj)} ${aj === bj ? "along" : "up"}`;
    const place = known.get(key) ?? crossed(f, grid, level, [ai, aj], [bi, bj]);
    known.set(key, place);
    return { key, place, startsOver: from > 0 };
  };
}

function crossed(
  f: (x: number, y: number) => number,
  { xs, ys }: Grid,
  level: number,
  [ai, aj]: Place,
  [bi, bj]: Place,
): Place {
  const [ax, ay, bx, by] = [numberAt(xs, ai), numberAt(ys, aj), numberAt(xs, bi), numberAt(ys, bj)];
  return ay === by
    ? [rootBetween((x) => f(x, ay) - level, ax, bx), ay]
    : [ax, rootBetween((y) => f(ax, y) - level, ay, by)];
}

/** Which crossings of one cell belong together. */
function pairs(
  cut: readonly Cut[],
  middleOver: () => boolean,
): readonly (readonly [string, string])[] {
  const [a, b, c, d] = cut;
  if (a === undefined || b === undefined) return [];
  if (c === undefined || d === undefined) return [[a.key, b.key]];
  // Over corners joined through the middle: the lines cut off the corners that are under.
  return a.startsOver === middleOver()
    ? [
        [a.key, b.key],
        [c.key, d.key],
      ]
    : [
        [d.key, a.key],
        [b.key, c.key],
      ];
}

function middleIsOver(
  f: (x: number, y: number) => number,
  { xs, ys }: Grid,
  i: number,
  j: number,
  level: number,
): boolean {
  return (
    f((numberAt(xs, i) + numberAt(xs, i + 1)) / 2, (numberAt(ys, j) + numberAt(ys, j + 1)) / 2) >
    level
  );
}

/** Segments end to end: open lines from a loose end, then the rings. */
function joined(
  segments: readonly (readonly [string, string])[],
  places: ReadonlyMap<string, Place>,
): readonly (readonly Place[])[] {
  const next = new Map<string, string[]>();
  const link = (a: string, b: string): void => {
    next.set(a, [...(next.get(a) ?? []), b]);
  };
  for (const [a, b] of segments) {
    link(a, b);
    link(b, a);
  }
  const ends = [...next.keys()];
  const loose = ends.filter((key) => next.get(key)?.length === 1);
  return [...loose, ...ends].flatMap((start) => {
    const line = walk(start, next);
    return line.length > 1 ? [line.map((key) => places.get(key) ?? missing)] : [];
  });
}

const missing: Place = [Number.NaN, Number.NaN];

/** Follows the links from a place, using each up. */
function walk(start: string, next: Map<string, string[]>): readonly string[] {
  const line = [start];
  for (let here = start; ; ) {
    const there = next.get(here)?.pop();
    if (there === undefined) return line;
    const back = next.get(there) ?? [];
    back.splice(back.indexOf(here), 1);
    line.push(there);
    here = there;
  }
}
