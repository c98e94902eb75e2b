import { along, type Edge, edgeOf } from "./edge.ts";
import type { Outline } from "./outline.ts";
import { highest } from "./peak.ts";
import { rootBetween } from "./root.ts";

export interface EnclosingCircle {
  readonly centreX: number;
  readonly radius: number;
}

/** Tailward or neckward of the centre. */
type Side = -1 | 1;

/**
 * Smallest circle round both halves of the outline from the tail to x = `to`. By symmetry its centre
 * lies on the centreline, where the farthest points tailward and neckward of it are equally far: one
 * distance rises with the centre's x and the other falls, so there is one such place. Samples of the
 * edge bring it within a fiftieth; the same search between their peaks finds it.
 */
export function enclosingCircle(outline: Outline, to: number): EnclosingCircle {
  const edge = edgeOf(outline, to);
  const sampled = (x: number, side: Side): number => Math.max(...distances(edge, x, side));
  const exact = (x: number, side: Side): number =>
    highest((at) => (at - x) ** 2 + outline.halfWidth(at) ** 2, edge.xs, distances(edge, x, side))
      .value;
  const nearly = rootBetween((x) => sampled(x, -1) - sampled(x, 1), 0, to);
  const centreX = rootBetween(
    (x) => exact(x, -1) - exact(x, 1),
    Math.max(0, nearly - to / 50),
    Math.min(to, nearly + to / 50),
  );
  return { centreX, radius: Math.sqrt(Math.max(exact(centreX, -1), exact(centreX, 1))) };
}

/** Squared distance of each place of the edge from (centreX, 0); 0 for those on the other side. */
const distances = (edge: Edge, centreX: number, side: Side): readonly number[] =>
  along(edge, (x, y) => ((x - centreX) * side >= 0 ? (x - centreX) ** 2 + y * y : 0));
