import { type Givens, isDomed } from "../../profile/givens.ts";
import { fretPlaneZ } from "../../profile/neck.ts";
import type { Profile } from "../../profile/outcome.ts";
import { flatFromX, topZ as uncutTopZ } from "../../profile/top.ts";
import { type Frame, type Point, pointAt } from "../frame.ts";
import { curvePoints } from "../path.ts";
import type { LineStyle, Shape } from "../scene.ts";
import { datumZ, edgeZ, stringZ, topZ } from "../section/section-layout.ts";
import { areaShape, lineShape, rectangle } from "../shapes.ts";

/* What the still pictures are put together from, each piece on the frame it is given. */

export interface Still {
  readonly givens: Givens;
  readonly profile: Profile;
  readonly frame: Frame;
  /** The heights that the picture has room for, mm over the flat's plane. */
  readonly lowest: number;
  readonly highest: number;
}

/** mm along: half the bridge, the saddle and the spacer as drawn, the least a shim's width is drawn, and how far a board or bar runs past the body. */
const half = { bridge: 14, saddle: 2.5, spacer: 8 };
const leastShim = 8;
const past = 10;
/** mm that no eye tells from none: on either side of a step. */
const hair = 1e-6;
/** px that a board, a bar or a straightedge is thick. */
const thick = 7;

const bodyLength = ({ givens }: Still): number => givens.outline.length;

/** The sides at both ends, down from the edge, which stands at z there, as far as there is room. */
export function ends(still: Still, z: (still: Still, x: number) => number): readonly Shape[] {
  const { frame, lowest } = still;
  return [0, bodyLength(still)].map((x) =>
    lineShape("end", "thin", [pointAt(frame, x, z(still, x)), pointAt(frame, x, lowest)]),
  );
}

/** Where the rim's edge stands: level, finished, and dished while the rest is still level. */
export const levelEdge = ({ givens, profile }: Still, x: number): number =>
  datumZ(givens, profile, x);
export const finishedEdge = ({ givens, profile }: Still, x: number): number =>
  edgeZ(givens, profile, x);
export const dishedEdge = (still: Still, x: number): number =>
  isDomed(still.givens, x) ? finishedEdge(still, x) : levelEdge(still, x);

/** The top on the centreline as built, tail to neck end. */
export function top(still: Still, line: LineStyle): Shape {
  const { frame, givens, profile } = still;
  const from = flatFromX(givens);
  return lineShape(
    "top",
    line,
    curvePoints(frame, 0, bodyLength(still), (x) => topZ(givens, profile, x), [from]),
  );
}

/** The glued top before a seat is sanded. */
export function uncutTop(still: Still, line: LineStyle): Shape {
  const { frame, givens, profile } = still;
  const z = (x: number): number => uncutTopZ(givens, profile.dome, x);
  return lineShape("top", line, curvePoints(frame, 0, bodyLength(still), z));
}

/** The rim's edge at the side: it lies lower than the top's middle. */
export const rimEdge = (
  still: Still,
  line: LineStyle,
  z: (still: Still, x: number) => number,
): Shape => lineShape("rim edge", line, edgePoints(still, z));

/** What comes off between the level rim and its finished edge. */
export const wasteOff = (still: Still): Shape =>
  areaShape("comes off", "none", "window", [
    ...edgePoints(still, finishedEdge),
    ...edgePoints(still, levelEdge).reverse(),
  ]);

/** An edge tail to neck end, with what step it has at the break. */
function edgePoints(still: Still, z: (still: Still, x: number) => number): Point[] {
  const { frame, givens } = still;
  const at = (x: number): number => z(still, x);
  const { breakX } = givens;
  const corners = [breakX, breakX + hair];
  return curvePoints(frame, 0, bodyLength(still), at, corners);
}

export const levelRim = (still: Still, line: LineStyle): Shape =>
  lineShape("level rim", line, edgePoints(still, levelEdge));

/** The dish under the part of the rim that it sands: hollow above, as deep as there is room. */
export function dish(still: Still): Shape {
  const { frame, givens, profile, highest } = still;
  const end = flatFromDish(still);
  const hollow = curvePoints(frame, 0, end, (x) => uncutTopZ(givens, profile.dome, x));
  return areaShape("dish", "thick", "wood", [
    pointAt(frame, 0, highest),
    ...hollow,
    pointAt(frame, end, highest),
  ]);
}

