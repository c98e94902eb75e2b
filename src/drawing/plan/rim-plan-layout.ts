import type { Givens } from "../../profile/givens.ts";
import { type Half, halfOn } from "../../profile/halves.ts";
import type { Profile } from "../../profile/outcome.ts";
import { leastShown } from "../../profile/standing.ts";
import type { Frame } from "../frame.ts";
import { firstRow, type MeasureFormat } from "../section/section-layout.ts";

/** How measures are written on a plan: `figure` is a length without its unit, which is said once. */
export interface PlanMeasureFormat extends MeasureFormat {
  readonly figure: (mm: number) => string;
}

export interface PlanOptions {
  /** Room for the drawing, px. */
  readonly width: number;
  readonly height: number;
  readonly words: PlanMeasureFormat;
}

/** Over (1) or under (−1) the centreline on the drawing. */
export type EdgeSide = 1 | -1;

/** The half drawn over or under the centreline. */
export interface DrawnHalf {
  readonly way: EdgeSide;
  readonly half: Half;
}

/** One plan being drawn. The frame's heights are distances from the centreline. */
export interface PlanLayout {
  readonly givens: Givens;
  readonly profile: Profile;
  /** Over the centreline, and under it. */
  readonly drawn: readonly [DrawnHalf, DrawnHalf];
  readonly frame: Frame;
  readonly words: PlanMeasureFormat;
  readonly width: number;
  readonly height: number;
  readonly size: number;
  /** How many times larger what comes off is drawn than the plan. */
  readonly times: number;
  /** Under everything drawn of the rim, px down: lengths are dimensioned from here. */
  readonly foot: number;
  /** First of the lettering under the drawing. */
  readonly strip: number;
}

/** Below this width the drawing is lettered a size smaller. */
const narrow = 480;
/** px that the greatest removal may be drawn out from the edge. */
const band = { wide: 28, narrow: 14 };
/** px of the drawing kept beyond the band, for the figures round the edge. */
const tailRoom = { wide: 76, narrow: 40 };
const figureRows = 1.7;

/** Whether sanding ends at some one place: not where the rim stays level all the way to the break. */
export const endsSomewhere = ({ stations, rimOffset }: Profile): boolean =>
  stations.some(({ zone, removal }) => zone === "dome" && removal + rimOffset > leastShown);

/** Down to the first row of lengths under the drawing, and from row to row: an extension line must pass between two figures. */
const lengthRow = (size: number): number => size + 10;
const lengthRows = (width: number): number => (width > 600 ? 3 : 2);

/** Where the dimension line of a row of lengths stands, px down; null where the drawing has no such row. */
export const lengthLineY = (
  { foot, size, width }: Pick<PlanLayout, "foot" | "size" | "width">,
  row: number,
): number | null =>
  row < lengthRows(width) ? foot + firstRow(size) / 2 + row * lengthRow(size) : null;

/** As large as leaves room for every name; from `roomy` px on it is read at arm's length. */
const sizeAt = (width: number): number => (width < narrow ? 12 : width < roomy ? 13 : 15);
const roomy = 540;

/** From this width the scale bar stands beside what the figures are, and not under it. */
export const besideWidth = 760;

interface Rooms {
  readonly size: number;
  readonly band: number;
  readonly ends: number;
  readonly over: number;
  readonly under: number;
  readonly strip: number;
}

function roomsAt(width: number, { rimOffset }: Profile): Rooms {
  const size = sizeAt(width);
  const look = width < narrow ? "narrow" : "wide";
  const figures = band[look] + figureRows * (size + 4);
  const strip =
    (size + 6) * (1 + (rimOffset > leastShown ? 1 : 0) + (width < besideWidth ? 1 : 0)) + 8;
  return {
    size,
    band: band[look],
    ends: tailRoom[look],
    over: figures,
    under: figures + firstRow(size) / 2 + (lengthRows(width) - 1) * lengthRow(size) + 12 + strip,
    strip,
  };
}

/** From above with the neck to the right the bass side lies over the centreline, of a left-handed instrument under it. */
function drawnHalves({ halves, instrument }: Givens): PlanLayout["drawn"] {
  const leftHanded = instrument.body.leftHanded === true;
  return [
    { way: 1, half: halfOn(halves, leftHanded ? "treble" : "bass") },
    { way: -1, half: halfOn(halves, leftHanded ? "bass" : "treble") },
  ];
}

/** The body's greatest width as drawn, mm: each side where it is widest. */
const widestOf = (givens: Givens): number =>
  drawnHalves(givens).reduce((sum, { half }) => sum + half.outline.widest, 0);

/** The height at which a plan fills the width. */
export function planHeight(givens: Givens, profile: Profile, width: number): number {
  const { ends, over, under } = roomsAt(width, profile);
  return Math.ceil(over + under + (widestOf(givens) * (width - 2 * ends)) / givens.outline.length);
}

export function planLayoutOf(
  givens: Givens,
  profile: Profile,
  { words, ...room }: PlanOptions,
): PlanLayout {
  const { outline } = givens;
  const [width, height] = [Math.max(room.width, 200), Math.max(room.height, 200)];
  const { size, band, ends, over, under, strip } = roomsAt(width, profile);
  const along = Math.max(
    0.05,
    Math.min((width - 2 * ends) / outline.length, (height - over - under) / widestOf(givens)),
  );
  const drawn = drawnHalves(givens);
  const level = over + drawn[0].half.outline.widest * along;
  const left = (width - outline.length * along) / 2;
  return {
    givens,
    profile,
    drawn,
    frame: { along, up: along, left, level, turned: false },
    words,
    width,
    height,
    size,
    times: timesFor(profile.maxRemoval * along, band),
    foot: level + drawn[1].half.outline.widest * along + over,
    strip: height - strip,
  };
}

const rounds = [100, 50, 30, 20, 10, 8, 6, 5, 4, 3, 2, 1];

const timesFor = (most: number, room: number): number =>
  rounds.find((times) => most * times <= room) ?? 1;
