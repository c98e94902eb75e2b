import type { Outline } from "../../geometry/outline/outline.ts";
import type { Place } from "../../geometry/polyline.ts";
import { edgePolyline } from "../edge-polyline.ts";
import { type Frame, type Point, pointAt } from "../frame.ts";
import { roundLength } from "../scale-bar.ts";
import type { Scene, Shape } from "../scene.ts";
import type { MeasureFormat } from "../section/section-layout.ts";
import { areaShape, lineShape, textShape } from "../shapes.ts";

interface Room {
  readonly width: number;
  readonly height: number;
  readonly words: MeasureFormat;
}

const margin = 24;
const strip = 26;
const size = 15;

/** The curves fitted to a drawing: of both halves, or of one that the other mirrors. */
export interface FittedOutline {
  readonly bass: Outline;
  readonly treble: Outline;
}

/**
 * A drawing laid by its tail and neck end, tail left and bass side up, as it came (thin), and the outline
 * fitted to it (thick, coloured within) where there is one.
 */
export function tracingPlanOf(
  drawn: readonly Place[],
  length: number,
  outline: FittedOutline | null,
  { width, height, words }: Room,
): Scene {
  const half = Math.max(1, ...drawn.map(([, y]) => Math.abs(y)));
  const low = Math.min(0, ...drawn.map(([x]) => x));
  const span = Math.max(length, ...drawn.map(([x]) => x)) - low;
  const along = Math.max(
    0.01,
    Math.min((width - 2 * margin) / span, (height - strip - 2 * margin) / (2 * half)),
  );
  const frame: Frame = {
    ...{ along, up: along, turned: false },
    left: (width - span * along) / 2 - low * along,
    level: (height - strip) / 2,
  };
  const at = ([x, y]: Place): Point => pointAt(frame, x, y);
  const fit = outline === null ? [] : fitShapes(outline, at);
  const ends: Point[] = [at([0, 0]), at([length, 0])];
  const bar = roundLength(along, 110, words.unit);
  return {
    width,
    height,
    title:
      outline === null
        ? "The drawing as it came"
        : `The drawing, and the outline fitted to it, ${words.length(length)} long`,
    shapes: [
      ...fit,
      lineShape("centreline", "chain", ends),
      lineShape("drawing", "thin", drawn.map(at)),
      ...ends.map(([x, y], i) =>
        lineShape(i === 0 ? "tail" : "neck end", "thick", [
          [x, y - 8],
          [x, y + 8],
        ]),
      ),
      ...ends.map(([x, y], i) =>
        i === 0
          ? textShape("end", "tail", [x + 6, y - 12], size, { anchor: "start" })
          : textShape("end", "neck end", [x - 6, y - 12], size, { anchor: "end" }),
      ),
      lineShape("scale bar", "thin", [
        [8, height - 12],
        [8 + bar.mm * along, height - 12],
      ]),
      textShape("scale", bar.text, [16 + bar.mm * along, height - 8], size, { anchor: "start" }),
    ],
  };
}

/** Wider than any screen shows. */
const stray = 0.1;

function fitShapes({ bass, treble }: FittedOutline, at: (place: Place) => Point): readonly Shape[] {
  const under = edgePolyline(treble, stray).map(([x, y]): Place => [x, -y]);
  const edge = [...edgePolyline(bass, stray), ...under.toReversed()];
  return [areaShape("fitted outline", "thick", "wood", edge.map(at))];
}
