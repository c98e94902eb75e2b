import type { Range } from "../../instrument/instrument.ts";
import { standing } from "../../profile/standing.ts";
import { type Point, pxAt, pyAt } from "../frame.ts";
import { capHeight, textWidth } from "../lettering.ts";
import type { GroupShape, Shape } from "../scene.ts";
import { areaShape, group, lineShape, rectangle, textShape } from "../shapes.ts";
import { bridgeEnds, bridgeTopZ } from "./bridge.ts";
import type { SectionLayout } from "./section-layout.ts";

/** px: width of a band, its space from its neighbour, and of the bar that spans a miss. */
const bandWidth = 13;
const space = 4;
const barWidth = 4;

/** A height against the range accepted for it, both mm over the flat's plane, and where its band stands, px. */
interface Gauge {
  readonly role: string;
  readonly value: number;
  readonly range: Range;
  readonly left: number;
}

/**
 * The ranges accepted at the saddle as bands: beside the saddle where its top should end, tailward by
 * the saddle exposed and neckward by the string height; before the bridge where the fret plane should
 * pass. A thick tick shows where it does, and a bar spans the miss when that is outside the band.
 */
export function windowShapes(layout: SectionLayout): GroupShape {
  return group(
    "windows",
    gauges(layout).flatMap((one) => gauge(layout, one)),
  );
}

/** Says what the bands are, in the row of the scales where that has room. */
export function windowLegend(
  { width, height, size }: Pick<SectionLayout, "width" | "height" | "size">,
  scales: GroupShape,
): readonly GroupShape[] {
  const ends = scales.shapes.flatMap((shape) =>
    shape.kind === "text" ? [shape.x + textWidth(shape.text, shape.size)] : [],
  );
  const left = Math.max(...ends) + 2 * bandWidth;
  const base = height - 8;
  const words = ["windows of the saddle, the strings, the fret plane", "windows"];
  const text = words.find(
    (one) => left + bandWidth + space + textWidth(one, size) + cornerRoom <= width,
  );
  if (text === undefined) return [];
  const swatch = rectangle([left, base - capHeight(size)], [left + bandWidth, base]);
  return [
    group("window legend", [
      areaShape("window legend", "thin", "window", swatch),
      textShape("window legend", text, [left + bandWidth + space, base], size, { anchor: "start" }),
    ]),
  ];
}

/** What stands in the drawing's lower right corner on the page, px. */
const cornerRoom = 44;

/** Neckward edge of the last band, px. */
export const bandsEnd = (layout: SectionLayout): number =>
  Math.max(...gauges(layout).map(({ left }) => left + bandWidth));

/** The bands' outlines, for the lettering to keep off. */
export const bandBoxes = ({ frame, ...rest }: SectionLayout): readonly (readonly Point[])[] =>
  gauges({ frame, ...rest }).map(({ left, value, range }) => {
    const ys = [value, ...range].map((z) => pyAt(frame, z));
    return rectangle([left, Math.min(...ys)], [left + bandWidth, Math.max(...ys)]);
  });

function gauges(layout: SectionLayout): readonly Gauge[] {
  const { frame, givens, profile } = layout;
  const { windows } = givens.instrument;
  const top = -profile.flatGap;
  const bridgeTop = bridgeTopZ(layout);
  const saddle = pxAt(frame, givens.saddleX);
  const [, neckEdge] = bridgeEnds(layout);
  const string = top + profile.stringHeight;
  const over = (base: number, [low, high]: Range): Range => [base + low, base + high];
  return [
    {
      role: "saddle exposed",
      value: string,
      range: over(bridgeTop, windows.saddleExposure),
      left: saddle - space - bandWidth,
    },
    {
      role: "string height",
      value: string,
      range: over(top, windows.stringHeight),
      left: saddle + space,
    },
    {
      role: "fret plane over the bridge",
      value: givens.fretPlaneAtSaddle,
      range: over(bridgeTop, windows.bridgeClearance),
      left: Math.max(pxAt(frame, neckEdge), saddle + space + bandWidth) + space,
    },
  ];
}

function gauge({ frame }: SectionLayout, { role, value, range, left }: Gauge): readonly Shape[] {
  const right = left + bandWidth;
  const [low, high] = range;
  const y = pyAt(frame, value);
  const band = areaShape(
    `window ${role}`,
    "thin",
    "window",
    rectangle([left, pyAt(frame, low)], [right, pyAt(frame, high)]),
  );
  const tick = lineShape(`value ${role}`, "thick", [
    [left - 1, y],
    [right + 1, y],
  ]);
  if (standing(value, range) !== "outside") return [band, tick];
  const nearest = value < low ? low : high;
  const middle = (left + right - barWidth) / 2;
  const bar = rectangle([middle, y], [middle + barWidth, pyAt(frame, nearest)]);
  return [band, areaShape(`miss ${role}`, "none", "ink", bar), tick];
}
