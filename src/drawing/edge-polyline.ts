import type { Outline } from "../geometry/outline/outline.ts";
import { type Place, polylineAlong } from "../geometry/polyline.ts";

/** The rim's edge from the tail seam to the neck end's corner, mm from the tail and from the centreline: straight pieces within `stray` mm of it. */
export function edgePolyline(outline: Outline, stray: number): Place[] {
  const corners = outline.knots.map((u) => outline.arcLength(u));
  const places = polylineAlong(
    (arc) => outline.placeAtArc(arc),
    0,
    outline.totalArc(),
    stray,
    corners,
  );
  // Both ends as stated, free of the rounding of a length and back.
  return [
    [0, outline.halfWidth(0)],
    ...places.slice(1, -1),
    [outline.length, outline.halfWidth(outline.length)],
  ];
}
