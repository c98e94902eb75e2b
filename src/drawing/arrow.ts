import type { Point } from "./frame.ts";
import { areaShape } from "./path.ts";
import type { PathShape } from "./scene.ts";

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
