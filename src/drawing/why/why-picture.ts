import { raisedBy } from "../../profile/comparison/part-worth.ts";
import type { Givens } from "../../profile/givens.ts";
import type { Profile } from "../../profile/outcome.ts";
import { topZ as uncutTopZ } from "../../profile/top.ts";
import { scaleRow } from "../scale-bar.ts";
import type { Scene, Shape } from "../scene.ts";
import { datumZ, type SectionFormat, stringZ } from "../section/section-layout.ts";
import { textShape } from "../shapes.ts";
import {
  breakMark,
  bridge,
  dish,
  dishedEdge,
  ends,
  finishedEdge,
  flat,
  fretPlane,
  gap,
  levelEdge,
  levelRim,
  part,
  rimEdge,
  type Still,
  saddle,
  seatCut,
  straightFace,
  top,
  uncutTop,
  wasteOff,
} from "./why-shapes.ts";

/** The still pictures that explain a domed top with a flat, from cause to effect. */
export const whyPictures = ["dish", "board", "angle", "bridge", "saddle"] as const;

/** Those, and what else a step of the work shows. */
export type StillPicture = (typeof whyPictures)[number] | "level" | "mark" | "top" | "straightedge";

const width = 376;
/** px: at each side, over the drawing, what the drawing may take, and a row of lettering. */
const side = 16;
const head = 10;
const drawn = 124;
const row = 19;
const size = 15;
/** mm that a picture has over its highest and under its lowest place. */
const spare = 1.5;
const foot = 4;
/** Heights are drawn so many times the lengths, as far as there is room. */
const mostStretch = 10;

/** One of the pictures, from the same numbers as everything else; its lettering says the measures that it is about. */
export function whyPictureOf(
  which: StillPicture,
  givens: Givens,
  profile: Profile,
  words: SectionFormat,
): Scene {
  const still = stillOf(which, givens, profile);
  const under = head + drawn;
  const said = saidOn(which, givens, profile, words);
  const base = (i: number): number => under + 20 + i * row;
  const { along, up } = still.frame;
  const scales = { along, up, stretch: Math.round(up / along), unit: words.unit };
  return {
    width,
    height: base(said.length) + 8,
    title: said.join(", "),
    shapes: [
      ...shapesOf[which](still),
      ...said.map((text, i) =>
        textShape(`${which} measure`, text, [side, base(i)], size, {
          anchor: "start",
          strong: i === 0,
        }),
      ),
      scaleRow(scales, side, base(said.length), width - 2 * side, size),
    ],
  };
}

/** Where the picture lies: as many whole times stretched in height as there is room for. */
function stillOf(which: StillPicture, givens: Givens, profile: Profile): Still {
  const turned = profile.seat === null && (which === "dish" || which === "board");
  const inDish = which === "dish" || turned;
  const along = (width - 2 * side) / givens.outline.length;
  const highest = highestOf(which, givens, profile) + spare;
  const lowest = -Math.max(profile.tailDrop, -datumZ(givens, profile, 0), spare) - foot;
  const room = drawn / (along * (highest - lowest));
  const up = along * Math.max(1, Math.min(mostStretch, Math.floor(room)));
  const used = (highest - lowest) * up;
  const over = head + (drawn - used) / 2;
  const level = inDish ? over - lowest * up : over + highest * up;
  return {
    givens,
    profile,
    lowest,
    highest,
    frame: { along, up, left: side, level, turned: inDish },
  };
}

/** The highest place that a picture shows, mm over the flat's plane. */
function highestOf(which: StillPicture, givens: Givens, profile: Profile): number {
  const { outline, saddleX } = givens;
  const apex = Math.max(
    ...Array.from({ length: 25 }, (_, i) =>
      uncutTopZ(givens, profile.dome, (i / 24) * outline.length),
    ),
    0,
  );
  switch (which) {
    case "bridge":
      return Math.max(
        apex,
        givens.instrument.bridge.thickness - profile.flatGap,
        stringZ(givens, saddleX),
      );
    case "saddle":
      return Math.max(apex, stringZ(givens, saddleX)) + moreAtSaddle(givens, profile);
    default:
      return Math.max(apex, datumZ(givens, profile, 0), datumZ(givens, profile, outline.length));
  }
}

const shapesOf: Readonly<Record<StillPicture, (still: Still) => readonly Shape[]>> = {
  level: (still) => [
    wasteOff(still),
    ...ends(still, levelEdge),
    rimEdge(still, "dashed", finishedEdge),
    levelRim(still, "thick"),
  ],
  mark: (still) => [...ends(still, levelEdge), levelRim(still, "thick"), breakMark(still)],
  dish: (still) => [dish(still), ...ends(still, dishedEdge), rimEdge(still, "thick", dishedEdge)],
  top: (still) => [
    ...ends(still, finishedEdge),
    rimEdge(still, "thin", finishedEdge),
    uncutTop(still, "thick"),
  ],
  board: (still) =>
    still.profile.seat === null
      ? [
          straightFace(still, "board", 0, 1),
          ...ends(still, finishedEdge),
          rimEdge(still, "thick", finishedEdge),
          part(still),
        ]
      : [
          straightFace(still, "bar", still.givens.saddleX, -1),
          ...assembled(still),
          ...seatCut(still),
          part(still),
        ],
  angle: (still) => [...assembled(still), levelRim(still, "dashed"), ...flat(still)],
  straightedge: (still) => [
    straightFace(still, "straightedge", still.givens.saddleX, -1),
    ...assembled(still),
    gap(still),
  ],
  bridge: (still) => [...assembled(still), ...flat(still), fretPlane(still), bridge(still)],
  saddle: (still) => [
    ...assembled(still),
    ...flat(still),
    fretPlane(still),
    bridge(still),
    ...saddle(still, moreAtSaddle(still.givens, still.profile)),
  ],
};

const assembled = (still: Still): readonly Shape[] => [
  ...ends(still, finishedEdge),
  top(still, "thick"),
];

/** What a shim or spacer 1 mm thicker adds at the saddle; 0 where that gives no plan. */
const moreAtSaddle = ({ instrument }: Givens, profile: Profile): number =>
  Math.max(0, raisedBy(instrument, profile, 1) ?? 0);

/** What is written on a picture, the measure it is about first. */
function saidOn(
  which: StillPicture,
  { instrument: { dome } }: Givens,
  profile: Profile,
  { length, shim, height, angle }: SectionFormat,
): string[] {
  const { seat } = profile;
  switch (which) {
    case "level":
      return [`most off the level rim ${height(profile.maxRemoval)}`];
    case "mark":
      return [`flat ${length(dome.flatLength)} long`];
    case "dish":
      return [dome.dishRadius === null ? "no dome" : `dish radius ${length(dome.dishRadius)}`];
    case "top":
      return [
        dome.braceRadius === null ? "braces flat" : `braces arched to ${length(dome.braceRadius)}`,
      ];
    case "board":
      return seat === null
        ? [`shim ${shim(profile.shim)}`, `flat ${length(dome.flatLength)} long`]
        : [`spacer ${shim(seat.spacer)}`, `most off the plate ${height(seat.mostCut)}`];
    case "angle":
      return [`pitch ${angle(profile.pitch)}`];
    case "straightedge":
      return [`gap at the saddle line ${height(profile.flatGap)}`];
    case "bridge":
      return [`fret plane over the bridge ${height(profile.bridgeClearance)}`];
    case "saddle":
      return [
        `saddle exposed ${height(profile.saddleExposure)}`,
        `strings over the top ${height(profile.stringHeight)}`,
      ];
  }
}
