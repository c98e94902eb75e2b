import type { Range } from "../../instrument/instrument.ts";
import { roundStep } from "../../profile/comparison/map.ts";
import type { Point } from "../frame.ts";
import { textWidth } from "../lettering.ts";
import { areaShape, lineShape } from "../path.ts";
import type { Shape, TextShape } from "../scene.ts";

/** How one quantity is written on a chart's axis. */
export interface Measure {
  readonly name: string;
  /** The unit shown, and how many mm or degrees it is. */
  readonly unit: string;
  readonly size: number;
  /** A value in mm or degrees, with its unit. */
  readonly say: (value: number) => string;
}

/** One side of a chart: what runs along it, from where to where, in mm or degrees. */
interface Axis {
  readonly measure: Measure;
  readonly range: Range;
}

/** A chart's field of curves: px of its edges, and what lies along them. */
export interface Chart {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly across: Axis;
  readonly up: Axis;
}

export const letteringSize = 13;
const smallSize = 12;

const share = ([low, high]: Range, value: number): number =>
  high > low ? (value - low) / (high - low) : 0.5;

export const pxOn = ({ left, right, across }: Chart, x: number): number =>
  left + (right - left) * share(across.range, x);

export const pyOn = ({ top, bottom, up }: Chart, y: number): number =>
  bottom - (bottom - top) * share(up.range, y);

export const placeOn = (chart: Chart, x: number, y: number): Point => [
  pxOn(chart, x),
  pyOn(chart, y),
];

/** The inverse of `pxOn`, held to the axis. */
export function valueAtPx({ left, right, across }: Chart, px: number): number {
  const [low, high] = across.range;
  const along = Math.min(1, Math.max(0, (px - left) / (right - left)));
  return low + (high - low) * along;
}

/** A range a little wider than what it must hold, never empty. */
export function roomy(values: readonly number[], least: number): Range {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  if (!Number.isFinite(low + high)) return [0, least];
  const spare = Math.max((high - low) * 0.08, (least - (high - low)) / 2, 0);
  return [low - spare, high + spare];
}

/** Round values of the shown unit along an axis, at least `apart` px from one another. */
function ticksOf({ measure, range }: Axis, length: number, apart: number): readonly number[] {
  const [low, high] = [range[0] / measure.size, range[1] / measure.size];
  const step = roundStep(Math.max((high - low) / Math.max(1, Math.floor(length / apart)), 1e-9));
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step);
}

const tickText = (shown: number): string => String(Number(shown.toPrecision(10))).replace("-", "−");

const axisName = ({ name, unit }: Measure): string => (unit === "" ? name : `${name}, ${unit}`);

/** The scale along the foot of a chart, with its figures, and what runs along it. */
export function acrossShapes(chart: Chart): readonly Shape[] {
  const { left, right, bottom, across } = chart;
  const foot: readonly Point[] = [
    [left, bottom],
    [right, bottom],
  ];
  const { size } = across.measure;
  return [
    lineShape("axis", "thin", foot),
    ...ticksOf(across, right - left, 56).flatMap((shown) => {
      const x = pxOn(chart, shown * size);
      const tick: readonly Point[] = [
        [x, bottom],
        [x, bottom + 4],
      ];
      return [
        lineShape("tick", "thin", tick),
        text("tick", x, bottom + 17, "middle", tickText(shown), smallSize),
      ];
    }),
    text("axis-name", right, bottom + 34, "end", axisName(across.measure)),
  ];
}

/** The same up its left side. */
export function upShapes(chart: Chart): readonly Shape[] {
  const { left, top, bottom, up } = chart;
  const side: readonly Point[] = [
    [left, top],
    [left, bottom],
  ];
  const { size } = up.measure;
  return [
    lineShape("axis", "thin", side),
    ...ticksOf(up, bottom - top, 34).flatMap((shown) => {
      const y = pyOn(chart, shown * size);
      const tick: readonly Point[] = [
        [left - 4, y],
        [left, y],
      ];
      return [
        lineShape("tick", "thin", tick),
        text("tick", left - 7, y + 4, "end", tickText(shown), smallSize),
      ];
    }),
    text("axis-name", 2, top - 22, "start", axisName(up.measure)),
  ];
}

export function text(
  role: string,
  x: number,
  y: number,
  anchor: TextShape["anchor"],
  words: string,
  size = letteringSize,
  strong = false,
): TextShape {
  return { kind: "text", role, x, y, anchor, size, strong, text: words };
}

/** A band right across the chart between two values up it, as far as it is in sight; null when it is not. */
export function bandAcross(chart: Chart, role: string, [low, high]: Range): Shape | null {
  const { left, right, top, bottom } = chart;
  const upper = Math.max(top, pyOn(chart, high));
  const lower = Math.min(bottom, pyOn(chart, low));
  if (upper >= lower) return null;
  return areaShape(role, "none", "window", [
    [left, upper],
    [right, upper],
    [right, lower],
    [left, lower],
  ]);
}

/** Names with the height each would stand at, moved apart so that none lies on another, in order of height. */
export function spacedApart<Named extends { readonly y: number }>(
  names: readonly Named[],
  apart: number,
  [top, bottom]: Range,
): readonly (Named & { readonly at: number })[] {
  const sorted = [...names].sort((a, b) => a.y - b.y);
  const places = sorted.map(({ y }) => Math.min(bottom, Math.max(top, y)));
  for (let i = 1; i < places.length; i++) {
    places[i] = Math.max(places[i] ?? 0, (places[i - 1] ?? 0) + apart);
  }
  let limit = bottom;
  for (let i = places.length - 1; i >= 0; i--) {
    places[i] = Math.min(places[i] ?? 0, limit);
    limit = (places[i] ?? 0) - apart;
  }
  return sorted.map((name, i) => ({ ...name, at: places[i] ?? name.y }));
}

/** As much of a name as fits, an ellipsis where it is cut. */
export function fitted(words: string, width: number, size = letteringSize): string {
  if (textWidth(words, size) <= width) return words;
  let kept = words;
  while (kept.length > 1 && textWidth(`${kept}…`, size) > width) kept = kept.slice(0, -1);
  return `${kept.trimEnd()}…`;
}
