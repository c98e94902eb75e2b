import type { Frame, Point } from "./frame.ts";
import { pointAt } from "./frame.ts";
import type { FillStyle, LineStyle, PathShape } from "./scene.ts";

/** A number as a drawing writes it, to a hundredth. */
export const hundredth = (value: number): number => Math.round(value * 100) / 100;

/** SVG path data through the points, to a hundredth of a px. */
export function pathOf(points: readonly Point[]): string {
  let d = "";
  for (const [x, y] of points) d += `${d === "" ? "M" : "L"}${hundredth(x)},${hundredth(y)}`;
  return d;
}

export const closedPathOf = (points: readonly Point[]): string => `${pathOf(points)}Z`;

export const lineShape = (role: string, line: LineStyle, points: readonly Point[]): PathShape => ({
  kind: "path",
  role,
  line,
  d: pathOf(points),
});

export const areaShape = (
  role: string,
  line: LineStyle,
  fill: FillStyle,
  points: readonly Point[],
): PathShape => ({ kind: "path", role, line, fill, d: closedPathOf(points) });

/** px between the points a curve is drawn through: so little that no corner shows. */
const curveStep = 5;

/** The curve z(x) from x0 to x1, mm, as points on the drawing; both ends and the `corners` between them are met exactly. */
export function curvePoints(
  frame: Frame,
  x0: number,
  x1: number,
  z: (x: number) => number,
  corners: readonly number[] = [],
): Point[] {
  const ends = [x0, ...corners.filter((x) => x > x0 && x < x1).sort((a, b) => a - b), x1];
  const points: Point[] = [pointAt(frame, x0, z(x0))];
  for (let piece = 1; piece < ends.length; piece++) {
    const from = ends[piece - 1] ?? x0;
    const to = ends[piece] ?? x1;
    const steps = Math.max(1, Math.ceil(((to - from) * frame.along) / curveStep));
    for (let i = 1; i <= steps; i++) {
      const x = from + ((to - from) * i) / steps;
      points.push(pointAt(frame, x, z(x)));
    }
  }
  return points;
}
