import type { Givens } from "../../profile/givens.ts";
import { fretPlaceX, type StringLine, stringsAcross } from "../../profile/strings.ts";
import { type Frame, type Point, pointAt, pxAt } from "../frame.ts";
import { capHeight } from "../lettering.ts";
import type { Scene, Shape } from "../scene.ts";
import { lineShape, textShape } from "../shapes.ts";

export interface StringsPlanOptions {
  /** Room for the drawing, px; it is as tall as it needs. */
  readonly width: number;
  readonly words: { readonly length: (mm: number) => string };
}

/** mm that nut, frets and saddle run past the outer strings. */
const past = { nut: 3, fret: 2, saddle: 6 };
/** px kept at either end. */
const beside = 30;

interface Layout extends StringsPlanOptions {
  readonly givens: Givens;
  readonly strings: readonly StringLine[];
  readonly outer: readonly [bass: StringLine, treble: StringLine];
  readonly frame: Frame;
  readonly height: number;
  readonly size: number;
  /** Over (1) or under (−1) the centreline the bass side is drawn. */
  readonly way: 1 | -1;
}

/**
 * Every string from above, saddle left and nut right as the rim's plan has tail and neck, with the nut, the
 * frets, the saddle and the body's neck end across them, true to scale. Null where there are no strings.
 */
export function stringsPlan(givens: Givens, options: StringsPlanOptions): Scene | null {
  const layout = layoutOf(givens, options);
  if (layout === null) return null;
  const { width, height } = layout;
  return { width, height, title: titleOf(layout), shapes: [...lines(layout), ...names(layout)] };
}

function layoutOf(givens: Givens, { width: room, words }: StringsPlanOptions): Layout | null {
  const strings = stringsAcross(givens.instrument);
  const [bass, treble] = [strings[0], strings.at(-1)];
  if (bass === undefined || treble === undefined) return null;
  const width = Math.max(room, 200);
  const size = width < 480 ? 12 : 14;
  const xs = strings.flatMap(({ nut, saddle }) => [nut[0], saddle[0]]);
  const [from, to] = [Math.min(...xs), Math.max(...xs)];
  const scale = (width - 2 * beside) / (to - from);
  const half = Math.max(...strings.map(({ saddle }) => Math.abs(saddle[1]))) + past.saddle;
  const level = size + 12 + half * scale;
  const frame: Frame = {
    along: scale,
    up: scale,
    left: beside - from * scale,
    level,
    turned: false,
  };
  const height = Math.ceil(level + half * scale + 2 * (size + 8));
  const way = givens.instrument.body.leftHanded === true ? -1 : 1;
  return { givens, words, width, strings, outer: [bass, treble], frame, height, size, way };
}

const at = ({ frame, way }: Layout, [x, y]: readonly [number, number]): Point =>
  pointAt(frame, x, way * y);

/** A line through the outer strings' places, `by` mm past both. */
function through(
  layout: Layout,
  [ax, ay]: readonly [number, number],
  [bx, by]: readonly [number, number],
  beyond: number,
): readonly Point[] {
  const long = Math.hypot(ax - bx, ay - by);
  if (long === 0) return [at(layout, [ax, ay + beyond]), at(layout, [bx, by - beyond])];
  const [dx, dy] = [((ax - bx) * beyond) / long, ((ay - by) * beyond) / long];
  return [at(layout, [ax + dx, ay + dy]), at(layout, [bx - dx, by - dy])];
}

/** Where a string crosses x. */
function placeOn({ nut, saddle }: StringLine, x: number): readonly [number, number] {
  const part = (x - saddle[0]) / (nut[0] - saddle[0]);
  return [x, saddle[1] + (nut[1] - saddle[1]) * part];
}

function lines(layout: Layout): readonly Shape[] {
  const { givens, strings, outer } = layout;
  const [bass, treble] = outer;
  const { instrument, outline } = givens;
  const share = ({ saddle: [, y] }: StringLine): number =>
    0.5 - y / (instrument.strings.spreadSaddle || 1);
  const fret = (n: number) => {
    const places = outer.map((string) => placeOn(string, fretPlaceX(instrument, n, share(string))));
    const [over = [0, 0], under = [0, 0]] = places;
    return through(layout, over, under, past.fret);
  };
  return [
    lineShape(
      "neck end",
      "dashed",
      through(layout, ...neckEnd(outer, outline.length), past.saddle),
    ),
    ...Array.from({ length: instrument.neck.lastFret }, (_, i) =>
      lineShape("fret", "thin", fret(i + 1)),
    ),
    ...strings.map(({ nut, saddle }) =>
      lineShape("string", "thin", [at(layout, saddle), at(layout, nut)]),
    ),
    lineShape("nut", "thick", through(layout, bass.nut, treble.nut, past.nut)),
    lineShape("saddle", "thick", through(layout, bass.saddle, treble.saddle, past.saddle)),
  ];
}

const neckEnd = ([bass, treble]: Layout["outer"], x: number) =>
  [placeOn(bass, x), placeOn(treble, x)] as const;

function names(layout: Layout): readonly Shape[] {
  const { frame, givens, outer, size, height, words } = layout;
  const over = capHeight(size) + 4;
  const name = (text: string, x: number) => textShape("name", text, [pxAt(frame, x), over], size);
  const middle = (part: "nut" | "saddle"): number => (outer[0][part][0] + outer[1][part][0]) / 2;
  return [
    name("saddle", middle("saddle")),
    name("neck end", givens.outline.length),
    name("nut", middle("nut")),
    textShape("lengths", lengthsSaid(outer, words.length), [8, height - 8], size, {
      anchor: "start",
    }),
  ];
}

const lengthOf = ({ nut, saddle }: StringLine): number =>
  Math.hypot(nut[0] - saddle[0], nut[1] - saddle[1]);

function lengthsSaid([bass, treble]: Layout["outer"], say: (mm: number) => string): string {
  const [long, short] = [say(lengthOf(bass)), say(lengthOf(treble))];
  return long === short ? `Nut to saddle ${long}` : `Nut to saddle: bass ${long}, treble ${short}`;
}

function titleOf({ givens, outer, words, strings }: Layout): string {
  const { fan, fanFret } = givens.instrument.neck;
  const { slant } = givens.instrument.bridge;
  const fanned =
    fan === 0 ? "" : ` Frets fanned by ${words.length(Math.abs(fan))}, fret ${fanFret} square.`;
  const slanted = slant === 0 ? "" : ` Saddle slanted by ${words.length(Math.abs(slant))}.`;
  return `${strings.length} strings from saddle to nut. ${lengthsSaid(outer, words.length)}.${fanned}${slanted}`;
}
