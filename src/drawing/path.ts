import { curveLinearClosed, line } from "d3-shape";
import type { Frame, Point } from "./frame.ts";
import { pointAt } from "./frame.ts";

/** A number as a drawing writes it, to a hundredth. */
export const hundredth = (value: number): number => Math.round(value * 100) / 100;

const open = line<Point>().digits(2);
const closed = line<Point>().curve(curveLinearClosed).digits(2);

/** SVG path data through the points, to a hundredth of a px. */
export const pathOf = (points: readonly Point[]): string => open(points) ?? "";

/** The same, and back to the first. */
export const closedPathOf = (points: readonly Point[]): string => closed(points) ?? "";

/** px between the places at which a curve is looked at. */
const step = 5;
/** How far from the curve, px, a straight piece may run: too little to be seen. */
const deviation = 0.01;

/** The curve z(x) from x0 to x1, mm, as points on the drawing: both ends, the `corners` between them, and as many more as show no corner. */
export function curvePoints(
  frame: Frame,
  x0: number,
  x1: number,
  z: (x: number) => number,
  corners: readonly number[] = [],
): Point[] {
  const ends = [...corners.filter((x) => x > x0 && x < x1).sort((a, b) => a - b), x1];
  let last = pointAt(frame, x0, z(x0));
  const points = [last];
  let from = x0;
  for (const to of ends) {
    const count = Math.max(1, Math.ceil(((to - from) * frame.along) / step));
    let next = last;
    for (let i = 1; i <= count; i++) {
      const x = from + ((to - from) * i) / count;
      const passed = next;
      next = pointAt(frame, x, z(x));
      if (passed === last || runsBy(last, passed, next)) continue;
      points.push(passed);
      last = passed;
    }
    points.push(next);
    last = next;
    from = to;
  }
  return points;
}

/** Whether a straight line from a to b passes by p closely enough. */
const runsBy = ([ax, ay]: Point, [px, py]: Point, [bx, by]: Point): boolean =>
  Math.abs((bx - ax) * (py - ay) - (by - ay) * (px - ax)) <
  deviation * Math.hypot(bx - ax, by - ay);
