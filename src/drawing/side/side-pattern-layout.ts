import type { Side } from "../../profile/side.ts";
import { type Frame, type Point, pointAt } from "../frame.ts";
import { curvePoints } from "../path.ts";
import { firstRow, type MeasureFormat, nextRow } from "../section/section-layout.ts";

export interface SidePatternOptions {
  /** Room for the drawing, px. */
  readonly width: number;
  readonly height: number;
  readonly words: MeasureFormat;
  /** Where the break lies along the side, mm. */
  readonly breakAlong: number;
  /** Width of the strip the builder has, mm; null when none was stated. */
  readonly stock: number | null;
}

/** One pattern being drawn: the frame's x runs along the side, and its heights from the level edge. */
export interface SideLayout extends SidePatternOptions {
  readonly side: Side;
  readonly frame: Frame;
  readonly stretch: number;
  readonly size: number;
  /** Under the pattern and the strip, px down. */
  readonly foot: number;
}

export const narrow = 480;
/** px left of the tail seam, and right of the side for the names of its level lines. */
const ends = { wide: [24, 84], narrow: [16, 16] } as const;
/** Rows of names over the level edge. */
const markRows = { wide: 2, narrow: 4 } as const;
const stretches = [5, 4, 3, 2, 1];
const stripRoom = 26;

export function sideLayoutOf(side: Side, options: SidePatternOptions): SideLayout {
  const width = Math.max(options.width, 200);
  const height = Math.max(options.height, 140);
  const look = width < narrow ? "narrow" : "wide";
  const size = look === "narrow" ? 13 : 15;
  const over = markRows[look] * (size + 6) + 8;
  const under = firstRow(size) + nextRow(size) + 4 + stripRoom;
  const tallest = Math.max(side.deepest.under, options.stock ?? 0);
  const [left, right] = ends[look];
  const along = (width - left - right) / side.length;
  const room = height - over - under;
  const stretch = stretches.find((times) => tallest * along * times <= room) ?? 1;
  const up = Math.min(along * stretch, room / tallest);
  return {
    ...options,
    width,
    height,
    side,
    size,
    stretch: up / along,
    frame: { along, up, left, level: over, turned: false },
    foot: over + tallest * up,
  };
}

/** The height that a side filling the width wants: drawn taller than long on narrower sheets. */
export function sidePatternHeight(side: Side, stock: number | null, width: number): number {
  const look = width < narrow ? "narrow" : "wide";
  const size = look === "narrow" ? 13 : 15;
  const tallest = Math.max(side.deepest.under, stock ?? 0);
  const [left, right] = ends[look];
  const along = (width - left - right) / side.length;
  const rows = markRows[look] * (size + 6) + 8 + firstRow(size) + nextRow(size) + 4 + stripRoom;
  return Math.ceil(rows + tallest * along * (look === "narrow" ? 3 : width < 900 ? 2 : 1));
}

export const topPoints = ({ frame, side }: SideLayout, from: number, to: number): Point[] =>
  curvePoints(frame, from, to, (s) => -side.topAt(s), side.corners);

export const backPoints = ({ frame, side }: SideLayout): Point[] =>
  curvePoints(frame, 0, side.length, (s) => -side.backAt(s), side.corners);

export const levelPoints = (
  { frame, side }: SideLayout,
  under: number,
): readonly [Point, Point] => [pointAt(frame, 0, -under), pointAt(frame, side.length, -under)];
