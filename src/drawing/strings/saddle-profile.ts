import type { Range } from "../../instrument/instrument.ts";
import type { SaddleCrown } from "../../profile/saddle-crown.ts";
import { type Frame, type Point, pointAt, pxAt, pyAt } from "../frame.ts";
import { capHeight, textWidth } from "../lettering.ts";
import type { Scene, Shape } from "../scene.ts";
import { areaShape, lineShape, rectangle, textShape } from "../shapes.ts";

export interface SaddleProfileOptions {
  /** Room for the drawing, px; it is as tall as it needs. */
  readonly width: number;
  /** A height in the shown unit, with it and without. */
  readonly words: {
    readonly height: (mm: number) => string;
    readonly figure: (mm: number) => string;
  };
  /** What the saddle's exposure is to lie within, mm. */
  readonly window: Range;
  readonly leftHanded: boolean;
}

/** mm the saddle runs past the outer strings, and px of the bridge's top seen past it. */
const past = 4;
const beside = 24;
/** px that the highest place stands over the bridge's top at most, and how many times larger heights are drawn at most. */
const tallest = 120;
const mostTimes = 4;

/**
 * The saddle seen from the tail (of a left-handed instrument from the neck), so that the bass is on the
 * left: its crown over the bridge's top, each string's height there, and the window. Heights may be drawn
 * larger than lengths; what is written is true. Null where there are no strings.
 */
export function saddleProfile(crown: SaddleCrown, options: SaddleProfileOptions): Scene | null {
  const layout = layoutOf(crown, options);
  if (layout === null) return null;
  const { width, height } = layout;
  return {
    width,
    height,
    title: titleOf(crown, options),
    shapes: [...partShapes(layout), ...lettering(layout)],
  };
}

interface Layout extends SaddleProfileOptions {
  readonly crown: SaddleCrown;
  readonly frame: Frame;
  readonly height: number;
  readonly size: number;
  readonly times: number;
  /** mm along the saddle to its two ends. */
  readonly ends: Range;
  /** px of the crown's highest place, and of the bridge's top. */
  readonly top: number;
}

function layoutOf(crown: SaddleCrown, options: SaddleProfileOptions): Layout | null {
  const last = crown.crown.at(-1);
  if (last === undefined) return null;
  const width = Math.max(options.width, 200);
  const size = width < 480 ? 12 : 14;
  const ends = [-past, last[0] + past] as const;
  const along = Math.min(10, (width - 2 * beside) / (ends[1] - ends[0]));
  const heights = [...crown.crown.map(([, z]) => z), options.window[1], 0.1];
  const [most, least] = [Math.max(...heights), Math.min(0, ...heights)];
  const times = Math.max(1, Math.min(mostTimes, Math.floor(tallest / (along * most))));
  const up = along * times;
  const over = rowsOf(crown, along, heightWidth(crown, options, size)) * (size + 6);
  const left = (width - (ends[1] - ends[0]) * along) / 2 + past * along;
  const level = over + 10 + most * up;
  const under = rowsOf(crown, along, textWidth("12", size) + 4) * (size + 4) + 2 * (size + 6);
  const frame: Frame = { along, up, left, level, turned: false };
  const height = Math.ceil(level - least * up + 12 + under);
  return { ...options, width, crown, frame, height, size, times, ends, top: level - most * up };
}

const heightWidth = ({ strings }: SaddleCrown, { words }: SaddleProfileOptions, size: number) =>
  Math.max(...strings.map(([, z]) => textWidth(words.figure(z), size))) + 6;

/** Rows that lettering `wide` px takes, so that texts of one row stand clear of each other. */
function rowsOf({ strings }: SaddleCrown, along: number, wide: number): number {
  for (let rows = 1; rows < strings.length; rows++) {
    const clear = strings.every(([at], i) => {
      const next = strings[i + rows];
      return next === undefined || (next[0] - at) * along >= wide;
    });
    if (clear) return rows;
  }
  return Math.max(1, strings.length);
}

function partShapes({ crown, frame, ends, width, window, top, size }: Layout): readonly Shape[] {
  const [left, right] = ends;
  const at = ([along, z]: readonly [number, number]): Point => pointAt(frame, along, z);
  const [first, last] = [crown.crown[0]?.[1] ?? 0, crown.crown.at(-1)?.[1] ?? 0];
  const outline = [at([left, first]), ...crown.crown.map(at), at([right, last])];
  const row = rowsIn({ crown, frame }, size);
  return [
    areaShape("saddle", "none", "wood", [at([left, 0]), ...outline, at([right, 0])]),
    areaShape("window", "none", "window", rectangle(at([left, window[0]]), at([right, window[1]]))),
    lineShape("crown", "thick", [at([left, 0]), ...outline, at([right, 0])]),
    lineShape("bridge’s top", "thin", [
      [0, pyAt(frame, 0)],
      [width, pyAt(frame, 0)],
    ]),
    ...crown.strings.map(([along], i) =>
      lineShape("string", "thin", [
        [pxAt(frame, along), pyAt(frame, 0) + 5],
        [pxAt(frame, along), top - 4 - row(i) * (size + 6)],
      ]),
    ),
  ];
}

/** Which row over the drawing a string's height is written in. */
const rowsIn =
  ({ crown, frame }: Pick<Layout, "crown" | "frame">, size: number) =>
  (i: number): number =>
    i % rowsOf(crown, frame.along, textWidth("0.000", size) + 6);

function lettering(layout: Layout): readonly Shape[] {
  const { crown, frame, words, size, top, height, times, width } = layout;
  const { strings } = crown;
  const row = rowsIn(layout, size);
  const under = rowsOf(crown, frame.along, textWidth("12", size) + 4);
  const foot = pyAt(frame, 0) + 8 + capHeight(size);
  const legend = (text: string, x: number, base: number, anchor: "start" | "end") =>
    textShape("legend", text, [x, base], size, { anchor });
  return [
    ...strings.flatMap(([along, z], i) => [
      textShape(
        "string height",
        words.figure(z),
        [pxAt(frame, along), top - 6 - row(i) * (size + 6)],
        size,
      ),
      textShape(
        "string number",
        String(strings.length - i),
        [pxAt(frame, along), foot + (i % under) * (size + 4)],
        size,
      ),
    ]),
    legend("bass", 8, height - 8 - (size + 6), "start"),
    legend("treble", width - 8, height - 8 - (size + 6), "end"),
    legend(times === 1 ? "True to scale" : `Heights ×${times}`, 8, height - 8, "start"),
  ];
}

function titleOf({ strings }: SaddleCrown, { words, leftHanded }: SaddleProfileOptions): string {
  const said = strings.map(([, z], i) => `string ${strings.length - i} ${words.height(z)}`);
  return `The saddle seen from the ${leftHanded ? "neck" : "tail"}, its height over the bridge’s top at each string from the bass: ${said.join(", ")}.`;
}
