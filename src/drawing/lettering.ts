import type { Box } from "./box.ts";
import type { TextShape } from "./scene.ts";

/**
 * Advances in ems, never less than the widest of the usual screen faces has (measured on DejaVu
 * Sans), since a drawing is laid out before any browser has seen its type.
 */
const advances = new Map<string, number>(
  (
    [
      [0.34, "ijlI|.,:;'′⁄ "],
      [0.42, "f-()[]t!r/"],
      [0.56, 'szcLJ°–"″'],
      [0.65, "0123456789abdeghknopquvxyFT"],
      [0.74, "ABCEKPRSUVXYZ"],
      [0.85, "DGHNOQw×−±=+<>"],
    ] as const
  ).flatMap(([em, characters]) => [...characters].map((character) => [character, em] as const)),
);
/** Any other character, and m, M and W. */
const widest = 1.02;
/** Bold over regular, at most. */
const bold = 1.2;

/** Widest the text can come out at that size, same unit as `size`. */
export function textWidth(text: string, size: number, strong = false): number {
  let ems = 0;
  for (const character of text) ems += advances.get(character) ?? widest;
  return ems * size * (strong ? bold : 1);
}

/** Height of a capital, and how far letters reach under the line, over the size. */
const cap = 0.76;
const descent = 0.24;

/** Height of the lettering as a drawing office counts it: a capital's. */
export const capHeight = (size: number): number => cap * size;

/** All the room a text can take. */
export function textBox({ x, y, anchor, size, strong, text }: TextShape): Box {
  const width = textWidth(text, size, strong);
  const left = anchor === "start" ? x : anchor === "end" ? x - width : x - width / 2;
  return { left, top: y - cap * size, right: left + width, bottom: y + descent * size };
}
