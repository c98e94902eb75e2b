import { boxOf, grown } from "../box.ts";
import type { Point } from "../frame.ts";
import type { LabelCandidate } from "../label-placement.ts";
import { capHeight, textWidth } from "../lettering.ts";
import type { PathShape } from "../scene.ts";
import { lineShape, textShape } from "../shapes.ts";
import { arrangementsByCost, evenCosts } from "./arrangement.ts";
import { indent, laneMargin, leaderCost, leaderRow, lift } from "./dimension.ts";
import { arrowhead, arrowLength } from "./dimension-line.ts";

/** An angle to be shown between the level line and one that leaves it at `apex`, toward the left. */
export interface AngleDimension {
  readonly role: string;
  readonly texts: readonly string[];
  readonly apex: Point;
  /** px down a px to the left, as drawn: a stretched drawing opens the angle, its value stays true. */
  readonly slope: number;
  /** Where the arc may stand, px from the apex, the best first. */
  readonly radii: readonly number[];
}

/** A place for the value: on a leader off the lower or the upper end of the arc, to the right or the left. */
interface AnglePlace {
  readonly lower: boolean;
  readonly side: 1 | -1;
  readonly row: number;
}

const places: readonly AnglePlace[] = [0, 1, 2, 3].flatMap((row) =>
  [true, false].flatMap((lower) => ([1, -1] as const).map((side) => ({ row, lower, side }))),
);
const arrangements = arrangementsByCost(
  evenCosts(8, 0.5),
  places.map(({ row, lower }) => leaderCost(row) + (lower ? 0 : 2)),
);

/** Candidates for an angle, the cheapest first: an arc across both lines, extended to a leader with the value. */
export function* angleCandidates(
  { role, texts, apex, slope, radii }: AngleDimension,
  size: number,
): Generator<LabelCandidate> {
  const arcs = radii.map((radius) => arcOf(apex, radius, Math.atan(slope)));
  for (const { offset, wording, place, cost } of arrangements) {
    const [arc, text, where] = [arcs[offset], texts[wording], places[place]];
    if (arc === undefined || text === undefined || where === undefined) continue;
    const leader = leaderOf(arc, where, text, size);
    const [, foot] = leader;
    const start: Point = [foot[0] + where.side * indent, foot[1] - lift];
    const label = textShape(`${role} value`, text, start, size, {
      anchor: where.side > 0 ? "start" : "end",
    });
    yield {
      text: label,
      strokes: [arc.points],
      leader,
      lane: grown(boxOf(arc.points), laneMargin),
      cost,
      shapes: () => [
        lineShape("dimension line", "thin", arc.points),
        lineShape("leader", "thin", leader),
        ...arc.heads(),
      ],
    };
  }
}

/** An arc between the two lines, with tails beyond them where it is too short for its arrowheads. */
interface Arc {
  readonly points: readonly Point[];
  readonly upper: Point;
  readonly lower: Point;
  readonly heads: () => readonly PathShape[];
}

const shortest = 3 * arrowLength;
const tail = arrowLength + 6;
const steps = 12;

function arcOf(apex: Point, radius: number, angle: number): Arc {
  const place = (turn: number): Point => [
    apex[0] - radius * Math.cos(turn),
    apex[1] + radius * Math.sin(turn),
  ];
  const outside = Math.abs(angle) * radius < shortest;
  const reach = outside ? tail / radius : 0;
  const [low, high] = [Math.min(0, angle), Math.max(0, angle)];
  const [from, to] = [low - reach, high + reach];
  const points = Array.from({ length: steps + 1 }, (_, i) =>
    place(from + ((to - from) * i) / steps),
  );
  const head = (turn: number, sign: number): PathShape =>
    arrowhead(place(turn), [sign * Math.sin(turn), sign * Math.cos(turn)]);
  const inward = outside ? 1 : -1;
  return {
    points,
    upper: place(from),
    lower: place(to),
    heads: () => [head(low, inward), head(high, -inward)],
  };
}

function leaderOf(
  { upper, lower }: Arc,
  where: AnglePlace,
  text: string,
  size: number,
): readonly [Point, Point, Point] {
  const end = where.lower ? lower : upper;
  const out = lift + where.row * leaderRow(size);
  const y = where.lower ? end[1] + out + capHeight(size) : end[1] - out;
  const width = textWidth(text, size) + indent;
  return [end, [end[0], y], [end[0] + where.side * width, y]];
}
