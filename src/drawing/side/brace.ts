import { curvatureOf, sagitta } from "../../geometry/circle.ts";
import { archOf, type BraceRise } from "../../profile/brace.ts";
import { type Frame, type Point, pointAt } from "../frame.ts";
import {
  type LabelCandidate,
  LabelPlacement,
  outlineCost,
  plainCandidate,
} from "../label-placement.ts";
import { textBox } from "../lettering.ts";
import { curvePoints } from "../path.ts";
import type { PlanMeasureFormat } from "../plan/rim-plan-layout.ts";
import { scaleRow } from "../scale-bar.ts";
import type { Scene, Shape } from "../scene.ts";
import { areaShape, lineShape, textShape } from "../shapes.ts";

/** A brace: its length and the radius of its arched edge, mm. */
export interface BraceShape {
  readonly length: number;
  /** Null is a straight brace. */
  readonly radius: number | null;
}

export interface BraceOptions {
  /** Room for the drawing, px. */
  readonly width: number;
  readonly height: number;
  readonly words: PlanMeasureFormat;
}

const room = 24;
const stripRoom = 26;
const stretches = [50, 20, 10, 5, 2, 1];

/** A brace's arch from its middle's chord, heights drawn larger than lengths, with its rise at each place. */
export function braceOf(
  shape: BraceShape,
  rises: readonly BraceRise[],
  { words, ...available }: BraceOptions,
): Scene {
  const [width, height] = [Math.max(available.width, 200), Math.max(available.height, 100)];
  const size = width < 480 ? 13 : 15;
  const arch = archOf(shape.length, shape.radius);
  const along = (width - 2 * room) / shape.length;
  const over = size + 14;
  const tall = height - over - stripRoom - 24;
  const stretch = stretches.find((times) => arch * along * times <= tall) ?? 1;
  const frame: Frame = {
    ...{ along, up: along * stretch, left: width / 2, turned: false },
    level: over + arch * along * stretch,
  };
  const half = shape.length / 2;
  const curve = curvePoints(
    frame,
    -half,
    half,
    (x) => arch - sagitta(curvatureOf(shape.radius), x),
  );
  const under = frame.level + 14;
  const body: Point[] = [
    ...curve,
    [curve.at(-1)?.[0] ?? width, under],
    [curve[0]?.[0] ?? 0, under],
  ];
  const chord: Point[] = [pointAt(frame, -half, 0), pointAt(frame, half, 0)];
  const labels = new LabelPlacement({ left: 2, top: 2, right: width - 2, bottom: height - 2 });
  const scales = scaleRow(
    { along, up: frame.up, stretch, unit: words.unit },
    8,
    height - 8,
    width - 16,
    size,
  );
  for (const part of scales.shapes) if (part.kind === "text") labels.reserve(textBox(part));
  labels.avoid(curve, outlineCost);
  return {
    width,
    height,
    title: `A brace ${words.length(shape.length)} long rises ${words.length(arch)} at the middle.`,
    shapes: [
      areaShape("brace", "thin", "wood", body),
      lineShape("line between the ends", "chain", chord),
      lineShape("arched edge", "thick", curve),
      scales,
      ...rises.flatMap((rise) => riseShapes(frame, rise, words, size, labels)),
    ],
  };
}

/** Ordinates on both sides, the figure over the right one. */
function riseShapes(
  frame: Frame,
  { fromMiddle, rise }: BraceRise,
  words: PlanMeasureFormat,
  size: number,
  labels: LabelPlacement,
): readonly Shape[] {
  const [x, y] = pointAt(frame, fromMiddle, rise);
  const text = words.figure(rise);
  const candidates = (["middle", "end"] as const).map(
    (anchor, i): LabelCandidate =>
      plainCandidate(textShape("rise", text, [x, y - 6], size, { anchor }), i),
  );
  const candidate = labels.choose(candidates, 40);
  const both = fromMiddle === 0 ? [0] : [fromMiddle, -fromMiddle];
  return [
    ...(rise === 0 ? [] : both).map((at) =>
      lineShape("ordinate", "thin", [pointAt(frame, at, 0), pointAt(frame, at, rise)]),
    ),
    ...(candidate === null ? [] : [candidate.text]),
  ];
}
