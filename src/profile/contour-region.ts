import { at } from "../geometry/peak.ts";
import type { Place } from "./contour.ts";

/**
 * The part of a map where `holds` is true, as closed polygons, one or more a cell, wound alike so
 * that they fill as one. Its edge crosses the grid where halving finds the change, to a millionth of
 * a cell; between crossings it runs straight. What is thinner than a cell may be missed.
 */
export function regionOf(
  holds: (x: number, y: number) => boolean,
  xs: readonly number[],
  ys: readonly number[],
): readonly (readonly Place[])[] {
  const known = ys.map((y) => xs.map((x) => holds(x, y)));
  const cuts = new Map<string, Place>();
  const cutBetween = (a: Place, b: Place, aHolds: boolean): Place => {
    const [first, last] = a[0] < b[0] || a[1] < b[1] ? [a, b] : [b, a];
    const key = `${first[0]} ${first[1]} ${last[0]} ${last[1]}`;
    const cut = cuts.get(key) ?? (aHolds ? changeBetween(holds, a, b) : changeBetween(holds, b, a));
    cuts.set(key, cut);
    return cut;
  };
  return ys.slice(1).flatMap((_, j) =>
    xs.slice(1).flatMap((_, i) => {
      const places: readonly Place[] = [
        [at(xs, i), at(ys, j)],
        [at(xs, i + 1), at(ys, j)],
        [at(xs, i + 1), at(ys, j + 1)],
        [at(xs, i), at(ys, j + 1)],
      ];
      const inside = [known[j]?.[i], known[j]?.[i + 1], known[j + 1]?.[i + 1], known[j + 1]?.[i]];
      const polygon = places.flatMap((place, corner) => {
        const next = places[(corner + 1) % 4] ?? place;
        const [here, there] = [inside[corner] === true, inside[(corner + 1) % 4] === true];
        const cut = here === there ? [] : [cutBetween(place, next, here)];
        return here ? [place, ...cut] : cut;
      });
      return polygon.length > 2 ? [polygon] : [];
    }),
  );
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
