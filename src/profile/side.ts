import { radians } from "../geometry/circle.ts";
import type { Place } from "../geometry/polyline.ts";
import { backZ } from "./back.ts";
import type { Givens } from "./givens.ts";
import type { Half } from "./halves.ts";
import { type Profile, type Station, stationsOn } from "./outcome.ts";
import { removalOf, rimZ } from "./rim.ts";
import { deepestOn } from "./station.ts";

/**
 * One half of the side unrolled flat. It stands as a cylinder over the outline, so it unrolls exactly:
 * `along` runs from the tail seam on the edge to the neck end's corner, and on along the straight to the
 * centreline. Heights are mm under the level edge the side starts with, which unrolls to a straight line.
 * The outline is taken on the flat's plane and the level edge leans to it by the pitch: at a usual
 * pitch that is 0.1 mm in the length of a body, and is left out.
 */
export interface Side {
  /** From the tail seam to the neck end's corner, and to the centreline beyond it. */
  readonly corner: number;
  readonly length: number;
  /** The datum lies this far under the level edge: `rimOffset`. */
  readonly datum: number;
  /** The finished top edge and the back edge under the level edge. */
  readonly topAt: (along: number) => number;
  readonly backAt: (along: number) => number;
  /** Places where the top edge or the outline changes its curve; between them all is smooth. */
  readonly corners: readonly number[];
  readonly marks: readonly SideMark[];
  /** Where the back edge lies deepest, and how deep: the width of strip the side is cut from. */
  readonly deepest: SidePlace;
}

export interface SideMark {
  readonly name: string;
  readonly along: number;
}

/** How far under the level edge something lies at a place along the side. */
interface SidePlace {
  readonly along: number;
  readonly under: number;
}

/** What comes off the level rim at (x, y) on its edge, `rimOffset` included: never negative. */
export function comesOffAt(givens: Givens, profile: Profile, x: number, y: number): number {
  const { dome, pitch, rimOffset } = profile;
  return rimOffset + removalOf(givens, dome, radians(pitch))(x, rimZ(givens, dome, x, y));
}

export function sideOf(givens: Givens, profile: Profile, half: Half = givens.halves[0]): Side {
  const { outline, sign } = half;
  const corner = outline.totalArc();
  const atCorner = outline.halfWidth(outline.length);
  const length = corner + atCorner;
  const placeAt = (along: number): Place =>
    along >= corner ? [outline.length, length - along] : outline.placeAtArc(along);
  // The straight across the neck end is finished as high as its corner.
  const edgeAt = (along: number): Place =>
    along >= corner ? [outline.length, sign * atCorner] : signed(sign, placeAt(along));
  const topAt = (along: number): number => comesOffAt(givens, profile, ...edgeAt(along));
  const backAt = (along: number): number => {
    const [x, y] = signed(sign, placeAt(along));
    return topAt(along) + rimZ(givens, profile.dome, ...edgeAt(along)) - backZ(profile.back, x, y);
  };
  const smooth = [...outline.knots, givens.breakX].map((u) => outline.arcLength(u));
  return {
    corner,
    length,
    datum: profile.rimOffset,
    topAt,
    backAt,
    corners: [...smooth, corner].sort((a, b) => a - b),
    marks: marksOf(stationsOn(profile, half.side), length),
    deepest: deepestPlace(givens, profile, half),
  };
}

const signed = (sign: 1 | -1, [x, y]: Place): Place => [x, sign * y];

function marksOf(stations: readonly Station[], length: number): readonly SideMark[] {
  const landmarks = stations.filter(({ name }) => name !== "");
  const marks = landmarks.map(({ name, arcLength }) => ({
    name: name === "tail" ? "tail seam" : name,
    along: arcLength,
  }));
  return [...marks, { name: "neck centreline", along: length }];
}

function deepestPlace(givens: Givens, profile: Profile, half: Half): SidePlace {
  const { dome, back, pitch, rimOffset } = profile;
  const { along, depth } = deepestOn({ givens, dome, back, pitch }, half);
  return { along, under: depth + rimOffset };
}
