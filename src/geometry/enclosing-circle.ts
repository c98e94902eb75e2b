import { along, type Edge, edgeOf } from "./edge.ts";
import type { Outline } from "./outline.ts";
import { highest } from "./peak.ts";
import { rootBetween } from "./root.ts";

export interface EnclosingCircle {
  readonly centreX: number;
  readonly radius: number;
}

/**
 * Smallest circle round both halves of the outline from the tail to x = `to`. By symmetry its centre
 * lies on the centreline, where the farthest points tailward and neckward of it are equally far: one
 * distance rises with the centre's x and the other falls, so there is one such place.
 */
export function enclosingCircle(outline: Outline, to: number): EnclosingCircle {
  const edge = edgeOf(outline, to);
  const centreX = rootBetween(
    (x) => farthestOf(outline, edge, x, -1) - farthestOf(outline, edge, x, 1),
    0,
    to,
  );
  const radius2 = Math.max(
    farthestOf(outline, edge, centreX, -1),
    farthestOf(outline, edge, centreX, 1),
  );
  return { centreX, radius: Math.sqrt(radius2) };
}

/** Greatest squared distance from (centreX, 0) to the outline on one side of it: −1 tailward, 1 neckward. */
function farthestOf(outline: Outline, edge: Edge, centreX: number, side: -1 | 1): number {
  const distance2 = (x: number, y: number): number =>
    (x - centreX) * side > 0 ? (x - centreX) ** 2 + y * y : y * y;
  return highest((x) => distance2(x, outline.halfWidth(x)), edge.xs, along(edge, distance2)).value;
}