/** Up to where the dish sands: the break, or the whole length. */
const flatFromDish = (still: Still): number =>
  still.profile.seat === null ? still.givens.breakX - hair : bodyLength(still);

/** The flat, its plane carried on to the tail, and what a seat takes off the plate. */
export function flat(still: Still): readonly Shape[] {
  const { frame, givens } = still;
  const from = flatFromX(givens);
  const at = (x: number): Point => pointAt(frame, x, 0);
  return [
    ...seatCut(still),
    lineShape("flat extended", "chain", [at(0), at(from)]),
    lineShape("flat", "thick", [at(from), at(bodyLength(still))]),
  ];
}

export function seatCut({ frame, givens, profile }: Still): readonly Shape[] {
  if (givens.seat === null) return [];
  const [from, to] = [givens.seat.fromX, givens.outline.length];
  const cut = curvePoints(frame, from, to, (x) => Math.max(0, uncutTopZ(givens, profile.dome, x)));
  return [
    areaShape("seat cut", "thin", "ink", [pointAt(frame, from, 0), ...cut, pointAt(frame, to, 0)]),
  ];
}

/** The break's mark across the edge. */
export function breakMark({ frame, givens, lowest, highest }: Still): Shape {
  const x = givens.breakX;
  return lineShape("break", "chain", [
    pointAt(frame, x, lowest),
    pointAt(frame, x, Math.min(highest, 4)),
  ]);
}

/** The board the rim lies on, or the bar over the seat: its face is the flat's plane. `on` is the side of that plane it lies on, px downward. */
export function straightFace(
  still: Still,
  role: "board" | "bar" | "straightedge",
  fromX: number,
  on: 1 | -1,
): Shape {
  const { frame } = still;
  const [left, y] = pointAt(frame, fromX - past, 0);
  const [right] = pointAt(frame, bodyLength(still) + past, 0);
  return areaShape(role, "thick", "paper", rectangle([left, y], [right, y + on * thick]));
}

/** The shim under the tail, or the spacer on the top at the saddle line. */
export function part({ frame, givens, profile }: Still): Shape {
  const [role, from, to, z] =
    profile.seat === null
      ? (["shim", 0, Math.max(givens.contact, leastShim), -profile.shim] as const)
      : ([
          "spacer",
          givens.saddleX - half.spacer,
          givens.saddleX + half.spacer,
          -profile.seat.spacer,
        ] as const);
  const corners = rectangle(pointAt(frame, from, 0), pointAt(frame, to, z));
  return areaShape(role, "thick", "wood", corners);
}

/** The gap between the flat carried on and the top at the saddle line. */
export function gap({ frame, givens, profile }: Still): Shape {
  const x = givens.saddleX;
  return lineShape("gap", "thick", [pointAt(frame, x, 0), pointAt(frame, x, -profile.flatGap)]);
}

export function fretPlane(still: Still): Shape {
  const { frame, givens } = still;
  const at = (x: number): Point => pointAt(frame, x, fretPlaneZ(givens.instrument, x));
  return lineShape("fret plane", "thin", [
    at(givens.saddleX - 2 * half.bridge),
    at(bodyLength(still)),
  ]);
}

const roofZ = ({ givens, profile }: Still): number =>
  givens.instrument.bridge.thickness - profile.flatGap;

export function bridge(still: Still): Shape {
  const { frame, givens, profile } = still;
  const at = (x: number, z: number): Point => pointAt(frame, givens.saddleX + x, z);
  const box = rectangle(at(-half.bridge, -profile.flatGap), at(half.bridge, roofZ(still)));
  return areaShape("bridge", "thin", "wood", box);
}

/** The saddle with its string, and dashed where `more` mm higher would stand. */
export function saddle(still: Still, more: number): readonly Shape[] {
  const { frame, givens } = still;
  const { saddleX } = givens;
  const crown = stringZ(givens, saddleX);
  const neckEnd = pointAt(frame, bodyLength(still), stringZ(givens, bodyLength(still)));
  const at = (x: number, z: number): Point => pointAt(frame, saddleX + x, z);
  const body = rectangle(at(-half.saddle, roofZ(still)), at(half.saddle, crown));
  return [
    areaShape("saddle", "thick", "paper", body),
    lineShape("string", "thin", [at(0, crown), neckEnd]),
    lineShape("string with more", "dashed", [at(0, crown + more), neckEnd]),
  ];
}
