import svgpath from "svgpath";
import { lengthOf, type Place, polylineAlong } from "../../geometry/polyline.ts";
import { type Phrase, phrase } from "../../instrument/phrase.ts";

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
function* svgTags(text: string): Generator<SvgTag> {
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
      yield {
        name: name.replace(/^svg:/, ""),
        closes: slash === "/",
        alone: alone === "/",
        attributes: new Map(
          [...inner.matchAll(attribute)].map(([, key = "", a, b]) => [key, a ?? b ?? ""]),
        ),
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

/** The longest line of an SVG file, or of bare path data, in its own units. */
export function readTracingSvg(text: string): ReadSvgResult {
  const bare = !text.trimStart().startsWith("<");
  const file = bare ? { paths: [svgpath(text.trim())], unit: null } : readFile(text);
  if (file === null)
    return { ok: false, why: phrase`This is not an SVG drawing that can be read.` };
  const lines = file.paths.flatMap(linesOf).filter((line) => line.length > 2);
  const longest = lines.reduce<readonly Place[]>(
    (best, line) => (lengthOf(line) > lengthOf(best) ? line : best),
    [],
  );
  if (longest.length === 0) return { ok: false, why: phrase`There is no line in this drawing.` };
  return { ok: true, places: longest, unit: file.unit, lines: lines.length };
}

type SvgPath = ReturnType<typeof svgpath>;

interface SvgFile {
  readonly paths: readonly SvgPath[];
  readonly unit: number | null;
}

/** What is only kept to be used elsewhere is not drawn where it stands. */
const unseen = new Set(["defs", "symbol", "clipPath", "mask", "pattern", "marker"]);

/** Its lines with every transform over them; null when it is no SVG. */
function readFile(text: string): SvgFile | null {
  const over: SvgTag[] = [];
  const paths: SvgPath[] = [];
  let root: SvgTag | null = null;
  for (const tag of svgTags(text)) {
    if (tag.closes) {
      const opened = over.findLastIndex(({ name }) => name === tag.name);
      if (opened >= 0) over.length = opened;
      continue;
    }
    if (tag.name === "svg") root ??= tag;
    const data = dataOf(tag);
    if (data !== "" && !over.some(({ name }) => unseen.has(name))) {
      paths.push(transformedPath([...over, tag], data));
    }
    if (!tag.alone) over.push(tag);
  }
  return root === null ? null : { paths, unit: unitOf(root) };
}

/** A path under the transforms of its own element and of those round it, innermost first. */
const transformedPath = (tags: readonly SvgTag[], data: string): SvgPath =>
  tags.reduceRight((path, { attributes }) => {
    const transform = attributes.get("transform");
    return transform === undefined ? path : path.transform(transform);
  }, svgpath(data));

function dataOf({ name, attributes }: SvgTag): string {
  if (name === "path") return attributes.get("d") ?? "";
  const points = attributes.get("points")?.trim() ?? "";
  if (points === "") return "";
  if (name === "polygon") return `M${points}Z`;
  return name === "polyline" ? `M${points}` : "";
}

function linesOf(path: SvgPath): Place[][] {
  const plain = path.abs().unarc().unshort();
  const lines: Place[][] = [];
  let line: Place[] = [];
  plain.iterate((segment, _, x, y) => {
    const here: Place = [x, y];
    switch (segment[0]) {
      case "M":
        line = [[segment[1], segment[2]]];
        lines.push(line);
        break;
      case "L":
        line.push([segment[1], segment[2]]);
        break;
      case "H":
        line.push([segment[1], y]);
        break;
      case "V":
        line.push([x, segment[1]]);
        break;
      case "C": {
        const [, bx, by, cx, cy, dx, dy] = segment;
        line.push(...flattened([here, [bx, by], [cx, cy], [dx, dy]]));
        break;
      }
      case "Q": {
        const [, bx, by, dx, dy] = segment;
        const third = (end: number, control: number): number => end + ((control - end) * 2) / 3;
        const b: Place = [third(x, bx), third(y, by)];
        line.push(...flattened([here, b, [third(dx, bx), third(dy, by)], [dx, dy]]));
        break;
      }
      default:
        if (line[0] !== undefined) line.push(line[0]);
    }
  });
  return lines.map((places) => places.filter((place) => place.every(Number.isFinite)));
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
