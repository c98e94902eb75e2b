import type { Point } from "./frame.ts";

/** An upright rectangle on the drawing, px, y downward. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export function boxOf(points: readonly Point[]): Box {
  let left = Number.POSITIVE_INFINITY;
  let top = Number.POSITIVE_INFINITY;
  let right = Number.NEGATIVE_INFINITY;
  let bottom = Number.NEGATIVE_INFINITY;
  for (const [x, y] of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  return { left, top, right, bottom };
}

/** Whether two boxes share ground, or a line's flat box runs through the other; edges that only touch do not count. */
export const boxesMeet = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

export const boxHolds = (outer: Box, inner: Box): boolean =>
  inner.left >= outer.left &&
  inner.right <= outer.right &&
  inner.top >= outer.top &&
  inner.bottom <= outer.bottom;

export const grown = (box: Box, by: number): Box => ({
  left: box.left - by,
  top: box.top - by,
  right: box.right + by,
  bottom: box.bottom + by,
});

/** Whether the straight line from a to b enters the box: whether some share of it lies within both the sides and the height. */
export function lineMeets(box: Box, [ax, ay]: Point, [bx, by]: Point): boolean {
  if (Math.max(ax, bx) <= box.left || Math.min(ax, bx) >= box.right) return false;
  if (Math.max(ay, by) <= box.top || Math.min(ay, by) >= box.bottom) return false;
  const dx = bx - ax;
  const dy = by - ay;
  // How far each corner lies to one side of the line: the line passes through when they do not all lie on one.
  const side = (x: number, y: number): number => dx * (y - ay) - dy * (x - ax);
  const a = side(box.left, box.top);
  const b = side(box.right, box.top);
  const c = side(box.left, box.bottom);
  const d = side(box.right, box.bottom);
  return Math.min(a, b, c, d) < 0 && Math.max(a, b, c, d) > 0;
}
