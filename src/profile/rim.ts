import { radians } from "../geometry/circle.ts";
import { type Dome, domeZ } from "../geometry/dome.ts";
import { edgeOf, highestOn, lowestOn } from "../geometry/outline/edge.ts";
import { lowest, type Peak } from "../geometry/peak.ts";
import { domedEnd, type Givens, isDomed } from "./givens.ts";
import type { BodySide, Half } from "./halves.ts";
import { rounding } from "./standing.ts";

/** The finished top edge of the rim at (x, y) on it, over the flat's plane: the dome, and neckward of a break the flat. */
export function rimZ(givens: Givens, dome: Dome, x: number, y: number): number {
  return isDomed(givens, x) ? domeZ(dome, x, y) : 0;
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

/** A height at a place of the rim's edge. */
interface RimPlace {
  readonly x: number;
  /** Null where the other side's is the same. */
  readonly side: BodySide | null;
  /** Length of edge from the tail seam. */
  readonly arc: number;
  readonly value: number;
}

export interface Removal {
  readonly most: RimPlace;
  readonly least: RimPlace;
}

/**
 * The most and the least that comes off anywhere on the rim; `pitch` in degrees. Negative where the level
 * rim was too low. On the flat, removal runs straight from nothing at the break to its value at the neck
 * end, so that end and the domed part are all there is to search.
 */
export function removalOver(givens: Givens, dome: Dome, pitch: number): Removal {
  const removal = removalOf(givens, dome, radians(pitch));
  return givens.halves
    .map((half) => removalAlong(givens, dome, half, removal))
    .reduce((bass, treble) => ({
      most: further(bass.most, treble.most, 1),
      least: further(bass.least, treble.least, -1),
    }));
}

/** The higher of two places (or the lower, with −1), on neither side where both are alike. */
function further(bass: RimPlace, treble: RimPlace, way: 1 | -1): RimPlace {
  const more = way * (treble.value - bass.value);
  if (Math.abs(more) <= rounding) return bass;
  return more > 0 ? { ...treble, side: "treble" } : { ...bass, side: "bass" };
}

function removalAlong(
  givens: Givens,
  dome: Dome,
  half: Half,
  removal: (x: number, z: number) => number,
): Removal {
  const { outline, sign } = half;
  const f = (x: number, halfWidth: number): number =>
    isDomed(givens, x) ? removal(x, domeZ(dome, x, sign * halfWidth)) : 0;
  const edge = edgeOf(outline, domedEnd(givens, half));
  const end = outline.length;
  const neckEnd = removal(end, rimZ(givens, dome, end, sign * outline.halfWidth(end)));
  const most = highestOn(outline, edge, f);
  const least = lowestOn(outline, edge, f);
  const atEnd: Peak = { x: outline.end, value: neckEnd };
  const placed = ({ x: u, value }: Peak): RimPlace => ({
    x: outline.placeAt(u)[0],
    side: null,
    arc: outline.arcLength(u),
    value,
  });
  return {
    most: placed(neckEnd > most.value ? atEnd : most),
    least: placed(neckEnd < least.value ? atEnd : least),
  };
}

/**
 * How far under the flat's plane a dish that sands the whole rim would cut, at the lowest place of the edge
 * neckward of the break; of no depth at no place where nowhere. Null where the sphere ends short of the
 * neck end.
 */
export function undercutOf(
  { halves, breakX }: Givens,
  dome: Dome,
): { readonly value: number; readonly x: number | null } | null {
  const lowestPlaces = halves.map(({ outline, sign }) => {
    const height = (u: number): number => {
      const [x, halfWidth] = outline.placeAt(u);
      return domeZ(dome, x, sign * halfWidth);
    };
    const places = edgeOf(outline, outline.end).us.filter((u) => u > breakX);
    const { x, value } = lowest(height, places, places.map(height));
    return { x: outline.placeAt(x)[0], value };
  });
  if (lowestPlaces.some((place) => Number.isNaN(place.value))) return null;
  const { x, value } = lowestPlaces.reduce((low, one) => (one.value < low.value ? one : low));
  return value < -rounding ? { value: -value, x } : { value: 0, x: null };
}
