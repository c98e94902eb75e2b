import type { Place } from "../../geometry/polyline.ts";
import type { Template } from "./template.ts";
import { type TemplateBox, templateBox } from "./template.ts";

/** A template laid out over pages. All in the template's own frame, mm. */
export interface Tiling {
  readonly columns: number;
  readonly rows: number;
  /** Row by row from the top left, as one lays pages out on a bench. */
  readonly tiles: readonly Tile[];
}

export interface Tile extends TemplateBox {
  readonly column: number;
  /** 0 is the top row. */
  readonly row: number;
  /** Centres of the crosses to lay on those of the neighbours. */
  readonly crosses: readonly Place[];
}

/** How far a page goes on over its neighbour, mm: crosses lie along the middle of it. */
export const overlap = 16;

/** From a cross's centre to its ends, mm. */
export const crossArm = 7;

/** Clear of the drawing all round, mm: no line is lost at the edge of a page. */
const margin = 4;

/**
 * The fewest pages of `width` by `height` mm that hold the template, the template in their middle.
 * Neighbours share a strip `overlap` mm wide, and two crosses in it.
 */
export function tilingOf(template: Template, width: number, height: number): Tiling {
  const box = templateBox(template, margin);
  const columns = countAlong(box.right - box.left, width);
  const rows = countAlong(box.top - box.bottom, height);
  const left = (box.left + box.right - spanOf(columns, width)) / 2;
  const top = (box.bottom + box.top + spanOf(rows, height)) / 2;
  const tiles = Array.from({ length: columns * rows }, (_, i): Tile => {
    const [column, row] = [i % columns, Math.floor(i / columns)];
    const [x, y] = [left + column * (width - overlap), top - row * (height - overlap)];
    const edges = { left: x, right: x + width, top: y, bottom: y - height };
    return { column, row, ...edges, crosses: crossesOf(edges) };
  });
  return { columns, rows, tiles };
}

const countAlong = (length: number, page: number): number =>
  Math.max(1, Math.ceil((length - overlap) / (page - overlap)));

const spanOf = (count: number, page: number): number => count * (page - overlap) + overlap;

function crossesOf({ left, right, bottom, top }: TemplateBox): readonly Place[] {
  const half = overlap / 2;
  return [left + half, right - half].flatMap((x) =>
    [bottom + half, top - half].map((y): Place => [x, y]),
  );
}
