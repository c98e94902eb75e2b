import { extent, ticks } from "d3-array";
import type { Range } from "../../instrument/instrument.ts";
import type { Point } from "../frame.ts";
import { textWidth } from "../lettering.ts";
import type { Shape } from "../scene.ts";
import { areaShape, lineShape, rectangle, textShape } from "../shapes.ts";

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

export const letteringSize = 15;
export const smallSize = 13;

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
  const [low, high] = extent(values);
  if (low === undefined) return [0, least];
  const spare = Math.max((high - low) * 0.08, (least - (high - low)) / 2, 0);
  return [low - spare, high + spare];
}

/** Round values of the shown unit along an axis, some `apart` px from one another and never nearer than two thirds of that. */
function ticksOf({ measure, range }: Axis, length: number, apart: number): readonly number[] {
  const [low, high] = range.map((end) => end / measure.size);
  return ticks(low ?? 0, high ?? 0, Math.max(1, Math.floor(length / apart)));
}

const tickText = (shown: number): string => String(shown).replace("-", "−");

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
    ...ticksOf(across, right - left, 80).flatMap((shown) => {
      const x = pxOn(chart, shown * size);
      const tick: readonly Point[] = [
        [x, bottom],
        [x, bottom + 4],
      ];
      return [
        lineShape("tick", "thin", tick),
        textShape("tick", tickText(shown), [x, bottom + 17], smallSize),
      ];
    }),
    textShape("axis-name", axisName(across.measure), [right, bottom + 34], letteringSize, {
      anchor: "end",
    }),
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
    ...ticksOf(up, bottom - top, 48).flatMap((shown) => {
      const y = pyOn(chart, shown * size);
      const tick: readonly Point[] = [
        [left - 4, y],
        [left, y],
      ];
      return [
        lineShape("tick", "thin", tick),
        textShape("tick", tickText(shown), [left - 7, y + 4], smallSize, { anchor: "end" }),
      ];
    }),
    textShape("axis-name", axisName(up.measure), [2, top - 22], letteringSize, {
      anchor: "start",
    }),
  ];
}

/** A band right across the chart between two values up it, as far as it is in sight; null when it is not. */
export function bandAcross(chart: Chart, role: string, [low, high]: Range): Shape | null {
  const { left, right, top, bottom } = chart;
  const upper = Math.max(top, pyOn(chart, high));
  const lower = Math.min(bottom, pyOn(chart, low));
  if (upper >= lower) return null;
  return areaShape(role, "none", "window", rectangle([left, upper], [right, lower]));
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
