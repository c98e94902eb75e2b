import type { Range } from "../../instrument/instrument.ts";
import type { Sweep } from "../../profile/comparison/sweep.ts";
import { circleShape } from "../circle-shape.ts";
import type { Point } from "../frame.ts";
import type { LineStyle, Scene, Shape } from "../scene.ts";
import { lineShape, textShape } from "../shapes.ts";
import {
  acrossShapes,
  bandAcross,
  type Chart,
  fitted,
  letteringSize,
  type Measure,
  placeOn,
  pxOn,
  pyOn,
  roomy,
  spacedApart,
  upShapes,
  valueAtPx,
} from "./chart.ts";

export interface SweptCurve {
  readonly name: string;
  readonly line: LineStyle;
  readonly sweep: Sweep;
}

export interface SweepChartOptions {
  readonly width: number;
  readonly height: number;
  readonly across: Measure;
  readonly up: Measure;
  readonly range: Range;
  /** The base first. */
  readonly curves: readonly SweptCurve[];
  /** Named at the present value's line. */
  readonly present: { readonly x: number; readonly says: string } | null;
}

export interface SweepChart {
  readonly scene: Scene;
  readonly chart: Chart;
  /** The input's value at a px across. */
  readonly toInput: (px: number) => number;
}

/** Curves of an outcome over an input, the base's window as a band, its crossings as rings, each curve named at its end. */
export function sweepChart(options: SweepChartOptions): SweepChart {
  const chart = chartOf(options);
  const window = options.curves[0]?.sweep.window ?? null;
  const band = window === null ? null : bandAcross(chart, "window", window);
  const shapes: readonly Shape[] = [
    ...(band === null ? [] : [band]),
    ...acrossShapes(chart),
    ...upShapes(chart),
    ...options.curves.flatMap(({ line, sweep }) => curveShapes(chart, line, sweep)),
    ...presentShapes(chart, options),
    ...options.curves.flatMap(({ sweep }) => crossingShapes(chart, sweep)),
    ...nameShapes(chart, options),
  ];
  const title = `${options.up.name} against ${options.across.name.toLowerCase()}, ${options.curves.length} ${options.curves.length === 1 ? "curve" : "curves"}.`;
  return {
    scene: { width: options.width, height: options.height, title, shapes },
    chart,
    toInput: (px) => valueAtPx(chart, px),
  };
}

const nameRoom = (width: number): number => Math.min(128, Math.max(84, width * 0.2));

function chartOf({ width, height, across, up, range, curves }: SweepChartOptions): Chart {
  const window = curves[0]?.sweep.window ?? [];
  const values = curves.flatMap(({ sweep }) => sweep.points.flatMap(({ value }) => value ?? []));
  return {
    left: 52,
    right: Math.max(120, width - nameRoom(width)),
    top: 46,
    bottom: Math.max(90, height - 42),
    across: { measure: across, range },
    up: { measure: up, range: roomy([...values, ...window], up.size / 10) },
  };
}

/** A gap in the curve where an input gives no plan. */
function curveShapes(chart: Chart, line: LineStyle, { points }: Sweep): readonly Shape[] {
  const runs: Point[][] = [[]];
  for (const { x, value } of points) {
    if (value === null) runs.push([]);
    else runs.at(-1)?.push(placeOn(chart, x, value));
  }
  return runs.filter((run) => run.length > 1).map((run) => lineShape("curve", line, run));
}

function presentShapes(chart: Chart, { present }: SweepChartOptions): readonly Shape[] {
  if (present === null || !within(chart.across.range, present.x)) return [];
  const x = pxOn(chart, present.x);
  const anchor = x > (chart.left + chart.right) / 2 ? "end" : "start";
  return [
    lineShape("present", "thin", [
      [x, chart.top - 6],
      [x, chart.bottom],
    ]),
    textShape(
      "present",
      present.says,
      [x + (anchor === "end" ? -5 : 5), chart.top - 7],
      letteringSize,
      { anchor },
    ),
  ];
}

function crossingShapes(chart: Chart, { crossings, window }: Sweep): readonly Shape[] {
  if (window === null) return [];
  return crossings.map(({ at, edge }) =>
    circleShape("crossing", "thin", "paper", placeOn(chart, at, window[edge === "low" ? 0 : 1]), 4),
  );
}

function nameShapes(chart: Chart, { curves, width }: SweepChartOptions): readonly Shape[] {
  const names = curves.flatMap(({ name, sweep }) => {
    const last = sweep.points.findLast(({ value }) => value !== null);
    return last?.value == null
      ? []
      : [{ name, x: pxOn(chart, last.x), y: pyOn(chart, last.value) }];
  });
  return spacedApart(names, 16, [chart.top, chart.bottom]).flatMap(({ name, x, y, at }) => [
    lineShape("leader", "thin", [
      [x, y],
      [chart.right + 10, at],
    ]),
    textShape(
      "curve-name",
      fitted(name, width - chart.right - 15),
      [chart.right + 13, at + 4],
      letteringSize,
      { anchor: "start" },
    ),
  ]);
}

const within = ([low, high]: Range, value: number): boolean => value >= low && value <= high;
