import type { Profile } from "../../profile/outcome.ts";
import type { Setting } from "../../profile/setting.ts";
import { type Frame, type Point, pxAt, xAt, zAt } from "../frame.ts";
import { heavy, light, Placer, type Way } from "../label-placement.ts";
import { capHeight, textBox, textWidth } from "../lettering.ts";
import { scaleRow } from "../scale-bar.ts";
import type { Scene, Shape, TextShape } from "../scene.ts";
import {
  backPoints,
  blocks,
  inside,
  rimEdgePoints,
  rimEdgeShapes,
  rimShapes,
  topPoints,
  topShapes,
} from "./body.ts";
import { bridgePoints, bridgeShapes, stringPoints } from "./bridge.ts";
import { type Handles, handleBoxes, handlesOf } from "./handles.ts";
import {
  boardFace,
  boardFoot,
  boardShapes,
  breakLines,
  breakShape,
  datumPoints,
  flatPoints,
  fretPlanePoints,
  group,
  planeShapes,
  shimPoints,
  shimShape,
} from "./lines.ts";
import { fingerboardPoints, neckShapes } from "./neck.ts";
import { dimensionShapes } from "./section-dimensions.ts";
import { type SectionOptions, type SectionSheet, sheetOf } from "./section-sheet.ts";
import { bandBoxes, windowShapes } from "./windows.ts";

/** Clear paper between a line and its name, px. */
const clear = 5;
/** Where along the line its name is tried, as shares of it, the best first. */
const places = [0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9];

/** Ways to write a straight line's name along it, just over it or just under it. */
function nameWays(
  role: string,
  text: string,
  [a, b]: readonly [Point, Point],
  size: number,
): Way[] {
  const width = textWidth(text, size);
  const slope = b[0] === a[0] ? 0 : (b[1] - a[1]) / (b[0] - a[0]);
  const lean = (Math.abs(slope) * width) / 2;
  return places.flatMap((share, i) => {
    const x = a[0] + (b[0] - a[0]) * share;
    const y = a[1] + (b[1] - a[1]) * share;
    const write = (base: number): Way => ({
      text: { kind: "text", role: `${role} name`, x, y: base, anchor: "middle", size, text },
      strokes: [],
      shelf: [],
      lane: null,
      cost: i * 0.1,
      shapes: () => [],
    });
    return [write(y - lean - clear), write(y + lean + clear + capHeight(size))];
  });
}

/** Narrower drawings leave the names to the reader. */
const roomy = 600;

/** A name is not worth standing on a line. */
const dearestName = 3;

/** Names of the lines, where they do not crowd the measures. */
function nameShapes(sheet: SectionSheet, placer: Placer): readonly TextShape[] {
  if (sheet.width < roomy) return [];
  return namedLines(sheet).flatMap(({ role, text, line }) => {
    const way = placer.choose(nameWays(role, text, line, sheet.size - 1), dearestName);
    return way === null ? [] : [way.text];
  });
}

interface NamedLine {
  readonly role: string;
  readonly text: string;
  readonly line: readonly [Point, Point];
}

function namedLines(sheet: SectionSheet): readonly NamedLine[] {
  const datum: NamedLine = { role: "datum", text: "level rim", line: datumPoints(sheet) };
  if (sheet.frame.turned)
    return [{ role: "board", text: "sanding board", line: boardFoot(sheet) }, datum];
  return [
    { role: "flat carried on", text: "flat carried on", line: flatPoints(sheet) },
    { role: "fret plane", text: "fret plane", line: fretPlanePoints(sheet) },
    datum,
  ];
}

/** Tells the placer what is drawn, so that the lettering keeps off it. */
function avoidDrawing(sheet: SectionSheet, placer: Placer): void {
  for (const points of outlines(sheet)) placer.avoid(points, heavy);
  for (const points of thinLines(sheet)) placer.avoid(points, light);
}

function outlines(sheet: SectionSheet): readonly (readonly Point[])[] {
  const { frame, setting } = sheet;
  const shim = closed(shimPoints(sheet));
  const both = [shim, farSide(sheet), ...handleBoxes(sheet).map(closed)];
  if (frame.turned) return [...both, rimEdgePoints(sheet), boardFace(sheet)];
  return [
    ...both,
    topPoints(sheet, 0, setting.instrument.body.length),
    closed(bridgePoints(sheet)),
    fingerboardPoints(sheet),
    ...bandBoxes(sheet).map(closed),
  ];
}

