import type { Range } from "../../instrument/instrument.ts";
import type { Place } from "../../profile/comparison/contour.ts";
import type { InputMap } from "../../profile/comparison/map.ts";
import { circleShape } from "../circle-shape.ts";
import { textWidth } from "../lettering.ts";
import { closedPathOf, pathOf } from "../path.ts";
import type { Scene, Shape } from "../scene.ts";
import { areaShape, rectangle, textShape } from "../shapes.ts";
import { acrossShapes, type Chart, type Measure, placeOn, smallSize, upShapes } from "./chart.ts";

export interface MapChartOptions {
  readonly width: number;
  readonly height: number;
  readonly across: Measure;
  readonly up: Measure;
  readonly outcome: Measure;
  readonly acrossRange: Range;
  readonly upRange: Range;
  readonly map: InputMap;
}

/** Contours of an outcome over two inputs, the part where every check passes shaded, the plan's own place ringed. */
export function mapChart(options: MapChartOptions): Scene {
  const { width, height, across, up, outcome, map } = options;
  const chart: Chart = {
    left: 52,
    right: Math.max(120, width - 14),
    top: 46,
    bottom: Math.max(90, height - 42),
    across: { measure: across, range: options.acrossRange },
    up: { measure: up, range: options.upRange },
  };
  const present = map.present === null ? null : placeOn(chart, ...map.present);
  return {
    width,
    height,
    title: `${outcome.name} over ${across.name.toLowerCase()} and ${up.name.toLowerCase()}; shaded where every check passes.`,
    shapes: [
      passingShape(chart, map.passing),
      ...acrossShapes(chart),
      ...upShapes(chart),
      ...contourShapes(chart, options),
      ...(present === null ? [] : [circleShape("present", "thick", "paper", present, 6)]),
    ],
  };
}

/** One path for the whole region, so that no seam shows between its pieces. */
function passingShape(chart: Chart, passing: InputMap["passing"]): Shape {
  const d = passing.map((polygon) =>
    closedPathOf(polygon.map((place) => placeOn(chart, ...place))),
  );
  return { kind: "path", role: "passing", line: "none", fill: "window", d: d.join("") };
}

function contourShapes(chart: Chart, { map, outcome }: MapChartOptions): readonly Shape[] {
  const taken: Place[] = [];
  const inSight = ([x, y]: Place, width: number): boolean =>
    x - width / 2 > chart.left + 4 &&
    x + width / 2 < chart.right - 4 &&
    y > chart.top + 10 &&
    y < chart.bottom - 10;
  return map.contours.flatMap(({ level, edge, lines }) => {
    const drawn = lines.map((line) => line.map((place) => placeOn(chart, ...place)));
    const longest = drawn.reduce(
      (most, line) => (line.length > most.length ? line : most),
      drawn[0] ?? [],
    );
    const words = outcome.say(level);
    const width = textWidth(words, smallSize);
    const spot = spotFor(
      longest.filter((place) => inSight(place, width)),
      taken,
      width,
    );
    if (spot !== null) taken.push(spot);
    const line = edge ? "thick" : "thin";
    const d = drawn.map(pathOf).join("");
    return [
      { kind: "path", role: edge ? "window-edge" : "contour", line, d } satisfies Shape,
      ...(spot === null ? [] : labelShapes(spot, words)),
    ];
  });
}

/** A place on the line, away from its ends and from the labels there are; null when it has none. */
function spotFor(line: readonly Place[], taken: readonly Place[], width: number): Place | null {
  const free = (x: number, y: number): boolean =>
    taken.every(([tx, ty]) => Math.abs(tx - x) > width + 8 || Math.abs(ty - y) > 17);
  for (const share of [0.5, 0.35, 0.65, 0.22, 0.78]) {
    const place = line[Math.floor(line.length * share)];
    if (place !== undefined && line.length > 8 && free(...place)) return place;
  }
  return null;
}

function labelShapes([x, y]: Place, words: string): readonly Shape[] {
  const half = textWidth(words, smallSize) / 2 + 1;
  return [
    areaShape("contour-label", "none", "paper", rectangle([x - half, y - 8], [x + half, y + 8])),
    textShape("contour-label", words, [x, y + 4], smallSize),
  ];
}
