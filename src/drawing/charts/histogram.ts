import { area, curveStepAfter } from "d3-shape";
import type { Range } from "../../instrument/instrument.ts";
import type { Histogram } from "../../profile/uncertainty/running-statistics.ts";
import type { Point } from "../frame.ts";
import type { PathShape, Scene, Shape } from "../scene.ts";
import { areaShape, lineShape, rectangle, textShape } from "../shapes.ts";
import {
  acrossShapes,
  type Chart,
  letteringSize,
  type Measure,
  placeOn,
  pxOn,
  pyOn,
} from "./chart.ts";

export interface HistogramOptions {
  readonly width: number;
  readonly height: number;
  readonly measure: Measure;
  readonly histogram: Histogram;
  readonly window: Range;
  /** 95 % of the draws. */
  readonly interval: Range;
  /** The first-order normal to compare with. */
  readonly normal: { readonly value: number; readonly u: number };
}

/** How often each value was drawn, over the window as a band; the first-order normal as a dashed curve, the 95 % interval ruled above. */
export function histogramChart(options: HistogramOptions): Scene {
  const { width, height, measure, histogram, window, interval } = options;
  const { from, counts } = histogram;
  const span = histogram.width * counts.length;
  const most = Math.max(...counts, 1);
  const chart: Chart = {
    left: 14,
    right: Math.max(120, width - 14),
    top: 42,
    bottom: Math.max(80, height - 42),
    across: { measure, range: [from, from + span] },
    up: { measure: { ...measure, name: "", unit: "", size: most }, range: [0, most * 1.05] },
  };
  return {
    width,
    height,
    title: `${measure.name} as drawn: 95 % from ${measure.say(interval[0])} to ${measure.say(interval[1])}.`,
    shapes: [
      ...windowShapes(chart, window),
      barShape(chart, histogram),
      lineShape("first-order", "dashed", normalPoints(chart, options)),
      ...acrossShapes(chart),
      ...intervalShapes(chart, options),
    ],
  };
}

function windowShapes(chart: Chart, [low, high]: Range): readonly Shape[] {
  const { left, right, top, bottom } = chart;
  const from = Math.max(left, pxOn(chart, low));
  const to = Math.min(right, pxOn(chart, high));
  if (!(from < to)) return [];
  return [areaShape("window", "none", "window", rectangle([from, top], [to, bottom]))];
}

/** The bars as one area, so that no seam shows between them. */
function barShape(chart: Chart, { from, width, counts }: Histogram): PathShape {
  const tops = [...counts, counts.at(-1) ?? 0].map((count, i) =>
    placeOn(chart, from + i * width, count),
  );
  const bars = area<Point>().curve(curveStepAfter).y0(pyOn(chart, 0)).digits(2);
  return { kind: "path", role: "draws", line: "thin", fill: "wood", d: bars(tops) ?? "" };
}

function normalPoints(chart: Chart, { histogram, normal }: HistogramOptions): readonly Point[] {
  const total = histogram.counts.reduce((sum, count) => sum + count, 0);
  const [low, high] = chart.across.range;
  if (normal.u === 0)
    return [placeOn(chart, normal.value, 0), placeOn(chart, normal.value, chart.up.range[1])];
  return Array.from({ length: 121 }, (_, i) => {
    const x = low + ((high - low) * i) / 120;
    const z = (x - normal.value) / normal.u;
    const density = Math.exp((-z * z) / 2) / (normal.u * Math.sqrt(2 * Math.PI));
    return placeOn(chart, x, density * histogram.width * total);
  });
}

function intervalShapes(chart: Chart, { interval, measure }: HistogramOptions): readonly Shape[] {
  const [from, to] = interval.map((end) => pxOn(chart, end));
  if (from === undefined || to === undefined) return [];
  const y = chart.top - 8;
  const tick = (x: number): Shape =>
    lineShape("interval", "thin", [
      [x, y - 5],
      [x, y + 5],
    ]);
  return [
    lineShape("interval", "thick", [
      [from, y],
      [to, y],
    ]),
    tick(from),
    tick(to),
    textShape(
      "interval",
      `95 %: ${measure.say(interval[0])} to ${measure.say(interval[1])}`,
      [(from + to) / 2, y - 8],
      letteringSize,
    ),
  ];
}
