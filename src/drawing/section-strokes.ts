import type { Point } from "./frame.ts";
import { pxAt } from "./frame.ts";
import { heavy, light, type Placer } from "./placer.ts";
import { backPoints, blocks, inside, rimEdgePoints, topPoints } from "./section-body.ts";
import { bridgePoints, stringPoints } from "./section-bridge.ts";
import { handleBoxes } from "./section-handles.ts";
import {
  boardFace,
  datumPoints,
  flatPoints,
  fretPlanePoints,
  shimPoints,
} from "./section-lines.ts";
import { fingerboardPoints } from "./section-neck.ts";
import type { SectionSheet } from "./section-sheet.ts";
import { bandBoxes } from "./section-window.ts";

/** Tells the placer what is drawn, so that the lettering keeps off it. */
export function avoidDrawing(sheet: SectionSheet, placer: Placer): void {
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
