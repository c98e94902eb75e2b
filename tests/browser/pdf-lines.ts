import { inflateSync } from "node:zlib";

/** What a test needs of a page in a PDF as Chromium writes it (ISO 32000-1): its size and its straight lines, mm, y up, and its text. */
export interface PdfPage {
  readonly width: number;
  readonly height: number;
  readonly lines: readonly (readonly PdfPlace[])[];
  /** In the order drawn, without its spaces, which a PDF may leave to the gaps between letters. */
  readonly text: string;
}

type PdfPlace = readonly [x: number, y: number];

/** PDF user space has 72 units to the inch. */
const mm = 25.4 / 72;

/** The pages in their order in the file. */
export function readPdf(pdf: Buffer): readonly PdfPage[] {
  const text = pdf.toString("latin1");
  const objects = text.matchAll(/\b(\d+) 0 obj\b([\s\S]*?)\bendobj\b/g);
  const bodies = new Map([...objects].map(([, id = "", body = ""]) => [id, body]));
  return [...bodies.values()]
    .filter((body) => /\/Type\s*\/Page\b/.test(body))
    .map((body) => {
      const box = /\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]/.exec(body);
      const content = bodies.get(/\/Contents\s+(\d+) 0 R/.exec(body)?.[1] ?? "");
      if (box === null || content === undefined) throw new Error("A page without size or content");
      const [, width, height] = box;
      return {
        width: Number(width) * mm,
        height: Number(height) * mm,
        lines: linesIn(unpacked(content)),
        text: textIn(unpacked(content), fontsOf(body, bodies)),
      };
    });
}

/** Lengths of all straight pieces on a page, mm. */
export const lengthsOn = (page: PdfPage | undefined): readonly number[] =>
  (page?.lines ?? []).flatMap((line) =>
    line.slice(1).map(([x, y], i) => Math.hypot(x - (line[i]?.[0] ?? 0), y - (line[i]?.[1] ?? 0))),
  );

function unpacked(object: string): string {
  const head = /stream\r?\n/.exec(object);
  if (head === null) throw new Error("No stream");
  const packed = object.slice(head.index + head[0].length, object.lastIndexOf("endstream"));
  return inflateSync(Buffer.from(packed, "latin1")).toString("latin1");
}

type Objects = ReadonlyMap<string, string>;
/** What each glyph of a font says. */
type Font = ReadonlyMap<string, string>;

/** The fonts a page names, each by its ToUnicode map (ISO 32000-1, 9.10.3). */
function fontsOf(page: string, bodies: Objects): ReadonlyMap<string, Font> {
  const inline = /\/Font\s*<<([\s\S]*?)>>/.exec(page)?.[1];
  const shared = bodies.get(/\/Resources\s+(\d+) 0 R/.exec(page)?.[1] ?? "") ?? "";
  const named = inline ?? /\/Font\s*<<([\s\S]*?)>>/.exec(shared)?.[1] ?? "";
  return new Map(
    [...named.matchAll(/\/(\w+)\s+(\d+) 0 R/g)].map(([, name = "", id = ""]) => {
      const map = /\/ToUnicode\s+(\d+) 0 R/.exec(bodies.get(id) ?? "")?.[1] ?? "";
      const packed = bodies.get(map);
      return [name, packed === undefined ? new Map() : glyphsIn(unpacked(packed))];
    }),
  );
}

function glyphsIn(map: string): Font {
  const glyphs = new Map<string, string>();
  const hex = (number: number): string => number.toString(16).padStart(4, "0");
  for (const [, block = ""] of map.matchAll(/beginbfchar([\s\S]*?)endbfchar/g))
    for (const [, glyph = "", said = ""] of block.matchAll(/<(\w+)>\s*<(\w+)>/g))
      glyphs.set(glyph.toLowerCase(), Buffer.from(said, "hex").swap16().toString("utf16le"));
  for (const [, block = ""] of map.matchAll(/beginbfrange([\s\S]*?)endbfrange/g))
    for (const [, from = "", to = "", said = ""] of block.matchAll(
      /<(\w+)>\s*<(\w+)>\s*<(\w+)>/g,
    )) {
      const first = Number.parseInt(from, 16);
      for (let at = first; at <= Number.parseInt(to, 16); at++)
        glyphs.set(hex(at), String.fromCodePoint(Number.parseInt(said, 16) + at - first));
    }
  return glyphs;
}

function textIn(content: string, fonts: ReadonlyMap<string, Font>): string {
  let font: Font | undefined;
  let text = "";
  for (const [, name, shown] of content.matchAll(/\/(\w+)\s+[\d.]+\s+Tf|<([\da-fA-F]+)>/g)) {
    if (name !== undefined) font = fonts.get(name);
    for (const glyph of shown?.match(/.{4}/g) ?? []) text += font?.get(glyph.toLowerCase()) ?? "";
  }
  // Letters set as one sign, such as ﬂ, are read as the letters they are.
  return text.replace(/\s/g, "").normalize("NFKC");
}

type Matrix = readonly [number, number, number, number, number, number];

/** The straight lines of every path, whatever matrix they are drawn under. A curve ends one line and begins another. */
function linesIn(content: string): (readonly PdfPlace[])[] {
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  const kept: Matrix[] = [];
  const lines: PdfPlace[][] = [];
  let numbers: number[] = [];
  const placed = (): PdfPlace => {
    const [x = 0, y = 0] = numbers.slice(-2);
    const [a, b, c, d, e, f] = matrix;
    return [(a * x + c * y + e) * mm, (b * x + d * y + f) * mm];
  };
  for (const token of content.split(/\s+/)) {
    if (/^[-+.\d]+$/.test(token)) {
      numbers.push(Number(token));
      continue;
    }
    if (token === "q") kept.push(matrix);
    if (token === "Q") matrix = kept.pop() ?? matrix;
    if (token === "cm") matrix = times(numbers.slice(-6), matrix);
    if (["m", "c", "v", "y"].includes(token)) lines.push([placed()]);
    if (token === "l") lines.at(-1)?.push(placed());
    numbers = [];
  }
  return lines;
}

function times([a = 1, b = 0, c = 0, d = 1, e = 0, f = 0]: readonly number[], m: Matrix): Matrix {
  return [
    a * m[0] + b * m[2],
    a * m[1] + b * m[3],
    c * m[0] + d * m[2],
    c * m[1] + d * m[3],
    e * m[0] + f * m[2] + m[4],
    e * m[1] + f * m[3] + m[5],
  ];
}
