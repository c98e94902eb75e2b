import { area } from "d3-shape";
import type { Point } from "./frame.ts";
import { closedPathOf, pathOf } from "./path.ts";
import type { FillStyle, GroupShape, LineStyle, PathShape, Shape, TextShape } from "./scene.ts";

export const lineShape = (role: string, line: LineStyle, points: readonly Point[]): PathShape => ({
  kind: "path",
  role,
  line,
  d: pathOf(points),
});

/** A line from the points back to the first, with nothing in it. */
export const outlineShape = (
  role: string,
  line: LineStyle,
  points: readonly Point[],
): PathShape => ({ kind: "path", role, line, d: closedPathOf(points) });

export const areaShape = (
  role: string,
  line: LineStyle,
  fill: FillStyle,
  points: readonly Point[],
): PathShape => ({ kind: "path", role, line, fill, d: closedPathOf(points) });

const band = area<readonly [edge: Point, other: Point]>()
  .x1(([[x]]) => x)
  .y1(([[, y]]) => y)
  .x0(([, [x]]) => x)
  .y0(([, [, y]]) => y)
  .digits(2);

/** The area between an edge and a line beside it, point for point. */
export const bandShape = (
  role: string,
  line: LineStyle,
  fill: FillStyle,
  edge: readonly Point[],
  beside: (point: Point, i: number) => Point,
): PathShape => ({
  ...{ kind: "path", role, line, fill },
  d: band(edge.map((point, i) => [point, beside(point, i)])) ?? "",
});

/** The corners of an upright rectangle, from `a` along its level side to the corner opposite. */
export const rectangle = ([ax, ay]: Point, [bx, by]: Point): readonly Point[] => [
  [ax, ay],
  [bx, ay],
  [bx, by],
  [ax, by],
];

/** A text on its base line at the place, in the middle of it unless anchored otherwise. */
export const textShape = (
  role: string,
  text: string,
  [x, y]: Point,
  size: number,
  look: Partial<Pick<TextShape, "anchor" | "strong">> = {},
): TextShape => ({ kind: "text", role, x, y, anchor: "middle", size, text, ...look });

export const group = (role: string, shapes: readonly Shape[]): GroupShape => ({
  kind: "group",
  role,
  shapes,
});
