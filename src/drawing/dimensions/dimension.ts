import { type Box, boxOf } from "../box.ts";
import type { Point } from "../frame.ts";
import type { LabelCandidate } from "../label-placement.ts";
import { capHeight, textWidth } from "../lettering.ts";
import type { TextShape } from "../scene.ts";
import { lineShape, textShape } from "../shapes.ts";
import { arrangementsByCost, evenCosts } from "./arrangement.ts";
import { type DimensionLine, levelLine, tailOf, uprightLine } from "./dimension-line.ts";

/** A measure to be shown, from one point of the part to another, px. */
export interface Dimension {
  readonly role: string;
  /** Its name and value, the fullest wording first; three at most. */
  readonly texts: readonly string[];
  readonly from: Point;
  readonly to: Point;
  /** Where its line may stand, px across from the part, the best first. */
  readonly offsets: readonly number[];
}

/** px: values stand a little over their line or beside it, start a little along their leader, and keep dimension lines apart. */
export const lift = 4;
export const indent = 3;
export const laneMargin = 5;

/** A place for the value of a height: beside its line, or on a leader over or under it, to the right or the left. */
interface HeightPlace {
  readonly side: 1 | -1;
  readonly leader: null | { readonly over: boolean; readonly row: number };
}

const rows = [0, 1, 2, 3, 4];
const heightPlaces: readonly HeightPlace[] = [
  ...([1, -1] as const).map((side) => ({ side, leader: null })),
  ...rows.flatMap((row) =>
    [true, false].flatMap((over) =>
      ([1, -1] as const).map((side) => ({ side, leader: { over, row } })),
    ),
  ),
];
/** A leader costs more than a place beside the line, and more the further out it is. */
export const leaderCost = (row: number): number => 1 + 1.2 * row;
const heightArrangements = arrangementsByCost(
  evenCosts(7, 0.6),
  heightPlaces.map(({ leader }) => (leader === null ? 0 : leaderCost(leader.row))),
);

/** Space between one leader and the next, px. */
export const leaderRow = (size: number): number => size + 4;

/** Candidates for a height, the cheapest first: an upright dimension line, its value level beside it or on a leader. */
export function* heightCandidates(dimension: Dimension, size: number): Generator<LabelCandidate> {
  const { from, to, role, texts, offsets } = dimension;
  const lines = offsets.map((at) => uprightLine(from, to, at));
  for (const { offset, wording, place, cost } of heightArrangements) {
    const [at, line, text, where] = [
      offsets[offset],
      lines[offset],
      texts[wording],
      heightPlaces[place],
    ];
    if (at === undefined || line === undefined || text === undefined || where === undefined)
      continue;
    const leader = where.leader === null ? [] : heightLeader(line, where, text, size);
    const middle = (line.line[0][1] + line.line[1][1] + capHeight(size)) / 2;
    const x = at + where.side * (where.leader === null ? lift + 2 : indent);
    const y = where.leader === null ? middle : (leader[1]?.[1] ?? middle) - lift;
    const label = textShape(`${role} value`, text, [x, y], size, {
      anchor: where.side > 0 ? "start" : "end",
    });
    yield candidateOf(label, line, leader, cost);
  }
}

/** From an end of the dimension line out to the row, and along under the text. */
function heightLeader(
  { line: [head, foot] }: DimensionLine,
  { side, leader }: HeightPlace,
  text: string,
  size: number,
): readonly Point[] {
  if (leader === null) return [];
  const [x, end] = leader.over ? head : foot;
  const out = lift + leader.row * leaderRow(size);
  const y = leader.over ? end - out : end + out + capHeight(size);
  const width = textWidth(text, size) + indent;
  return [
    [x, end],
    [x, y],
    [x + side * width, y],
  ];
}

/** Over the middle of the line, or carried out to the right or the left of it. */
const lengthPlaces = [0, 1, -1] as const;
const lengthArrangements = arrangementsByCost(
  evenCosts(3, 3),
  lengthPlaces.map((place) => (place === 0 ? 0 : 1)),
);

/** Candidates for a length, the cheapest first: a level dimension line, its value over it, or carried out beside it where it is too short. */
export function* lengthCandidates(dimension: Dimension, size: number): Generator<LabelCandidate> {
  const { from, to, role, texts, offsets } = dimension;
  const left = Math.min(from[0], to[0]);
  const right = Math.max(from[0], to[0]);
  const out = tailOf(right - left) + lift;
  const lines = offsets.map((at) => levelLine(from, to, at));
  for (const { offset, wording, place, cost } of lengthArrangements) {
    const [at, line, text, side] = [
      offsets[offset],
      lines[offset],
      texts[wording],
      lengthPlaces[place],
    ];
    if (at === undefined || line === undefined || text === undefined || side === undefined)
      continue;
    const end = side > 0 ? right : left;
    const leader: readonly Point[] =
      side === 0
        ? []
        : [
            [end, at],
            [end + side * (out + textWidth(text, size)), at],
          ];
    const x = side === 0 ? (left + right) / 2 : end + side * out;
    const label = textShape(`${role} value`, text, [x, at - lift], size, {
      anchor: side === 0 ? "middle" : side > 0 ? "start" : "end",
    });
    yield candidateOf(label, line, leader, cost);
  }
}

function candidateOf(
  text: TextShape,
  { extensions, line, strokes, heads }: DimensionLine,
  leader: readonly Point[],
  cost: number,
): LabelCandidate {
  return {
    text,
    strokes,
    leader,
    lane: laneOf([...line, ...leader.slice(0, 2)]),
    cost,
    shapes: () => [
      ...extensions.map((points) => lineShape("extension line", "thin", points)),
      lineShape("dimension line", "thin", line),
      ...(leader.length > 0 ? [lineShape("leader", "thin", leader)] : []),
      ...heads(),
    ],
  };
}

/** Clear ground to both sides of a dimension line, none at its ends: the next may start where it stops. */
function laneOf(points: readonly Point[]): Box {
  const { left, top, right, bottom } = boxOf(points);
  return right - left > bottom - top
    ? { left, top: top - laneMargin, right, bottom: bottom + laneMargin }
    : { left: left - laneMargin, top, right: right + laneMargin, bottom };
}
