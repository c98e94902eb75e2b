import svgpath from "svgpath";
import { lengthOf, type Place, polylineAlong } from "../geometry/polyline.ts";
import { count, type Phrase, phrase } from "./phrase.ts";
import { farthestPlace, mostPlaces } from "./tracing.ts";

/** A tag of a drawing's text as it comes, in order; the end of an element has `closes`. */
interface SvgTag {
  readonly name: string;
  readonly closes: boolean;
  /** Has no content of its own: `<path/>`. */
  readonly alone: boolean;
  readonly attributes: ReadonlyMap<string, string>;
}

const tag = /<(\/?)([A-Za-z][\w:.-]*)((?:\s+[\w:.-]+\s*=\s*(?:"[^"]*"|'[^']*'))*)\s*(\/?)>/y;
const attribute = /([\w:.-]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g;

/**
 * The tags of an XML text, without making a document of it: a stranger's drawing is only ever read, and
 * neither its scripts nor its styles come before the browser.
 */
function* svgTags(text: string): Generator<{ readonly tag: SvgTag; readonly end: number }> {
  let from = text.indexOf("<");
  while (from >= 0) {
    const end = endOfSkipped(text, from);
    if (end !== null) {
      from = text.indexOf("<", end);
      continue;
    }
    tag.lastIndex = from;
    const found = tag.exec(text);
    const [whole = "", slash, name = "", inner = "", alone] = found ?? [];
    if (found !== null) {
      const attributes = new Map(
        [...inner.matchAll(attribute)].map(([, key = "", a, b]) => [key, a ?? b ?? ""]),
      );
      yield {
        tag: {
          name: name.replace(/^svg:/, ""),
          closes: slash === "/",
          alone: alone === "/",
          attributes,
        },
        end: from + whole.length,
      };
    }
    from = text.indexOf("<", from + Math.max(1, whole.length));
  }
}

const skippedParts = [
  ["<!--", "-->"],
  ["<![CDATA[", "]]>"],
] as const;

/** Where a remark or raw text that starts here ends; null when none does. */
function endOfSkipped(text: string, from: number): number | null {
  const skipped = skippedParts.find(([start]) => text.startsWith(start, from));
  if (skipped === undefined) return null;
  const end = text.indexOf(skipped[1], from);
  return end < 0 ? text.length : end;
}

export type ReadSvgResult =
  | {
      readonly ok: true;
      readonly places: readonly Place[];
      /** mm in one of its units, where the file says; null where it does not. */
      readonly unit: number | null;
      /** How many lines it holds; the longest was taken. */
      readonly lines: number;
    }
  | { readonly ok: false; readonly why: Phrase };

/** How far straight pieces may stray from a curve, over the curve's own size. */
const fine = 5e-5;

/** Groups in one another, pieces of lines in all, and characters of one path and of one transform, beyond which nothing is an outline. */
const limits = { deep: 100, pieces: 100_000, path: 1_000_000, transform: 1000 } as const;

/** The longest line of an SVG file, or of bare path data, in its own units. */
export function readTracingSvg(text: string): ReadSvgResult {
  const reading = readingTracingSvg(text);
  for (let step = reading.next(); ; step = reading.next()) if (step.done) return step.value;
}

/** The same, path by path: yields how much of the text has been read, 0 to 1, so that it can be left off. */
export function* readingTracingSvg(text: string): Generator<number, ReadSvgResult> {
  const bare = !text.trimStart().startsWith("<");
  const file = new SvgFile();
  if (bare) file.add(text.trim(), plain);
  else yield* readTags(text, file);
  if (file.fault !== null) return { ok: false, why: file.fault };
  const { longest } = file;
  if (longest === null)
    return {
      ok: false,
      why: file.tooFar
        ? phrase`The lines of this drawing lie too far off to be an outline.`
        : phrase`There is no line in this drawing.`,
    };
  const places = placesOf(longest);
  return places.length > mostPlaces
    ? { ok: false, why: phrase`The longest line here has more than ${count(mostPlaces)} places.` }
    : { ok: true, places, unit: file.unit, lines: file.lines };
}

/** One piece of a line: straight with two places, a cubic with four. */
type Piece = readonly [Place, Place] | readonly [Place, Place, Place, Place];

/** x' = ax + cy + e, y' = bx + dy + f, in that order of letters, as SVG writes a matrix. */
type Affine = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

const plain: Affine = [1, 0, 0, 1, 0, 0];

/** The lines met so far, of which only the longest is kept. */
class SvgFile {
  unit: number | null = null;
  lines = 0;
  longest: readonly Piece[] | null = null;
  tooFar = false;
  fault: Phrase | null = null;
  #length = 0;
  #pieces = 0;

  add(data: string, affine: Affine): void {
    if (data.length > limits.path) {
      this.fault = phrase`A line of this drawing is too long to be an outline.`;
      return;
    }
    for (const line of linesOf(svgpath(data).matrix([...affine]))) {
      this.#pieces += line.length;
      if (this.#pieces > limits.pieces) {
        this.fault = phrase`This drawing holds more than ${count(limits.pieces)} lines and curves. Save the outline alone.`;
        return;
      }
      if (line.every((piece) => piece.length === 2) && line.length < 2) continue;
      if (!line.every((piece) => piece.every(isNear))) {
        this.tooFar = true;
        continue;
      }
      this.lines += 1;
      const length = line.reduce((sum, piece) => sum + nearLength(piece), 0);
      if (length > this.#length) [this.#length, this.longest] = [length, line];
    }
  }
}

const isNear = (place: Place): boolean => place.every((value) => Math.abs(value) <= farthestPlace);

/** A curve's length lies between its chord's and its control places': their mean is near enough to choose by. */
const nearLength = (piece: Piece): number =>
  (lengthOf(piece) + lengthOf([piece[0], piece[piece.length - 1] ?? piece[0]])) / 2;

/** Places along a line, given up with the piece that makes them more than an outline may have. */
function placesOf(line: readonly Piece[]): readonly Place[] {
  const places: Place[] = line.slice(0, 1).map(([start]) => start);
  for (const piece of line) {
    places.push(...(piece.length === 2 ? [piece[1]] : flattened(piece)));
    if (places.length > mostPlaces) break;
  }
  return places;
}

/** What is only kept to be used elsewhere is not drawn where it stands. */
const unseen = new Set(["defs", "symbol", "clipPath", "mask", "pattern", "marker"]);

/** An element that is open, with all transforms round it and its own as one. */
interface OpenTag {
  readonly name: string;
  readonly affine: Affine;
  readonly seen: boolean;
}

function* readTags(text: string, file: SvgFile): Generator<number, void> {
  const over: OpenTag[] = [];
  let known = false;
  for (const { tag, end } of svgTags(text)) {
    if (tag.closes) {
      const opened = over.findLastIndex(({ name }) => name === tag.name);
      if (opened >= 0) over.length = opened;
      continue;
    }
    if (tag.name === "svg" && !known) [known, file.unit] = [true, unitOf(tag)];
    const opened = openedTag(tag, over.at(-1));
    const data = dataOf(tag);
    if (data !== "" && opened.seen) {
      file.add(data, opened.affine);
      yield end / text.length;
    }
    if (!tag.alone) over.push(opened);
    if (over.length > limits.deep)
      file.fault = phrase`This drawing has more than ${count(limits.deep)} groups in one another.`;
    if (file.fault !== null) return;
  }
  if (!known) file.fault = phrase`This is not an SVG drawing that can be read.`;
}

function openedTag({ name, attributes }: SvgTag, round: OpenTag | undefined): OpenTag {
  const own = affineOf(attributes.get("transform") ?? "");
  const { affine, seen } = round ?? { affine: plain, seen: true };
  return { name, affine: within(affine, own), seen: seen && !unseen.has(name) };
}

/** Read off where a transform puts three places; what cannot be read moves nothing. */
function affineOf(transform: string): Affine {
  if (transform === "" || transform.length > limits.transform) return plain;
  const at: number[] = [];
  const probe = svgpath("M0 0M1 0M0 1").transform(transform);
  probe.iterate((segment) => {
    if (segment[0] === "M") at.push(segment[1], segment[2]);
  });
  const [e = 0, f = 0, ax = 1, bx = 0, cx = 0, dx = 1] = at;
  return [ax - e, bx - f, cx - e, dx - f, e, f];
}

/** `inner` first, then `outer`. */
function within([a, b, c, d, e, f]: Affine, inner: Affine): Affine {
  const [ia, ib, ic, id, ie, jf] = inner;
  return [
    a * ia + c * ib,
    b * ia + d * ib,
    a * ic + c * id,
    b * ic + d * id,
    a * ie + c * jf + e,
    b * ie + d * jf + f,
  ];
}

function dataOf({ name, attributes }: SvgTag): string {
  if (name === "path") return attributes.get("d") ?? "";
  const points = attributes.get("points")?.trim() ?? "";
  if (points === "") return "";
  if (name === "polygon") return `M${points}Z`;
  return name === "polyline" ? `M${points}` : "";
}

function linesOf(path: ReturnType<typeof svgpath>): readonly Piece[][] {
  const lines: Piece[][] = [];
  let line: Piece[] = [];
  let start: Place = [0, 0];
  const begin = (at: Place): void => {
    [start, line] = [at, []];
    lines.push(line);
  };
  path
    .abs()
    .unarc()
    .unshort()
    .iterate((segment, _, x, y) => {
      const here: Place = [x, y];
      switch (segment[0]) {
        case "M":
          begin([segment[1], segment[2]]);
          break;
        case "L":
          line.push([here, [segment[1], segment[2]]]);
          break;
        case "H":
          line.push([here, [segment[1], y]]);
          break;
        case "V":
          line.push([here, [x, segment[1]]]);
          break;
        case "C": {
          const [, bx, by, cx, cy, dx, dy] = segment;
          line.push([here, [bx, by], [cx, cy], [dx, dy]]);
          break;
        }
        case "Q": {
          const [, bx, by, dx, dy] = segment;
          const third = (end: number, control: number): number => end + ((control - end) * 2) / 3;
          const b: Place = [third(x, bx), third(y, by)];
          line.push([here, b, [third(dx, bx), third(dy, by)], [dx, dy]]);
          break;
        }
        default:
          line.push([here, start]);
          begin(start);
      }
    });
  return lines;
}

function flattened(curve: readonly [Place, Place, Place, Place]): Place[] {
  const [a, b, c, d] = curve;
  const size = lengthOf(curve);
  if (size === 0) return [d];
  const mix = (axis: 0 | 1, t: number): number => {
    const s = 1 - t;
    return (
      s * s * s * a[axis] + 3 * s * s * t * b[axis] + 3 * s * t * t * c[axis] + t * t * t * d[axis]
    );
  };
  return polylineAlong((t) => [mix(0, t), mix(1, t)], 0, 1, size * fine).slice(1);
}

const millimetres: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  in: 25.4,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
};

/** mm of one user unit, from a width in real units over the view box. */
function unitOf({ attributes }: SvgTag): number | null {
  const [, size, sign] = /^\s*([\d.]+)\s*([a-z]+)\s*$/.exec(attributes.get("width") ?? "") ?? [];
  const box =
    attributes
      .get("viewBox")
      ?.trim()
      .split(/[\s,]+/)
      .map(Number) ?? [];
  const [unit, wide] = [millimetres[sign ?? ""], box[2] ?? 0];
  return unit === undefined || !(wide > 0) ? null : (Number(size) * unit) / wide;
}
