import type { Template, TemplateLabel } from "./template.ts";

/** What a template covers, mm, in its own frame. */
export interface TemplateBox {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** Widest letters of a plain face, as a share of their height. */
const letter = 0.7;

/** Everything the template draws and writes, with `margin` mm round it. */
export function templateBox({ lines, labels }: Template, margin = 0): TemplateBox {
  const places = [...lines.flatMap((line) => line.places), ...labels.flatMap(labelPlaces)];
  const box = { left: Infinity, right: -Infinity, bottom: Infinity, top: -Infinity };
  for (const [x, y] of places) {
    box.left = Math.min(box.left, x - margin);
    box.right = Math.max(box.right, x + margin);
    box.bottom = Math.min(box.bottom, y - margin);
    box.top = Math.max(box.top, y + margin);
  }
  return box;
}

function labelPlaces({ x, y, size, anchor, upright, text }: TemplateLabel) {
  const long = text.length * size * letter;
  const from = { start: 0, middle: -long / 2, end: -long }[anchor];
  return upright
    ? ([
        [x - size, y + from],
        [x, y + from + long],
      ] as const)
    : ([
        [x + from, y],
        [x + from + long, y + size],
      ] as const);
}
