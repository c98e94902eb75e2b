import { domeZ } from "../../geometry/dome.ts";
import { isDomed } from "../../profile/givens.ts";
import { flatFromX, topZ as uncutTopZ } from "../../profile/top.ts";
import { type Frame, type Point, pointAt, pxAt, pyAt } from "../frame.ts";
import { curvePoints } from "../path.ts";
import type { GroupShape, Shape } from "../scene.ts";
import { areaShape, bandShape, group, lineShape } from "../shapes.ts";
import type { SectionLayout } from "./section-layout.ts";
import { backZ, edgeZ, topZ } from "./section-layout.ts";

/** px of colour laid along the top to tell dome from flat. */
const washDepth = 6;
/** Neck block drawn, mm; its depth is not asked for, and nothing depends on it. */
const neckBlockDepth = 60;

/** The rim cut along its centreline: ends, back and blocks. */
export function rimShapes(layout: SectionLayout): GroupShape {
  const { frame, givens, profile, cut } = layout;
  const { body } = givens.instrument;
  const end = (role: string, x: number): Shape => {
    const foot = cut ?? pyAt(frame, backZ(profile, x, 0));
    return lineShape(role, "thick", [pointAt(frame, x, blockZ(layout, x)), [pxAt(frame, x), foot]]);
  };
  const [tail, neck] = blocks(layout);
  return group("rim", [
    areaShape("tail block", "thin", "wood", tail),
    areaShape("neck block", "thin", "wood", neck),
    ...(cut === null ? backs(layout) : []),
    end("tail end", 0),
    end("neck end", body.length),
  ]);
}

/** Upper face of the blocks, which dish and board cut with the rim; under the top it is the top. */
function blockZ({ givens, profile, frame }: SectionLayout, x: number): number {
  if (!frame.turned) return topZ(givens, profile, x);
  return isDomed(givens, x) ? Math.min(0, domeZ(profile.dome, x, 0)) : 0;
}

/** Outlines of the tail block and the neck block. */
export function blocks(layout: SectionLayout): readonly [readonly Point[], readonly Point[]] {
  const { body, shim } = layout.givens.instrument;
  const tailBlock = Math.min(shim.tailBlockDepth, body.length / 3);
  const neckBlock = Math.min(neckBlockDepth, body.length / 3);
  return [
    blockPoints(layout, 0, tailBlock),
    blockPoints(layout, body.length - neckBlock, body.length),
  ];
}

function blockPoints(layout: SectionLayout, x0: number, x1: number): readonly Point[] {
  const { frame, profile, cut } = layout;
  const over = curvePoints(frame, x0, x1, (x) => blockZ(layout, x));
  const under: Point[] =
    cut === null
      ? curvePoints(frame, x0, x1, (x) => backZ(profile, x, 0))
      : [
          [pxAt(frame, x0), cut],
          [pxAt(frame, x1), cut],
        ];
  return [...over, ...under.reverse()];
}

/** The back on the centreline. */
export const backPoints = ({ frame, givens, profile }: SectionLayout): Point[] =>
  curvePoints(frame, 0, givens.outline.length, (x) => backZ(profile, x, 0));

function backs(layout: SectionLayout): readonly Shape[] {
  const { frame, givens, profile } = layout;
  const { outline } = givens;
  const edge = curvePoints(
    frame,
    0,
    outline.length,
    (x) => backZ(profile, x, outline.halfWidth(x)),
    outline.knots,
  );
  return [
    lineShape("back edge at the side", "dashed", edge),
    lineShape("back", "thick", backPoints(layout)),
  ];
}

/** The finished edge of the side: hidden behind the top as far as it differs from it, in plain sight before the top is on. */
export function rimEdgeShapes(layout: SectionLayout): GroupShape {
  const { frame, givens } = layout;
  const dome = rimEdgePoints(layout);
  const flat = [domeEnd(layout), givens.instrument.body.length].map((x) => pointAt(frame, x, 0));
  const shapes = frame.turned
    ? [...edge(layout, "rim edge", "dome", dome), ...edge(layout, "rim edge", "flat", flat)]
    : [
        lineShape(
          "rim edge",
          "dashed",
          givens.seat === null ? [...dome, pointAt(frame, givens.breakX, 0)] : dome,
        ),
      ];
  return group("rim edge", shapes);
}

/** How far the dish's own edge runs: to the break, or to where the board cuts past it. */
const domeEnd = ({ givens, profile }: SectionLayout): number =>
  givens.breakX - profile.overrunLength;

/** The rim edge as the dish leaves it. */
export const rimEdgePoints = (layout: SectionLayout): Point[] =>
  curvePoints(
    layout.frame,
    0,
    domeEnd(layout),
    (x) =>
      layout.givens.seat === null
        ? Math.min(0, edgeZ(layout.givens, layout.profile, x))
        : edgeZ(layout.givens, layout.profile, x),
    layout.givens.outline.knots,
  );

/** The top, open over the soundhole: warm along the dome, cool along the flat. */
export function topShapes(layout: SectionLayout): GroupShape {
  const { givens } = layout;
  const { length } = givens.instrument.body;
  const flatX = flatFromX(givens);
  const [hole0, hole1] = soundhole(layout);
  const run = (wash: "dome" | "flat", x0: number, x1: number): readonly Shape[] =>
    x1 > x0 ? edge(layout, "top", wash, topPoints(layout, x0, x1)) : [];
  return group("top", [
    lineShape("soundhole", "thin", topPoints(layout, hole0, hole1)),
    ...run("dome", 0, Math.min(hole0, flatX)),
    ...run("dome", hole1, flatX),
    ...run("flat", flatX, hole0),
    ...run("flat", Math.max(hole1, flatX), length),
  ]);
}

function soundhole({ givens }: SectionLayout): readonly [number, number] {
  const { length, soundholeAt, soundholeDiameter } = givens.instrument.body;
  const within = (x: number): number => Math.min(Math.max(x, 0), length);
  return [within(soundholeAt - soundholeDiameter / 2), within(soundholeAt + soundholeDiameter / 2)];
}

export const topPoints = ({ frame, givens, profile }: SectionLayout, x0: number, x1: number) =>
  curvePoints(frame, x0, x1, (x) => topZ(givens, profile, x), [
    givens.breakX - givens.instrument.dome.blendLength,
    flatFromX(givens),
  ]);

/** The wood that the seat takes off the plate; none where the rim has a flat. */
export function seatCutShapes({ frame, givens, profile }: SectionLayout): readonly Shape[] {
  const { seat, outline } = givens;
  if (seat === null) return [];
  const whole = curvePoints(frame, seat.fromX, outline.length, (x) =>
    Math.max(0, uncutTopZ(givens, profile.dome, x)),
  );
  const [from, to] = [seat.fromX, outline.length].map((x) => pointAt(frame, x, 0));
  return from === undefined || to === undefined
    ? []
    : [areaShape("seat cut", "thin", "ink", [from, ...whole, to])];
}

/** How far the colour along a finished edge reaches into the wood. */
export const inside = ({ turned }: Frame, [x, y]: Point): Point => [
  x,
  y + (turned ? -washDepth : washDepth),
];

/** A finished edge with its colour along the wood's side of it. */
function edge(
  { frame }: SectionLayout,
  role: string,
  wash: "dome" | "flat",
  points: readonly Point[],
): readonly Shape[] {
  return [
    bandShape(`${wash} colour`, "none", wash, points, (point) => inside(frame, point)),
    lineShape(role, "thick", points),
  ];
}
