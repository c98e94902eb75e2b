import * as rear from "../../profile/back.ts";
import type { Givens } from "../../profile/givens.ts";
import { fretPlaneZ, fretX } from "../../profile/neck.ts";
import type { Profile } from "../../profile/outcome.ts";
import * as rim from "../../profile/rim.ts";
import { blendedTopZ } from "../../profile/top.ts";
import type { Frame } from "../frame.ts";
import { capHeight } from "../lettering.ts";

/*
 * Heights on the section, mm over the flat's plane, at x mm from the tail. What the core computes is
 * asked of the core; here are only the lines a drawing needs between those values.
 */

/** The finished rim edge at the bass side. */
export const edgeZ = (givens: Givens, { dome }: Profile, x: number): number =>
  rim.rimZ(givens, dome, x, givens.outline.halfWidth(x));

/** The level rim's top edge. */
export const datumZ = (givens: Givens, { dome, pitch }: Profile, x: number): number =>
  rim.datumZ(givens, dome, pitch, x);

/** The top on the centreline as built. */
export const topZ = (givens: Givens, { dome }: Profile, x: number): number =>
  blendedTopZ(givens, dome, x);

/** The back, y mm from the centreline. */
export const backZ = ({ back }: Profile, x: number, y: number): number => rear.backZ(back, x, y);

/** Underside of the middle string between nut and saddle: straight between its heights over the fret plane at both. */
export function stringZ(givens: Givens, x: number): number {
  const { instrument, saddleX, middleString, fretPlaneAtSaddle } = givens;
  const nutX = fretX(instrument, 0);
  const atNut = fretPlaneZ(instrument, nutX) + middleString.atNut;
  const atSaddle = fretPlaneAtSaddle + middleString.atSaddle - instrument.strings.settling;
  return atSaddle + ((atNut - atSaddle) * (x - saddleX)) / (nutX - saddleX);
}

/** How many times larger heights are drawn than lengths. */
type Stretch = 1 | 5 | 10;

/** How measures are written on a drawing. */
export interface MeasureFormat {
  /** A length or height in mm, in the shown unit. */
  readonly length: (mm: number) => string;
  readonly angle: (degrees: number) => string;
  readonly unit: "mm" | "inch";
}

/** The same, with what the verdict beside it states too: worded as there. */
export interface SectionFormat extends MeasureFormat {
  readonly shim: (mm: number) => string;
  /** A height at the saddle line. */
  readonly height: (mm: number) => string;
}

export interface SectionOptions {
  /** Room for the drawing, px. */
  readonly width: number;
  readonly height: number;
  readonly stretch: Stretch;
  /** At work: top down on the sanding board, or with a seat under bar and spacer. */
  readonly turned: boolean;
  readonly words: SectionFormat;
  /** A frame to keep, so that the drawing does not slip while something on it is dragged. */
  readonly hold?: Frame;
}

/** One section being drawn: what, where, and how large it is lettered. */
export interface SectionLayout {
  readonly givens: Givens;
  readonly profile: Profile;
  readonly frame: Frame;
  readonly stretch: Stretch;
  readonly words: SectionFormat;
  readonly width: number;
  readonly height: number;
  /** Font size of the lettering, px. */
  readonly size: number;
  /** At work: on the sanding board, or under bar and spacer. */
  readonly atWork: boolean;
  /** Where the sides are cut short, px down; null when they are drawn whole. */
  readonly cut: number | null;
  /** Below everything that is drawn of the instrument, px down: lengths are dimensioned under it. */
  readonly foot: number;
  /** Rows of dimensions there are under it. */
  readonly rows: 1 | 2;
  /** First of the lettering under the drawing: stretch and scale bars. */
  readonly strip: number;
}

/** Neck drawn beyond the body, mm. */
export const neckStub = 62;
/** px left of the tail, for the shim's dimension, and right of the neck's cut end. */
const tailRoom = { wide: 44, narrow: 30 };
const neckRoom = 10;
/** Lower than this a drawing keeps one row of lengths only, and cuts the sides closer. */
const low = 240;
/** px of the board under the rim, and of the sides shown before they are cut. */
export const boardThickness = 9;
const cutRoom = (height: number): number => (height < low ? 16 : 26);
const stripRoom = 26;
/** In less room than this the drawing is not shrunk further, px. */
const smallest = { width: 240, height: 160 };
/** Lettered to be read at arm's length; smaller only below this width, where a phone is held nearer, and a size larger from that one on. */
const narrow = 480;
const wide = 1000;

