import type { Profile } from "../profile/outcome.ts";
import type { Setting } from "../profile/setting.ts";
import { type Frame, xAt, zAt } from "./frame.ts";
import { textBox } from "./lettering.ts";
import { Placer } from "./placer.ts";
import { scaleRow } from "./scale-bar.ts";
import type { Scene, Shape } from "./scene.ts";
import { rimEdgeShapes, rimShapes, topShapes } from "./section-body.ts";
import { bridgeShapes } from "./section-bridge.ts";
import { dimensionShapes } from "./section-dimensions.ts";
import { type Handles, handlesOf } from "./section-handles.ts";
import {
  boardShapes,
  breakLines,
  breakShape,
  group,
  planeShapes,
  shimShape,
} from "./section-lines.ts";
import { nameShapes } from "./section-names.ts";
import { neckShapes } from "./section-neck.ts";
import { type SectionOptions, type SectionSheet, sheetOf } from "./section-sheet.ts";
import { avoidDrawing } from "./section-strokes.ts";
import { windowShapes } from "./section-window.ts";

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
