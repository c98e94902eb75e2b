import type { Range } from "../../instrument/instrument.ts";
import { textWidth } from "../lettering.ts";
import type { FillStyle, Scene, Shape } from "../scene.ts";
import { areaShape, lineShape, rectangle, textShape } from "../shapes.ts";
import {
  acrossShapes,
  type Chart,
  fitted,
  letteringSize,
  type Measure,
  pxOn,
  roomy,
} from "./chart.ts";

/** A bar from one value to another, named over it. */
interface Bar {
  readonly name: string;
  readonly from: number;
  readonly to: number;
  /** What its two ends say, where they say anything. */
  readonly low?: string;
  readonly high?: string;
  readonly fill: FillStyle;
}

export interface BarChartOptions {
  readonly width: number;
  readonly title: string;
  readonly measure: Measure;
  readonly bars: readonly Bar[];
  /** Shaded behind all bars. */
  readonly band: Range | null;
  /** A rule through all bars, and what it says. */
  readonly rule: { readonly at: number; readonly says: string } | null;
}

const row = 40;
const head = 30;

/** Bars one under another over a common scale, each with its name above it. */
export function barChart({ width, title, measure, bars, band, rule }: BarChartOptions): Scene {
  const bottom = head + Math.max(1, bars.length) * row + 6;
  const ends = bars.flatMap(({ from, to }) => [from, to]);
  const marks = [...ends, ...(band ?? []), ...(rule === null ? [] : [rule.at])];
  const chart: Chart = {
    left: 10,
    right: Math.max(120, width - 10),
    top: head,
    bottom,
    across: { measure, range: roomy(marks, measure.size / 10) },
    up: { measure: { ...measure, name: "", unit: "" }, range: [0, 1] },
  };
  return {
    width,
    height: bottom + 42,
    title,
    shapes: [
      ...(band === null ? [] : [upright(chart, "shared", band)]),
      ...bars.flatMap((bar, i) => barShapes(chart, bar, head + i * row)),
      ...ruleShapes(chart, rule),
      ...acrossShapes(chart),
    ],
  };
}

function upright(chart: Chart, role: string, [low, high]: Range): Shape {
  const { top, bottom } = chart;
  const [from, to] = [pxOn(chart, low), pxOn(chart, high)];
  return areaShape(role, "none", "window", rectangle([from, top - 4], [to, bottom]));
}

function barShapes(chart: Chart, bar: Bar, y: number): readonly Shape[] {
  const [from, to] = [pxOn(chart, bar.from), pxOn(chart, bar.to)];
  const [top, foot] = [y + 19, y + 33];
  const room = chart.right - chart.left;
  const name = fitted(bar.name, room * 0.6);
  const endsRoom = room - textWidth(name, letteringSize) - 14;
  const ends = [bar.low, bar.high].filter((end) => end !== undefined).join(" – ");
  return [
    textShape("bar-name", name, [chart.left, y + 13], letteringSize, { anchor: "start" }),
    ...(ends === ""
      ? []
      : [
          textShape("bar-ends", fitted(ends, endsRoom), [chart.right, y + 13], letteringSize, {
            anchor: "end",
          }),
        ]),
    areaShape("bar", "thin", bar.fill, rectangle([from, top], [to, foot])),
  ];
}

function ruleShapes(chart: Chart, rule: BarChartOptions["rule"]): readonly Shape[] {
  if (rule === null) return [];
  const x = pxOn(chart, rule.at);
  const anchor = x > (chart.left + chart.right) / 2 ? "end" : "start";
  return [
    lineShape("rule", "thick", [
      [x, chart.top - 4],
      [x, chart.bottom],
    ]),
    textShape("rule", rule.says, [x + (anchor === "end" ? -6 : 6), chart.top - 12], letteringSize, {
      anchor,
      strong: true,
    }),
  ];
}