const rowsIn = (height: number): 1 | 2 => (height < low ? 1 : 2);

/**
 * First dimension line from the part, and the next from the first: 10 and 6 mm on a sheet lettered
 * 3.5 mm high (dimension-line rules as in ASME Y14.5 text; the lettering height of ISO 3098 from
 * memory), here by the height of the lettering used.
 */
export const firstRow = (size: number): number => (10 / 3.5) * capHeight(size);
export const nextRow = (size: number): number => Math.max((6 / 3.5) * capHeight(size), size + 6);

export function sectionLayoutOf(
  givens: Givens,
  profile: Profile,
  options: SectionOptions,
): SectionLayout {
  const width = Math.max(options.width, smallest.width);
  const height = Math.max(options.height, smallest.height);
  const size = width < narrow ? 12 : width < wide ? 15 : 16;
  const frame = options.hold ?? frameFor(givens, profile, { ...options, width, height }, size);
  const { stretch, words } = options;
  const { turned } = frame;
  const bottom = heightsDrawn(givens, profile, stretch).low * frame.up;
  const partFoot = turned ? frame.level + boardThickness : frame.level - bottom;
  const shown = cutRoom(height) - bottom;
  const cut = stretch === 1 ? null : frame.level + (turned ? -shown : shown);
  const foot = turned ? partFoot : (cut ?? partFoot);
  const strip = height - stripRoom;
  const rows = rowsIn(height);
  return {
    ...{ givens, profile, frame, stretch, words, width, height, size, cut, foot, rows, strip },
    atWork: options.turned,
  };
}

/** The largest frame in which everything fits: the body's length and the neck's stub along, the heights shown and the rows of lettering up. */
function frameFor(
  givens: Givens,
  profile: Profile,
  { width, height, stretch, turned: atWork }: SectionOptions,
  size: number,
): Frame {
  const turned = atWork && givens.seat === null;
  const left = width < narrow ? tailRoom.narrow : tailRoom.wide;
  const { length } = givens.instrument.body;
  const heights = heightsDrawn(givens, profile, stretch);
  const over = turned ? -heights.low : heights.high;
  const under = turned ? 0 : -heights.low;
  const cut = stretch > 1 ? cutRoom(height) : 0;
  const overRoom = size + 8 + (turned ? cut : 0);
  const rows = firstRow(size) + (rowsIn(height) - 1) * nextRow(size) + 6 + stripRoom;
  const underRoom = rows + (turned ? boardThickness : cut);
  const room = height - overRoom - underRoom;
  const along = Math.min(
    (width - left - neckRoom) / (length + neckStub),
    room / ((over + under) * stretch),
  );
  const spareAlong = width - left - neckRoom - (length + neckStub) * along;
  const spareUp = Math.max(0, room - (over + under) * stretch * along);
  return {
    along,
    up: along * stretch,
    left: left + spareAlong / 2,
    level: overRoom + 0.6 * spareUp + over * stretch * along,
    turned,
  };
}

/** How far over the top at the saddle the bands are shown: whole, unless the strings are far below them. */
function bandTop(givens: Givens, { stringHeight }: Profile): number {
  const { bridge, windows } = givens.instrument;
  const tops = [bridge.thickness + windows.saddleExposure[1], windows.stringHeight[1]];
  return Math.min(Math.max(...tops), Math.max(stringHeight, bridge.thickness) + 5);
}

/** The lowest and the highest height drawn, mm over the flat's plane; stretched, no lower than the rim's top edge. */
function heightsDrawn(
  givens: Givens,
  profile: Profile,
  stretch: Stretch,
): { readonly low: number; readonly high: number } {
  const { length } = givens.instrument.body;
  const edges = [0, 0.25, 0.5, 0.75, 1].map((share) => edgeZ(givens, profile, share * length));
  const tail = [datumZ(givens, profile, 0), -profile.tailDrop, -profile.flatGap];
  const backs = stretch === 1 ? [0, 0.5, 1].map((share) => backZ(profile, share * length, 0)) : [];
  return {
    low: Math.min(-1, ...edges, ...tail, ...backs),
    high: Math.max(
      1,
      ...tail,
      datumZ(givens, profile, length),
      profile.shim ?? 0,
      stringZ(givens, givens.saddleX),
      givens.fretPlaneAtSaddle,
      -profile.flatGap + bandTop(givens, profile),
    ),
  };
}
