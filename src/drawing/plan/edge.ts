import { comesOffAt } from "../../profile/side.ts";
import type { Point } from "../frame.ts";
import type { GroupShape, Shape } from "../scene.ts";
import { bandShape, group, lineShape } from "../shapes.ts";
import type { PlanLayout } from "./rim-plan-layout.ts";

/** Over (1) or under (−1) the centreline on the drawing. */
export type EdgeSide = 1 | -1;

/** A place on the rim's edge, with the way straight out from it. */
export interface EdgePlace {
  readonly x: number;
  readonly halfWidth: number;
  readonly outX: number;
  readonly outY: number;
  /** What comes off the level rim, mm. */
  readonly off: number;
}

/** px between places of the edge as drawn, and of zone colour inside it. */
const step = 4;
const wash = 5;

export function edgePlaceAt({ givens, profile }: PlanLayout, x: number): EdgePlace {
  const slope = givens.outline.slope(x);
  const steep = Number.isFinite(slope) ? Math.hypot(1, slope) : 0;
  return {
    x,
    halfWidth: givens.outline.halfWidth(x),
    outX: steep === 0 ? -Math.sign(slope) : -slope / steep,
    outY: steep === 0 ? 0 : 1 / steep,
    off: comesOffAt(givens, profile, x, givens.outline.halfWidth(x)),
  };
}

/** `out` px beyond a place of the edge. */
export function pointOut(
  { frame }: PlanLayout,
  place: EdgePlace,
  side: EdgeSide,
  out: number,
): Point {
  return [
    frame.left + place.x * frame.along + place.outX * out,
    frame.level - side * (place.halfWidth * frame.along + place.outY * out),
  ];
}

/** px from the edge to where what comes off is drawn to. */
export const bandAt = ({ frame, times }: PlanLayout, { off }: EdgePlace): number =>
  Math.max(0, off) * times * frame.along;

export interface Zone {
  readonly name: "dome" | "flat";
  readonly places: readonly EdgePlace[];
}

/** The edge from the tail to the break, and from there to the neck end's corner and its middle; all domed where a seat is sanded on the top. */
export function zonesOf(layout: PlanLayout): readonly [Zone, Zone] {
  const { givens, frame } = layout;
  const { outline, breakX } = givens;
  const total = outline.totalArc();
  const breakArc = outline.arcLength(breakX);
  const between = (from: number, to: number, ends: readonly [number, number]): EdgePlace[] => {
    const steps = Math.max(2, Math.ceil(((to - from) * frame.along) / step));
    return Array.from({ length: steps + 1 }, (_, i) => {
      const x =
        i === 0
          ? ends[0]
          : i === steps
            ? ends[1]
            : outline.placeAtArc(from + ((to - from) * i) / steps)[0];
      return edgePlaceAt(layout, x);
    });
  };
  const flat = between(breakArc, total, [breakX, outline.length]);
  const off = comesOffAt(givens, layout.profile, outline.length, outline.halfWidth(outline.length));
  const end = { x: outline.length, outX: 1, outY: 0, off };
  return [
    { name: "dome", places: between(0, breakArc, [0, breakX]) },
    {
      name: givens.seat === null ? "flat" : "dome",
      places: [
        ...flat,
        { ...end, halfWidth: outline.halfWidth(outline.length) },
        { ...end, halfWidth: 0 },
      ],
    },
  ];
}

/** The rim's edge, the colour of each zone inside it, and what comes off drawn out from it. */
export function edgeShapes(layout: PlanLayout, zones: readonly Zone[]): GroupShape {
  const edgeSides: readonly EdgeSide[] = [1, -1];
  return group("rim", [
    ...edgeSides.flatMap((side) => zones.flatMap((zone) => zoneShapes(layout, zone, side))),
    ...edgeSides.map((side) =>
      lineShape("outline", "thick", outlinePoints(layout, zones, side, 0)),
    ),
  ]);
}

/** The whole edge, or the line `share` of the way out to what comes off. */
export const outlinePoints = (
  layout: PlanLayout,
  zones: readonly Zone[],
  side: EdgeSide,
  share: 0 | 1,
): Point[] =>
  zones.flatMap(({ places }) =>
    places.map((place) => pointOut(layout, place, side, share * bandAt(layout, place))),
  );

function zoneShapes(layout: PlanLayout, { name, places }: Zone, side: EdgeSide): readonly Shape[] {
  const edge = places.map((place) => pointOut(layout, place, side, 0));
  const beside = (out: (place: EdgePlace) => number) => (point: Point, i: number) => {
    const place = places[i];
    return place === undefined ? point : pointOut(layout, place, side, out(place));
  };
  return [
    bandShape(
      `${name} colour`,
      "none",
      name,
      edge,
      beside(() => -wash),
    ),
    bandShape(
      `comes off the ${name}`,
      "thin",
      "wood",
      edge,
      beside((place) => bandAt(layout, place)),
    ),
  ];
}
