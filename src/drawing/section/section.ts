import type { Givens } from "../../profile/givens.ts";
import type { Profile } from "../../profile/outcome.ts";
import { type Frame, type Point, pointAt, pxAt, xAt, zAt } from "../frame.ts";
import {
  type LabelCandidate,
  LabelPlacement,
  outlineCost,
  plainCandidate,
  thinLineCost,
} from "../label-placement.ts";
import { capHeight, textBox, textWidth } from "../lettering.ts";
import { scaleRow } from "../scale-bar.ts";
import type { Scene, Shape, TextShape } from "../scene.ts";
import { group, rectangle, textShape } from "../shapes.ts";
import {
  backPoints,
  blocks,
  inside,
  rimEdgePoints,
  rimEdgeShapes,
  rimShapes,
  seatCutShapes,
  topPoints,
  topShapes,
} from "./body.ts";
import { bridgePoints, bridgeShapes, stringPoints } from "./bridge.ts";
import {
  barBack,
  barFace,
  barShapes,
  boardFace,
  boardFoot,
  boardShapes,
  breakLines,
  breakShape,
  contactPoint,
  datumPoints,
  flatPoints,
  fretPlanePoints,
  partPoints,
  partShapes,
  planeShapes,
} from "./lines.ts";
import { fingerboardPoints, neckShapes } from "./neck.ts";
import { dimensionShapes } from "./section-dimensions.ts";
import {
  type SectionLayout,
  type SectionOptions,
  sectionLayoutOf,
  stringZ,
} from "./section-layout.ts";
import { bandBoxes, windowLegend, windowShapes } from "./windows.ts";

/** Where the break, the shim (or spacer) and the saddle can be taken hold of, px; null where they are not there. */
interface Handles {
  readonly break: Point | null;
  readonly part: Point | null;
  readonly saddle: Point | null;
}

function handlesOf(layout: SectionLayout): Handles {
  const { frame, givens, atWork } = layout;
  const { breakX, saddleX, seat } = givens;
  return {
    break: seat === null ? pointAt(frame, breakX, 0) : null,
    part: seat === null || atWork ? contactPoint(layout) : null,
    saddle: atWork ? null : pointAt(frame, saddleX, stringZ(givens, saddleX)),
  };
}

/** px a handle's mark reaches to each side, along the way it moves and across it. */
const reach = { along: 16, across: 8 };

/** Outlines of the marks a view may put on the handles, for the lettering to keep off. */
function handleBoxes(layout: SectionLayout): readonly (readonly Point[])[] {
  const handles = handlesOf(layout);
  const upright = [handles.part, handles.saddle].filter((point) => point !== null);
  return [
    ...(handles.break === null ? [] : [around(handles.break, reach.along, reach.across)]),
    ...upright.map((point) => around(point, reach.across, reach.along)),
  ];
}

const around = ([x, y]: Point, dx: number, dy: number): readonly Point[] =>
  rectangle([x - dx, y - dy], [x + dx, y + dy]);

/** Clear paper between a line and its name, px. */
const clear = 5;
/** Where along the line its name is tried, as shares of it, the best first. */
const places = [0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9];

/** Places to write a straight line's name along it, just over it or just under it. */
function nameCandidates(
  role: string,
  text: string,
  [a, b]: readonly [Point, Point],
  size: number,
): LabelCandidate[] {
  const width = textWidth(text, size);
  const slope = b[0] === a[0] ? 0 : (b[1] - a[1]) / (b[0] - a[0]);
  const lean = (Math.abs(slope) * width) / 2;
  return places.flatMap((share, i) => {
    const x = a[0] + (b[0] - a[0]) * share;
    const y = a[1] + (b[1] - a[1]) * share;
    const write = (base: number): LabelCandidate =>
      plainCandidate(textShape(`${role} name`, text, [x, base], size), i * 0.1);
    return [write(y - lean - clear), write(y + lean + clear + capHeight(size))];
  });
}

/** Narrower drawings leave the names to the reader. */
const roomy = 600;

/** A name is not worth standing on a line. */
const nameLimit = 3;

/** Names of the lines, where they do not crowd the measures. */
function nameShapes(layout: SectionLayout, labels: LabelPlacement): readonly TextShape[] {
  if (layout.width < roomy) return [];
  return namedLines(layout).flatMap(({ role, text, line }) => {
    const candidate = labels.choose(nameCandidates(role, text, line, layout.size - 1), nameLimit);
    return candidate === null ? [] : [candidate.text];
  });
}

interface NamedLine {
  readonly role: string;
  readonly text: string;
  readonly line: readonly [Point, Point];
}

function namedLines(layout: SectionLayout): readonly NamedLine[] {
  const datum: NamedLine = { role: "datum", text: "level rim", line: datumPoints(layout) };
  const onRim = layout.givens.seat === null;
  if (layout.atWork)
    return onRim
      ? [{ role: "board", text: "sanding board", line: boardFoot(layout) }, datum]
      : [{ role: "bar", text: "straight bar", line: barBack(layout) }, datum];
  const plane = onRim ? "flat extended" : "seat extended";
  return [
    { role: "flat extended", text: plane, line: flatPoints(layout) },
    { role: "fret plane", text: "fret plane", line: fretPlanePoints(layout) },
    datum,
  ];
}