/** The back, or where the sides are cut short of it. */
function farSide(sheet: SectionSheet): readonly Point[] {
  const { frame, setting, cut } = sheet;
  if (cut === null) return backPoints(sheet);
  return [
    [pxAt(frame, 0), cut],
    [pxAt(frame, setting.instrument.body.length), cut],
  ];
}

function thinLines(sheet: SectionSheet): readonly (readonly Point[])[] {
  const { frame, setting } = sheet;
  const { length } = setting.instrument.body;
  const finished = frame.turned ? rimEdgePoints(sheet) : topPoints(sheet, 0, length);
  const both = [inside(frame, finished), datumPoints(sheet), ...blocks(sheet).map(closed)];
  if (frame.turned) return both;
  const planes = [flatPoints(sheet), fretPlanePoints(sheet), stringPoints(sheet)];
  return [...both, ...planes, rimEdgePoints(sheet)];
}

const closed = (points: readonly Point[]): readonly Point[] => [...points, ...points.slice(0, 1)];

export interface Section {
  readonly scene: Scene;
  /** To pass back as `hold` while something on the drawing is dragged. */
  readonly frame: Frame;
  readonly handles: Handles;
  /** mm along and mm over the flat's plane at a px across and down. */
  readonly toX: (px: number) => number;
  readonly toZ: (px: number) => number;
}

/**
 * The section along the centreline, tail left and neck right, drawn to fill the room given. Lengths
 * run to scale; heights to the same scale times the stretch, and every value written is true.
 */
export function sectionOf(setting: Setting, profile: Profile, options: SectionOptions): Section {
  const sheet = sheetOf(setting, profile, options);
  const { frame, width, height } = sheet;
  const shapes = frame.turned ? turnedOver(sheet) : assembled(sheet);
  return {
    scene: { width, height, title: titleOf(sheet), shapes: [...shapes, ...lettering(sheet)] },
    frame,
    handles: handlesOf(sheet),
    toX: (px) => xAt(frame, px),
    toZ: (px) => zAt(frame, px),
  };
}

const assembled = (sheet: SectionSheet): readonly Shape[] => [
  rimShapes(sheet),
  rimEdgeShapes(sheet),
  topShapes(sheet),
  shimShape(sheet),
  neckShapes(sheet),
  windowShapes(sheet),
  bridgeShapes(sheet),
  group("planes", planeShapes(sheet)),
  breakShape(sheet),
  group("cuts", breakLines(sheet)),
];

const turnedOver = (sheet: SectionSheet): readonly Shape[] => [
  group("board", boardShapes(sheet)),
  rimShapes(sheet),
  shimShape(sheet),
  rimEdgeShapes(sheet),
  group("planes", planeShapes(sheet)),
  breakShape(sheet),
  group("cuts", breakLines(sheet)),
];

/** Everything that is written on the drawing, kept apart by one placer. */
function lettering(sheet: SectionSheet): readonly Shape[] {
  const { width, height, size, frame, stretch, words } = sheet;
  const placer = new Placer({ left: 2, top: 2, right: width - 2, bottom: height - 2 });
  const scales = scaleRow(
    { along: frame.along, up: frame.up, stretch, unit: words.unit },
    8,
    height - 8,
    width - 16,
    size,
  );
  for (const shape of scales.shapes) if (shape.kind === "text") placer.keepClear(textBox(shape));
  avoidDrawing(sheet, placer);
  return [scales, ...dimensionShapes(sheet, placer), ...nameShapes(sheet, placer)];
}

function titleOf({ profile, words, stretch, frame }: SectionSheet): string {
  const view = frame.turned
    ? "The rim top down on the sanding board"
    : "Section along the centreline";
  const heights = stretch === 1 ? "drawn true to scale" : `heights drawn ${stretch} times`;
  return `${view}, ${heights}: shim ${words.length(profile.shim)}, pitch ${words.angle(profile.pitch)}, saddle exposed ${words.length(profile.saddleExposure)}.`;
}
