import type { Half } from "../../profile/halves.ts";
import type { Station } from "../../profile/outcome.ts";
import { comesOffAt } from "../../profile/side.ts";
import type { Point } from "../frame.ts";
import type { GroupShape, Shape } from "../scene.ts";
import { bandShape, group, lineShape } from "../shapes.ts";
import type { DrawnHalf, EdgeSide, PlanLayout } from "./rim-plan-layout.ts";

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

/** A place of a half as its outline counts them. */
export function edgePlaceAt(
  { givens, profile }: PlanLayout,
  { outline, sign }: Half,
  u: number,
): EdgePlace {
  const [x, halfWidth] = outline.placeAt(u);
  const [outX, outY] = u <= outline.foldX ? outBySlope(outline.slope(u)) : outPastFold(outline, u);
  return { x, halfWidth, outX, outY, off: comesOffAt(givens, profile, x, sign * halfWidth) };
}

function outBySlope(slope: number): Point {
  const steep = Number.isFinite(slope) ? Math.hypot(1, slope) : 0;
  return steep === 0 ? [-Math.sign(slope), 0] : [-slope / steep, 1 / steep];
}

/** mm to either side of a place of a cutaway's edge, between which its direction is taken. */
const beside = 0.05;

function outPastFold(outline: Half["outline"], u: number): Point {
  const [from, to] = [u - beside, Math.min(u + beside, outline.end)].map((at) =>
    outline.placeAt(at),
  ) as [Point, Point];
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const far = Math.hypot(dx, dy);
  return [-dy / far, dx / far];
}

/** A station's place as the half's outline counts them. */
export function placeOf({ outline }: Half, { x, arcLength }: Pick<Station, "x" | "arcLength">) {
  const { foldX } = outline;
  const past = x < foldX ? 0 : arcLength - outline.arcLength(foldX);
  return past > 0 ? foldX + past : x;
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

interface Zone {
  readonly name: "dome" | "flat";
  readonly places: readonly EdgePlace[];
}

/** A half's edge as drawn, by zones. */
export interface DrawnEdge {
  readonly way: EdgeSide;
  readonly zones: readonly [Zone, Zone];
}

export const edgesOf = (layout: PlanLayout): readonly DrawnEdge[] =>
  layout.drawn.map((drawn) => ({ way: drawn.way, zones: zonesOf(layout, drawn) }));

/** The edge from the tail to the break, and from there to the neck end's corner and its middle; all domed where a seat is sanded on the top. */
function zonesOf(layout: PlanLayout, { half }: DrawnHalf): readonly [Zone, Zone] {
  const { givens, frame, profile } = layout;
  const { outline, sign } = half;
  const { length, end } = outline;
  const domedTo = Math.min(givens.breakX, end);
  const between = (from: number, to: number): EdgePlace[] => {
    const [start, stop] = [outline.arcLength(from), outline.arcLength(to)];
    const steps = Math.max(2, Math.ceil(((stop - start) * frame.along) / step));
    return Array.from({ length: steps + 1 }, (_, i) => {
      const arcLength = start + ((stop - start) * i) / steps;
      const [x] = outline.placeAtArc(arcLength);
      const u = i === 0 ? from : i === steps ? to : placeOf(half, { x, arcLength });
      return edgePlaceAt(layout, half, u);
    });
  };
  const corner = outline.halfWidth(length);
  const off = comesOffAt(givens, profile, length, sign * corner);
  const straight = { x: length, outX: 1, outY: 0, off };
  return [
    { name: "dome", places: between(0, domedTo) },
    {
      name: givens.seat === null ? "flat" : "dome",
      places: [
        ...between(domedTo, end),
        { ...straight, halfWidth: corner },
        { ...straight, halfWidth: 0 },
      ],
    },
  ];
}

/** The rim's edge, the colour of each zone inside it, and what comes off drawn out from it. */
export function edgeShapes(layout: PlanLayout, edges: readonly DrawnEdge[]): GroupShape {
  return group("rim", [
    ...edges.flatMap(({ way, zones }) => zones.flatMap((zone) => zoneShapes(layout, zone, way))),
    ...edges.map((edge) => lineShape("outline", "thick", outlinePoints(layout, edge, 0))),
  ]);
}

/** The whole edge of a half, or the line `share` of the way out to what comes off. */
export const outlinePoints = (
  layout: PlanLayout,
  { way, zones }: DrawnEdge,
  share: 0 | 1,
): Point[] =>
  zones.flatMap(({ places }) =>
    places.map((place) => pointOut(layout, place, way, share * bandAt(layout, place))),
  );

function zoneShapes(layout: PlanLayout, { name, places }: Zone, side: EdgeSide): readonly Shape[] {
  const edge = places.map((place) => pointOut(layout, place, side, 0));
  const shifted = (out: (place: EdgePlace) => number) => (point: Point, i: number) => {
    const place = places[i];
    return place === undefined ? point : pointOut(layout, place, side, out(place));
  };
  return [
    bandShape(
      `${name} colour`,
      "none",
      name,
      edge,
      shifted(() => -wash),
    ),
    bandShape(
      `comes off the ${name}`,
      "thin",
      "wood",
      edge,
      shifted((place) => bandAt(layout, place)),
    ),
  ];
}
