import { radians } from "../geometry/circle.ts";
import { type Dome, domeZ } from "../geometry/dome.ts";
import { along, type Edge } from "../geometry/outline/edge.ts";
import { highest, lowest, type Peak } from "../geometry/peak.ts";
import type { Givens } from "./givens.ts";

/** The finished top edge of the rim at x, over the flat's plane: the dome up to the break, the flat from there. */
export function rimZ(givens: Givens, dome: Dome, x: number): number {
  return x < givens.breakX ? domeZ(dome, x, givens.outline.halfWidth(x)) : 0;
}

/** The datum, the level rim's top edge, over the flat's plane at x: it turns about the break by the pitch (degrees). */
export const datumZ = (breakX: number, pitch: number, x: number): number =>
  (x - breakX) * Math.tan(radians(pitch));

/** What comes off the level rim, square to the datum, `ahead` mm neckward of the break where the finished edge stands at z; `pitch` in radians. */
export const removalOf = (ahead: number, z: number, pitch: number): number =>
  ahead * Math.sin(pitch) - z * Math.cos(pitch);

export interface Removal {
  readonly most: Peak;
  readonly least: Peak;
}

/**
 * The most and the least that comes off anywhere on the rim; `pitch` in degrees, `edge` from the tail
 * to the break. Negative where the level rim was too low. On the flat, removal runs straight from
 * nothing at the break to its value at the neck end, so that end and `edge` are all there is to search.
 */
export function removalOver(givens: Givens, dome: Dome, pitch: number, edge: Edge): Removal {
  const { outline, breakX } = givens;
  const angle = radians(pitch);
  const f = (x: number, y = outline.halfWidth(x)): number =>
    x < breakX ? removalOf(x - breakX, domeZ(dome, x, y), angle) : 0;
  const values = along(edge, f);
  const neckEnd = { x: outline.length, value: removalOf(outline.length - breakX, 0, angle) };
  const most = highest(f, edge.xs, values);
  const least = lowest(f, edge.xs, values);
  return {
    most: neckEnd.value > most.value ? neckEnd : most,
    least: neckEnd.value < least.value ? neckEnd : least,
  };
}
