import type { Range } from "../../instrument/instrument.ts";
import { standing } from "../../profile/standing.ts";
import type { Point } from "../frame.ts";
import type { Scene, Shape } from "../scene.ts";
import { areaShape, lineShape, rectangle } from "../shapes.ts";

/** An outcome against the range accepted for it, both of one unit. */
export interface WindowMark {
  readonly role: string;
  readonly value: number;
  readonly range: Range;
}

const height = 42;
const column = 24;
const bandWidth = 14;
/** px that the accepted range has of the height; as much over and under it shows by how many of its widths a value misses it. */
const third = height / 3;

/**
 * Outcomes side by side, each against its own window: the windows are bands, drawn of one height, and a
 * thick tick stands where the value is. A bar spans a miss; one that goes off the picture ends in a point.
 */
export function windowMarks(title: string, marks: readonly WindowMark[]): Scene {
  return {
    width: marks.length * column,
    height,
    title,
    shapes: marks.flatMap((mark, i) => markShapes(mark, i * column + (column - bandWidth) / 2)),
  };
}

function markShapes({ role, value, range }: WindowMark, left: number): readonly Shape[] {
  const [low, high] = range;
  const right = left + bandWidth;
  const wide = Math.max(high - low, Number.MIN_VALUE);
  const wanted = 2 * third - (third * (value - low)) / wide;
  const y = Math.min(height - 2, Math.max(2, wanted));
  const band = areaShape(
    `window ${role}`,
    "thin",
    "window",
    rectangle([left, third], [right, 2 * third]),
  );
  const tick = lineShape(`value ${role}`, "thick", [
    [left - 3, y],
    [right + 3, y],
  ]);
  if (standing(value, range) !== "outside") return [band, tick];
  const edge = value < low ? 2 * third : third;
  const middle = (left + right) / 2;
  const bar = rectangle([middle - 2, y], [middle + 2, edge]);
  const miss = areaShape(`miss ${role}`, "none", "ink", bar);
  return [band, miss, y === wanted ? tick : pointShape(role, middle, y)];
}

/** At the picture's edge, toward what lies beyond it. */
function pointShape(role: string, x: number, y: number): Shape {
  const back = y < height / 2 ? 8 : -8;
  const corners: readonly Point[] = [
    [x, y],
    [x + 6, y + back],
    [x - 6, y + back],
  ];
  return areaShape(`beyond ${role}`, "none", "ink", corners);
}
