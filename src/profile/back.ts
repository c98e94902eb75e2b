import { curvatureOf } from "../geometry/circle.ts";
import { type Dome, domeThrough, domeZ } from "../geometry/dome.ts";
import type { Givens } from "./givens.ts";
import { sphereCovers } from "./reach.ts";

/**
 * The back's sphere, upside down: heights run from the neck end's back edge outward. It passes
 * through both corners of the neck end, `depthNeck` under the flat, and through the tail seam,
 * `depthTail` under the finished top edge there. Null when so small a sphere ends short of the rim.
 */
export function backOf(givens: Givens, tailDrop: number): Dome | null {
  const { outline, instrument } = givens;
  const { backRadius, depthTail, depthNeck } = instrument.body;
  const back = domeThrough(
    curvatureOf(backRadius),
    outline.length,
    outline.halfWidth(outline.length),
    0,
    tailDrop + depthTail - depthNeck,
  );
  return back !== null && sphereCovers(back, outline, outline.length, 1) ? back : null;
}

/** Height of the back over the flat's plane (so negative), mm, at any (x, y) within the outline. */
export const backZ = ({ instrument }: Givens, back: Dome, x: number, y: number): number =>
  -instrument.body.depthNeck - domeZ(back, x, y);
