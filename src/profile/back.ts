import { curvatureOf } from "../geometry/circle.ts";
import { type Dome, domeThrough, domeZ } from "../geometry/dome.ts";
import type { Givens } from "./givens.ts";
import { spanAt } from "./halves.ts";
import { sphereCovers } from "./reach.ts";
import { rimZ } from "./rim.ts";

/**
 * The back's sphere, upside down: heights run from the flat's plane outward. It passes through both
 * corners of the neck end, `depthNeck` under the finished top edge there (under the mean of both, where halves
 * that differ leave them some hundredths apart), and through the tail seam,
 * `depthTail` under the finished top edge there. Null when so small a sphere ends short of the rim.
 */
export function backOf(givens: Givens, dome: Dome): Dome | null {
  const { outline, halves, instrument } = givens;
  const { backRadius, depthTail, depthNeck } = instrument.body;
  const { length } = outline;
  const { half, middle } = spanAt(halves, length);
  const cornerZ =
    (rimZ(givens, dome, length, middle + half) + rimZ(givens, dome, length, middle - half)) / 2;
  const back = domeThrough(
    curvatureOf(backRadius),
    length,
    half,
    0,
    depthTail - domeZ(dome, 0, 0),
    depthNeck - cornerZ,
    middle,
  );
  const ends = halves.map(({ outline }) => outline.end);
  return back !== null && sphereCovers(back, halves, ends, 1) ? back : null;
}

/** Height of the back over the flat's plane (so negative), mm, at any (x, y) within the outline. */
export const backZ = (back: Dome, x: number, y: number): number => -domeZ(back, x, y);
