import { inflateSync } from "node:zlib";

/** What a test needs of a page in a PDF as Chromium writes it (ISO 32000-1): its size and its straight lines, mm, y up. */
export interface PdfPage {
  readonly width: number;
  readonly height: number;
  readonly lines: readonly (readonly PdfPlace[])[];
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
