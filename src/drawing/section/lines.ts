import { anglePart } from "../../instrument/outcome-fields.ts";
import { fingerboardEndX, fretPlaneZ } from "../../profile/neck.ts";
import { flatFromX } from "../../profile/top.ts";
import { type Point, pointAt, pxAt, pyAt } from "../frame.ts";
import type { PathShape, Shape } from "../scene.ts";
import { areaShape, lineShape, rectangle } from "../shapes.ts";
import { bridgeEnds } from "./bridge.ts";
import { neckCut, neckCutX } from "./neck.ts";
import { boardThickness, datumZ, type SectionLayout } from "./section-layout.ts";

/** px: half height and half width of a zigzag, the space between two, and how far the line runs beyond what it cuts. */
const rise = 5;
const half = 3;
const every = 130;
const beyond = 7;

/** The thin straight line with zigzags that ends a part not drawn further (ISO 128, from memory). Level or upright, from a to b. */
function breakLine(role: string, [ax, ay]: Point, [bx, by]: Point): PathShape {
  const length = Math.hypot(bx - ax, by - ay);
  const ux = length > 0 ? (bx - ax) / length : 1;
  const uy = length > 0 ? (by - ay) / length : 0;
  const place = (along: number, across: number): Point => [
    ax + ux * along - uy * across,
    ay + uy * along + ux * across,
  ];
  const count = Math.max(1, Math.round(length / every));
  const zigzags = Array.from({ length: count }, (_, i) => ((i + 0.5) * length) / count);
  return lineShape(role, "thin", [
    place(-beyond, 0),
    ...zigzags.flatMap((at) => [
      place(at - half, 0),
      place(at - half / 2, -rise),
      place(at + half / 2, rise),
      place(at + half, 0),
    ]),
    place(length + beyond, 0),
  ]);
}

/** px a plane is carried past the part it belongs to. */
const past = 18;
/** Half height of the tick that marks the break, px. */
const breakTick = 9;
/** Thickness under which a shim is drawn no wider than this, mm: it may stick out beyond the tail. */
const shimWidth = 12;

/** The level rim's top edge, where the sides began. */
export function datumPoints({ frame, givens, profile }: SectionLayout): readonly [Point, Point] {
  const { length } = givens.instrument.body;
  const over = past / 2 / frame.along;
  const at = (x: number): Point => pointAt(frame, x, datumZ(givens, profile, x));
  return [at(-over), at(length + over)];
}

/** The flat, or the seat's plane, extended over the bridge to the tail. */
export function flatPoints({ frame, givens }: SectionLayout): readonly [Point, Point] {
  return [
    [pxAt(frame, 0) - past, frame.level],
    [pxAt(frame, flatFromX(givens)), frame.level],
  ];
}

/** The plane of the fret crowns, extended over the bridge. */
export function fretPlanePoints(layout: SectionLayout): readonly [Point, Point] {
  const { frame, givens } = layout;
  const [tail] = bridgeEnds(layout);
  const at = (x: number): Point => pointAt(frame, x, fretPlaneZ(givens.instrument, x));
  return [at(tail - past / frame.along), at(fingerboardEndX(givens.instrument))];
}

/** The planes that the heights are measured from. */
export function planeShapes(layout: SectionLayout): readonly PathShape[] {
  const shapes = [lineShape("datum", "thin", datumPoints(layout))];
  if (layout.atWork) return shapes;
  return [
    ...shapes,
    lineShape("flat extended", "chain", flatPoints(layout)),
    lineShape("fret plane", "thin", fretPlanePoints(layout)),
    ...settledShapes(layout),
  ];
}

/** The fret plane as it is expected to lie once strung and settled: lower at the saddle line, as it was at the neck end. */
function settledShapes({ frame, givens }: SectionLayout): readonly PathShape[] {
  const { instrument, saddleX, outline, fretPlaneAtSaddle } = givens;
  const { settling } = instrument.strings;
  if (settling === 0) return [];
  return [
    lineShape("strung fret plane", "dashed", [
      pointAt(frame, saddleX, fretPlaneAtSaddle - settling),
      pointAt(frame, outline.length, fretPlaneZ(instrument, outline.length)),
    ]),
  ];
}

