import type { Side } from "../../profile/side.ts";
import { leastShown } from "../../profile/standing.ts";
import { type Point, pointAt } from "../frame.ts";
import type { Scene, Shape } from "../scene.ts";
import { areaShape, bandShape, lineShape } from "../shapes.ts";
import {
  backPoints,
  levelPoints,
  type SideLayout,
  type SidePatternOptions,
  sideLayoutOf,
  topPoints,
} from "./side-pattern-layout.ts";
import { sideLettering } from "./side-pattern-lettering.ts";

/** px of zone colour under the finished top edge. */
const wash = 5;

/**
 * The side unrolled, tail seam left: the strip it is cut from, its level edge, the finished top edge
 * and the back edge, and the marks to be carried to it. Heights may be drawn larger than lengths; what
 * is written is true.
 */
export function sidePatternOf(side: Side, options: SidePatternOptions): Scene {
  const layout = sideLayoutOf(side, options);
  const { width, height } = layout;
  const shapes = [...bodyShapes(layout), ...sideLettering(layout)];
  return { width, height, title: titleOf(layout), shapes };
}

function bodyShapes(layout: SideLayout): readonly Shape[] {
  const { side, breakAlong, stock, frame } = layout;
  const { length, deepest, datum } = side;
  const dome = topPoints(layout, 0, breakAlong);
  const flat = topPoints(layout, breakAlong, length);
  const back = backPoints(layout);
  const strip = [...levelPoints(layout, 0), ...levelPoints(layout, deepest.under).toReversed()];
  return [
    areaShape("strip needed", "dashed", "paper", strip),
    areaShape("side", "none", "wood", [...dome, ...flat, ...back.toReversed()]),
    ...zone("dome", dome),
    ...zone("flat", flat),
    lineShape("level edge", "thin", levelPoints(layout, 0)),
    ...(datum > leastShown ? [lineShape("datum", "thin", levelPoints(layout, datum))] : []),
    lineShape("back edge", "thick", back),
    ...[0, length].map((s) =>
      lineShape("end", "thick", [
        pointAt(frame, s, -side.topAt(s)),
        pointAt(frame, s, -side.backAt(s)),
      ]),
    ),
    ...side.marks.map(({ name, along }) =>
      lineShape(name, "thin", [
        pointAt(frame, along, 0),
        pointAt(frame, along, -side.backAt(along)),
      ]),
    ),
    ...(stock === null ? [] : [lineShape("strip you have", "chain", levelPoints(layout, stock))]),
  ];
}

function zone(name: "dome" | "flat", points: readonly Point[]): readonly Shape[] {
  return [
    bandShape(`${name} colour`, "none", name, points, ([x, y]) => [x, y + wash]),
    lineShape("finished top edge", "thick", points),
  ];
}

function titleOf({ side, words, stock }: SideLayout): string {
  const have = stock === null ? "" : ` You have a strip ${words.length(stock)} wide.`;
  return `The side unrolled: ${words.length(side.length)} long from the tail seam to the middle of the neck end, cut from a strip ${words.length(side.deepest.under)} wide.${have}`;
}
