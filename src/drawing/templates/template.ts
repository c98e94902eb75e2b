import type { Place } from "../../geometry/polyline.ts";

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

/**
 * A full-size shape for paper or a cutter. Millimetres, x to the right and y up, nothing rounded; it
 * may lie anywhere, on both sides of zero.
 */
export interface Template {
  readonly name: string;
  readonly lines: readonly TemplateLine[];
  readonly labels: readonly TemplateLabel[];
}

/** `cut` is an edge to be cut or sanded to, `mark` a line to be drawn on the work. */
export type TemplateLayer = "cut" | "mark";

export interface TemplateLine {
  /** Names what is drawn ("back edge"), stable. */
  readonly role: string;
  readonly layer: TemplateLayer;
  /** A closed line ends at its first place again without repeating it. */
  readonly closed: boolean;
  readonly places: readonly Place[];
}

export interface TemplateLabel {
  readonly x: number;
  readonly y: number;
  /** Height of the lettering. */
  readonly size: number;
  readonly anchor: "start" | "middle" | "end";
  /** Turned a quarter to the left, to read upward. */
  readonly upright: boolean;
  readonly text: string;
}

/** How far the straight pieces of a line may stray from the true curve, mm: a quarter of the 0.02 allowed a file, the rest being left to its rounding. */
export const strayLimit = 0.005;

export const cutShape = (role: string, places: readonly Place[]): TemplateLine => ({
  role,
  layer: "cut",
  closed: true,
  places,
});

export const markLine = (role: string, places: readonly Place[]): TemplateLine => ({
  role,
  layer: "mark",
  closed: false,
  places,
});

const lettering = 4;

export const label = (
  [x, y]: Place,
  text: string,
  look: Partial<Pick<TemplateLabel, "anchor" | "upright" | "size">> = {},
): TemplateLabel => ({
  ...{ x, y, text, size: lettering, anchor: "middle", upright: false },
  ...look,
});