/** The break line, or where the seat begins, which runs across the top: here only its end is seen. */
export function breakShape({ frame, givens }: SectionLayout): PathShape {
  const x = pxAt(frame, flatFromX(givens));
  return lineShape(givens.seat === null ? "break" : "seat's end", "thick", [
    [x, frame.level - breakTick],
    [x, frame.level + breakTick],
  ]);
}

/**
 * The part that sets the angle: the shim between the flat's plane and the domed rim, which rests on its
 * neckward edge, or the spacer between the top and the bar, which is away once the seat is sanded.
 */
export function partShapes(layout: SectionLayout): readonly PathShape[] {
  if (layout.givens.seat !== null && !layout.atWork) return [];
  return [
    areaShape(
      anglePart[layout.givens.instrument.dome.method],
      layout.atWork ? "thick" : "thin",
      "wood",
      partPoints(layout),
    ),
  ];
}

/** Width of a spacer as drawn, mm. */
const spacerWidth = 16;

export function partPoints(layout: SectionLayout): readonly Point[] {
  const { frame, givens, profile } = layout;
  if (profile.seat !== null) {
    const { saddleX } = givens;
    const from = saddleX - spacerWidth / 2;
    return rectangle(
      pointAt(frame, from, 0),
      pointAt(frame, from + spacerWidth, -profile.seat.spacer),
    );
  }
  const { contact } = givens;
  const from = Math.min(0, contact - shimWidth);
  return rectangle(pointAt(frame, from, 0), pointAt(frame, contact, -profile.shim));
}

/** The bar the seat is sanded to: it lies on the spacer and on the neck end. */
export function barShapes(layout: SectionLayout): readonly Shape[] {
  const [left, right] = barFace(layout);
  const [backLeft, backRight] = barBack(layout);
  return [
    areaShape("bar", "thin", "wood", [left, right, backRight, backLeft]),
    lineShape("bar's face", "thick", [left, right]),
  ];
}

/** Upper face of the bar. */
export function barBack(layout: SectionLayout): readonly [Point, Point] {
  const [[left, y], [right]] = barFace(layout);
  return [
    [left, y - boardThickness],
    [right, y - boardThickness],
  ];
}

/** Lower face of the bar. */
export function barFace({ frame, givens }: SectionLayout): readonly [Point, Point] {
  return [
    [pxAt(frame, givens.saddleX - spacerWidth) - past, frame.level],
    [pxAt(frame, givens.outline.length) + past, frame.level],
  ];
}

/** The sanding board, whose face is the flat's plane. */
export function boardShapes(layout: SectionLayout): readonly Shape[] {
  const face = boardFace(layout);
  const [left, right] = boardFoot(layout);
  return [
    areaShape("board", "none", "wood", [...face, right, left]),
    lineShape("board's face", "thick", face),
  ];
}

/** Underside of the board as far as it is drawn. */
export function boardFoot(layout: SectionLayout): readonly [Point, Point] {
  const [[left, y], [right]] = boardFace(layout);
  return [
    [left, y + boardThickness],
    [right, y + boardThickness],
  ];
}

export function boardFace({ frame, givens }: SectionLayout): readonly [Point, Point] {
  const { length } = givens.instrument.body;
  return [
    [pxAt(frame, 0) - past - 8, frame.level],
    [pxAt(frame, length) + past + 8, frame.level],
  ];
}

/** Where the drawing stops though the part does not: the sides when heights are stretched, and always the neck. */
export function breakLines(layout: SectionLayout): readonly Shape[] {
  const { frame, givens, cut } = layout;
  const end = layout.atWork ? givens.instrument.body.length : neckCutX(layout);
  const sides =
    cut === null
      ? []
      : [breakLine("cut of the sides", [pxAt(frame, 0), cut], [pxAt(frame, end), cut])];
  return layout.atWork ? sides : [...sides, breakLine("cut of the neck", ...neckCut(layout))];
}

/** The shim where the rim rests on it, or the spacer where it rests on the top, px. */
export const contactPoint = ({ frame, givens, profile }: SectionLayout): Point =>
  profile.seat === null
    ? [pxAt(frame, givens.contact), pyAt(frame, -profile.shim)]
    : [pxAt(frame, givens.saddleX), pyAt(frame, -profile.seat.spacer)];
