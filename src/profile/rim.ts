import { radians } from "../geometry/circle.ts";
import { type Dome, domeZ } from "../geometry/dome.ts";
import { along, type Edge, edgeOf } from "../geometry/outline/edge.ts";
import { highest, lowest, type Peak } from "../geometry/peak.ts";
import { type Givens, isDomed } from "./givens.ts";
import { rounding } from "./standing.ts";

/** The finished top edge of the rim at x, over the flat's plane: the dome, and neckward of a break the flat. */
export function rimZ(givens: Givens, dome: Dome, x: number): number {
  return isDomed(givens, x) ? domeZ(dome, x, givens.outline.halfWidth(x)) : 0;
}

/** How high over the flat's plane the datum passes at `breakX`: it turns about the break, and where all is domed it holds the neck end. */
export const datumHeight = ({ seat, breakX }: Givens, dome: Dome): number =>
  seat === null ? 0 : domeZ(dome, breakX, 0);

/** The datum, the level rim's top edge, over the flat's plane at x: it turns by the pitch (degrees). */
export const datumZ = (givens: Givens, dome: Dome, pitch: number, x: number): number =>
  datumHeight(givens, dome) + (x - givens.breakX) * Math.tan(radians(pitch));

/** What comes off the level rim, square to the datum, where the finished edge stands at z at x; `pitch` in radians. */
export function removalOf(
  givens: Givens,
  dome: Dome,
  pitch: number,
): (x: number, z: number) => number {
  const [sine, cosine, height] = [Math.sin(pitch), Math.cos(pitch), datumHeight(givens, dome)];
  return (x, z) => (x - givens.breakX) * sine - (z - height) * cosine;
}

export interface Removal {
  readonly most: Peak;
  readonly least: Peak;
}

/**
 * The most and the least that comes off anywhere on the rim; `pitch` in degrees, `edge` from the tail
 * to where the dome ends. Negative where the level rim was too low. On the flat, removal runs straight from
 * nothing at the break to its value at the neck end, so that end and `edge` are all there is to search.
 */
export function removalOver(givens: Givens, dome: Dome, pitch: number, edge: Edge): Removal {
  const { outline } = givens;
  const removal = removalOf(givens, dome, radians(pitch));
  const f = (x: number, y = outline.halfWidth(x)): number =>
    isDomed(givens, x) ? removal(x, domeZ(dome, x, y)) : 0;
  const values = along(edge, f);
  const end = outline.length;
  const neckEnd = { x: end, value: removal(end, rimZ(givens, dome, end)) };
  const most = highest(f, edge.xs, values);
  const least = lowest(f, edge.xs, values);
  return {
    most: neckEnd.value > most.value ? neckEnd : most,
    least: neckEnd.value < least.value ? neckEnd : least,
  };
}

/**
 * How far under the flat's plane a dish that sands the whole rim would cut, at the lowest place of the edge
 * neckward of the break; of no depth at no place where nowhere. Null where the sphere ends short of the
 * neck end.
 */
export function undercutOf(
  { outline, breakX }: Givens,
  dome: Dome,
): { readonly value: number; readonly x: number | null } | null {
  const places = edgeOf(outline, outline.length).xs.filter((x) => x > breakX);
  const height = (x: number): number => domeZ(dome, x, outline.halfWidth(x));
  const { x, value } = lowest(height, places, places.map(height));
  if (Number.isNaN(value)) return null;
  return value < -rounding ? { value: -value, x } : { value: 0, x: null };
}
