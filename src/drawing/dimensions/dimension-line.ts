import type { Point } from "../frame.ts";
import type { PathShape } from "../scene.ts";
import { areaShape } from "../shapes.ts";

/** Length of a dimension line's arrowhead, px: narrow, closed and filled, as ISO 129-1 has it (from memory). */
export const arrowLength = 8;
const arrowHalfWidth = 1.6;

/** An arrowhead with its point at `tip`, pointing along the unit direction. */
export function arrowhead([x, y]: Point, [dx, dy]: Point): PathShape {
  const backX = x - dx * arrowLength;
  const backY = y - dy * arrowLength;
  return areaShape("arrowhead", "none", "ink", [
    [x, y],
    [backX - dy * arrowHalfWidth, backY + dx * arrowHalfWidth],
    [backX + dy * arrowHalfWidth, backY - dx * arrowHalfWidth],
  ]);
}

/** The lines of a dimension, its text apart. */
export interface DimensionLine {
  readonly extensions: readonly (readonly Point[])[];
  readonly line: readonly [Point, Point];
  /** Both together. */
  readonly strokes: readonly (readonly Point[])[];
  readonly heads: () => readonly PathShape[];
}

/** Extension lines leave the part after a gap and run a little past the dimension line, px. */
const gap = 2;
const past = 3;
/** A dimension shorter than this has its arrowheads outside, on tails so long. */
const shortest = 3 * arrowLength;
const tail = arrowLength + 5;

/** How far a dimension line of that length reaches beyond its ends. */
export const tailOf = (length: number): number => (length < shortest ? tail : 0);

/** An upright dimension line at x, between the heights of two points of the part. */
export function uprightLine(from: Point, to: Point, x: number): DimensionLine {
  const [a, b] = from[1] < to[1] ? [from, to] : [to, from];
  const extension = ([px, py]: Point) => extended(px, x, (q): Point => [q, py]);
  return lineOf(
    [...extension(a), ...extension(b)],
    spanned(a[1], b[1], (y) => [x, y], [0, 1]),
  );
}

/** A level dimension line at y, between the places along of two points of the part. */
export function levelLine(from: Point, to: Point, y: number): DimensionLine {
  const [a, b] = from[0] < to[0] ? [from, to] : [to, from];
  const extension = ([px, py]: Point) => extended(py, y, (q): Point => [px, q]);
  return lineOf(
    [...extension(a), ...extension(b)],
    spanned(a[0], b[0], (x) => [x, y], [1, 0]),
  );
}

/** From the part to just past the dimension line; none when the part is on the line. */
function extended(
  part: number,
  line: number,
  place: (along: number) => Point,
): readonly (readonly Point[])[] {
  if (Math.abs(line - part) <= gap + past) return [];
  const direction = Math.sign(line - part);
  return [[place(part + direction * gap), place(line + direction * past)]];
}

const lineOf = (
  extensions: DimensionLine["extensions"],
  { line, heads }: Pick<DimensionLine, "line" | "heads">,
): DimensionLine => ({ extensions, line, strokes: [...extensions, line], heads });

/** The line from low to high: arrowheads inside pointing out, or outside pointing in when there is no room. */
function spanned(
  low: number,
  high: number,
  place: (along: number) => Point,
  [dx, dy]: Point,
): Pick<DimensionLine, "line" | "heads"> {
  const reach = tailOf(high - low);
  const turn = reach > 0 ? 1 : -1;
  return {
    line: [place(low - reach), place(high + reach)],
    heads: () => [
      arrowhead(place(low), [turn * dx, turn * dy]),
      arrowhead(place(high), [-turn * dx, -turn * dy]),
    ],
  };
}
