import { type Box, boxOf } from "../box.ts";
import type { Point } from "../frame.ts";
import type { Way } from "../label-placement.ts";
import { capHeight, textWidth } from "../lettering.ts";
import { lineShape } from "../path.ts";
import type { TextShape } from "../scene.ts";
import { rising, risingChoices } from "./choice.ts";
import { type DimensionLine, levelLine, tailOf, uprightLine } from "./dimension-line.ts";

/** A measure to be shown, from one point of the part to another, px. */
export interface Dimension {
  readonly role: string;
  /** Its name and value, the fullest wording first; three at most. */
  readonly texts: readonly string[];
  readonly from: Point;
  readonly to: Point;
  /** Where its line may stand, px across from the part, the best first. */
  readonly stands: readonly number[];
}

/** px: values stand a little over their line or beside it, start a little along their shelf, and keep dimension lines apart. */
export const lift = 4;
export const indent = 3;
export const laneHalf = 5;

/** A place for the value of a height: beside its line, or on a shelf over or under it, to the right or the left. */
interface HeightPlace {
  readonly side: 1 | -1;
  readonly shelf: null | { readonly over: boolean; readonly row: number };
}

const rows = [0, 1, 2, 3, 4];
const heightPlaces: readonly HeightPlace[] = [
  ...([1, -1] as const).map((side) => ({ side, shelf: null })),
  ...rows.flatMap((row) =>
    [true, false].flatMap((over) =>
      ([1, -1] as const).map((side) => ({ side, shelf: { over, row } })),
    ),
  ),
];
/** A shelf costs more than a place beside the line, and more the further out it is. */
export const shelfCost = (row: number): number => 1 + 1.2 * row;
const heightChoices = risingChoices(
  rising(7, 0.6),
  heightPlaces.map(({ shelf }) => (shelf === null ? 0 : shelfCost(shelf.row))),
);

/** Space between one shelf and the next, px. */
export const shelfStep = (size: number): number => size + 4;

/** Ways to show a height, the cheapest first: an upright dimension line, its value level beside it or on a shelf. */
export function* heightWays(dimension: Dimension, size: number): Generator<Way> {
  const { from, to, role, texts, stands } = dimension;
  const lines = stands.map((at) => uprightLine(from, to, at));
  for (const { stand, wording, place, cost } of heightChoices) {
    const [at, line, text, where] = [
      stands[stand],
      lines[stand],
      texts[wording],
      heightPlaces[place],
    ];
    if (at === undefined || line === undefined || text === undefined || where === undefined)
      continue;
    const shelf = where.shelf === null ? [] : heightShelf(line, where, text, size);
    const middle = (line.line[0][1] + line.line[1][1] + capHeight(size)) / 2;
    const label: TextShape = {
      kind: "text",
      role: `${role} value`,
      x: at + where.side * (where.shelf === null ? lift + 2 : indent),
      y: where.shelf === null ? middle : (shelf[1]?.[1] ?? middle) - lift,
      anchor: where.side > 0 ? "start" : "end",
      size,
      text,
    };
    yield wayOf(label, line, shelf, cost);
  }
}

/** From an end of the dimension line out to the row, and along under the text. */
function heightShelf(
  { line: [head, foot] }: DimensionLine,
  { side, shelf }: HeightPlace,
  text: string,
  size: number,
): readonly Point[] {
  if (shelf === null) return [];
  const [x, end] = shelf.over ? head : foot;
  const out = lift + shelf.row * shelfStep(size);
  const y = shelf.over ? end - out : end + out + capHeight(size);
  const width = textWidth(text, size) + indent;
  return [
    [x, end],
    [x, y],
    [x + side * width, y],
  ];
}

/** Over the middle of the line, or carried out to the right or the left of it. */
const lengthPlaces = [0, 1, -1] as const;
const lengthChoices = risingChoices(
  rising(3, 3),
  lengthPlaces.map((place) => (place === 0 ? 0 : 1)),
);

/** Ways to show a length, the cheapest first: a level dimension line, its value over it, or carried out beside it where it is too short. */
export function* lengthWays(dimension: Dimension, size: number): Generator<Way> {
  const { from, to, role, texts, stands } = dimension;
  const left = Math.min(from[0], to[0]);
  const right = Math.max(from[0], to[0]);
  const out = tailOf(right - left) + lift;
  const lines = stands.map((at) => levelLine(from, to, at));
  for (const { stand, wording, place, cost } of lengthChoices) {
    const [at, line, text, side] = [
      stands[stand],
      lines[stand],
      texts[wording],
      lengthPlaces[place],
    ];
    if (at === undefined || line === undefined || text === undefined || side === undefined)
      continue;
    const end = side > 0 ? right : left;
    const shelf: readonly Point[] =
      side === 0
        ? []
        : [
            [end, at],
            [end + side * (out + textWidth(text, size)), at],
          ];
    const label: TextShape = {
      kind: "text",
      role: `${role} value`,
      x: side === 0 ? (left + right) / 2 : end + side * out,
      y: at - lift,
      anchor: side === 0 ? "middle" : side > 0 ? "start" : "end",
      size,
      text,
    };
    yield wayOf(label, line, shelf, cost);
  }
}

function wayOf(
  text: TextShape,
  { extensions, line, strokes, heads }: DimensionLine,
  shelf: readonly Point[],
  cost: number,
): Way {
  return {
    text,
    strokes,
    shelf,
    lane: laneOf([...line, ...shelf.slice(0, 2)]),
    cost,
    shapes: () => [
      ...extensions.map((points) => lineShape("extension line", "thin", points)),
      lineShape("dimension line", "thin", line),
      ...(shelf.length > 0 ? [lineShape("shelf", "thin", shelf)] : []),
      ...heads(),
    ],
  };
}

/** Clear ground to both sides of a dimension line, none at its ends: the next may start where it stops. */
function laneOf(points: readonly Point[]): Box {
  const { left, top, right, bottom } = boxOf(points);
  return right - left > bottom - top
    ? { left, top: top - laneHalf, right, bottom: bottom + laneHalf }
    : { left: left - laneHalf, top, right: right + laneHalf, bottom };
}
