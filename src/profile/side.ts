import { radians } from "../geometry/circle.ts";
import type { Place } from "../geometry/polyline.ts";
import { backZ } from "./back.ts";
import type { Givens } from "./givens.ts";
import type { Profile } from "./outcome.ts";
import { removalOf, rimZ } from "./rim.ts";
import { deepestPlace } from "./station.ts";

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

/** What comes off the level rim at x, `rimOffset` included: never negative. */
export function comesOffAt(givens: Givens, profile: Profile, x: number): number {
  const { dome, pitch, rimOffset } = profile;
  return rimOffset + removalOf(givens, dome, radians(pitch))(x, rimZ(givens, dome, x));
}

export function sideOf(givens: Givens, profile: Profile): Side {
  const { outline } = givens;
  const corner = outline.totalArc();
  const length = corner + outline.halfWidth(outline.length);
  const placeAt = (along: number): Place =>
    along >= corner ? [outline.length, length - along] : outline.placeAtArc(along);
  const topAt = (along: number): number => comesOffAt(givens, profile, placeAt(along)[0]);
  const backAt = (along: number): number => {
    const [x, y] = placeAt(along);
    const depth = rimZ(givens, profile.dome, x) - backZ(profile.back, x, y);
    return comesOffAt(givens, profile, x) + depth;
  };
  const smooth = [...outline.knots, givens.breakX].map((x) => outline.arcLength(x));
  return {
    corner,
    length,
    datum: profile.rimOffset,
    topAt,
    backAt,
    corners: [...smooth, corner].sort((a, b) => a - b),
    marks: marksOf(profile, length),
    deepest: deepestOf(givens, profile, length),
  };
}

function marksOf(profile: Profile, length: number): readonly SideMark[] {
  const landmarks = profile.stations.filter(({ name }) => name !== "");
  const marks = landmarks.map(({ name, arcLength }) => ({
    name: name === "tail" ? "tail seam" : name,
    along: arcLength,
  }));
  return [...marks, { name: "neck centreline", along: length }];
}

function deepestOf(givens: Givens, profile: Profile, length: number): SidePlace {
  const { dome, back, pitch, stockWidth } = profile;
  const { x, halfWidth } = deepestPlace({ givens, dome, back, pitch });
  const atMiddle = x === givens.outline.length && halfWidth === 0;
  return { along: atMiddle ? length : givens.outline.arcLength(x), under: stockWidth };
}