/** Tells the label placement what is drawn, so that the lettering keeps off it. */
function avoidDrawing(layout: SectionLayout, labels: LabelPlacement): void {
  for (const points of outlines(layout)) labels.avoid(points, outlineCost);
  for (const points of thinLines(layout)) labels.avoid(points, thinLineCost);
}

function outlines(layout: SectionLayout): readonly (readonly Point[])[] {
  const { frame, givens } = layout;
  const both = [farSide(layout), ...handleBoxes(layout).map(closed)];
  const part = closed(partPoints(layout));
  if (frame.turned) return [...both, part, rimEdgePoints(layout), boardFace(layout)];
  const top = topPoints(layout, 0, givens.instrument.body.length);
  if (layout.atWork) return [...both, part, top, barFace(layout)];
  return [
    ...both,
    ...(givens.seat === null ? [part] : []),
    top,
    closed(bridgePoints(layout)),
    fingerboardPoints(layout),
    ...bandBoxes(layout).map(closed),
  ];
}

/** The back, or where the sides are cut short of it. */
function farSide(layout: SectionLayout): readonly Point[] {
  const { frame, givens, cut } = layout;
  if (cut === null) return backPoints(layout);
  return [
    [pxAt(frame, 0), cut],
    [pxAt(frame, givens.instrument.body.length), cut],
  ];
}

function thinLines(layout: SectionLayout): readonly (readonly Point[])[] {
  const { frame, givens } = layout;
  const { length } = givens.instrument.body;
  const finished = frame.turned ? rimEdgePoints(layout) : topPoints(layout, 0, length);
  const both = [
    finished.map((point) => inside(frame, point)),
    datumPoints(layout),
    ...blocks(layout).map(closed),
  ];
  if (layout.atWork) return both;
  const planes = [flatPoints(layout), fretPlanePoints(layout), stringPoints(layout)];
  return [...both, ...planes, rimEdgePoints(layout)];
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
export function sectionOf(givens: Givens, profile: Profile, options: SectionOptions): Section {
  const layout = sectionLayoutOf(givens, profile, options);
  const { frame, width, height } = layout;
  const shapes = !layout.atWork
    ? assembled(layout)
    : givens.seat === null
      ? turnedOver(layout)
      : underBar(layout);
  return {
    scene: { width, height, title: titleOf(layout), shapes: [...shapes, ...lettering(layout)] },
    frame,
    handles: handlesOf(layout),
    toX: (px) => xAt(frame, px),
    toZ: (px) => zAt(frame, px),
  };
}

const assembled = (layout: SectionLayout): readonly Shape[] => [
  rimShapes(layout),
  rimEdgeShapes(layout),
  topShapes(layout),
  ...seatCutShapes(layout),
  ...partShapes(layout),
  neckShapes(layout),
  windowShapes(layout),
  bridgeShapes(layout),
  group("planes", planeShapes(layout)),
  breakShape(layout),
  group("cuts", breakLines(layout)),
];

const turnedOver = (layout: SectionLayout): readonly Shape[] => [
  group("board", boardShapes(layout)),
  rimShapes(layout),
  ...partShapes(layout),
  rimEdgeShapes(layout),
  group("planes", planeShapes(layout)),
  breakShape(layout),
  group("cuts", breakLines(layout)),
];

/** The top as its seat is sanded: before neck and bridge, bar and spacer on it. */
const underBar = (layout: SectionLayout): readonly Shape[] => [
  rimShapes(layout),
  rimEdgeShapes(layout),
  topShapes(layout),
  ...seatCutShapes(layout),
  ...partShapes(layout),
  group("bar", barShapes(layout)),
  group("planes", planeShapes(layout)),
  breakShape(layout),
  group("cuts", breakLines(layout)),
];

/** Everything that is written on the drawing, kept apart by one label placement. */
function lettering(layout: SectionLayout): readonly Shape[] {
  const { width, height, size, frame, stretch, words } = layout;
  const labels = new LabelPlacement({ left: 2, top: 2, right: width - 2, bottom: height - 2 });
  const scales = scaleRow(
    { along: frame.along, up: frame.up, stretch, unit: words.unit },
    8,
    height - 8,
    width - 16,
    size,
  );
  const rows = [scales, ...(layout.atWork ? [] : windowLegend(layout, scales))];
  for (const { shapes } of rows)
    for (const shape of shapes) if (shape.kind === "text") labels.reserve(textBox(shape));
  avoidDrawing(layout, labels);
  return [...rows, ...dimensionShapes(layout, labels), ...nameShapes(layout, labels)];
}

function titleOf({ profile, words, stretch, atWork }: SectionLayout): string {
  const work =
    profile.seat === null
      ? "The rim top down on the sanding board"
      : "The top under bar and spacer";
  const view = atWork ? work : "Section along the centreline";
  const part =
    profile.seat === null
      ? `shim ${words.shim(profile.shim)}`
      : `spacer ${words.shim(profile.seat.spacer)}`;
  const heights = stretch === 1 ? "drawn true to scale" : `heights drawn ${stretch} times`;
  return `${view}, ${heights}: ${part}, pitch ${words.angle(profile.pitch)}, saddle exposed ${words.height(profile.saddleExposure)}.`;
}
