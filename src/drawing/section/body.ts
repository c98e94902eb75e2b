import { domeZ } from "../../geometry/dome.ts";
import { type Frame, type Point, pointAt, pxAt, pyAt } from "../frame.ts";
import { areaShape, curvePoints, lineShape } from "../path.ts";
import type { GroupShape, Shape } from "../scene.ts";
import { backZ, edgeZ, topZ } from "./heights.ts";
import type { SectionSheet } from "./section-sheet.ts";

/** px of colour laid along the top to tell dome from flat. */
const washDepth = 6;
/** Neck block drawn, mm; its depth is not asked for, and nothing depends on it. */
const neckBlockDepth = 60;

/** The rim cut along its centreline: ends, back and blocks. */
export function rimShapes(sheet: SectionSheet): GroupShape {
  const { frame, setting, profile, cut } = sheet;
  const { body } = setting.instrument;
  const end = (role: string, x: number): Shape => {
    const foot = cut ?? pyAt(frame, backZ(setting, profile, x, 0));
    return lineShape(role, "thick", [pointAt(frame, x, blockZ(sheet, x)), [pxAt(frame, x), foot]]);
  };
  const [tail, neck] = blocks(sheet);
  return {
    kind: "group",
    role: "rim",
    shapes: [
      areaShape("tail block", "thin", "wood", tail),
      areaShape("neck block", "thin", "wood", neck),
      ...(cut === null ? backs(sheet) : []),
      end("tail end", 0),
      end("neck end", body.length),
    ],
  };
}

/** Upper face of the blocks, which dish and board cut with the rim; under the top it is the top. */
function blockZ({ setting, profile, frame }: SectionSheet, x: number): number {
  if (!frame.turned) return topZ(setting, profile, x);
  return x < setting.breakX ? Math.min(0, domeZ(profile.dome, x, 0)) : 0;
}

/** Outlines of the tail block and the neck block. */
export function blocks(sheet: SectionSheet): readonly [readonly Point[], readonly Point[]] {
  const { body, shim } = sheet.setting.instrument;
  const tailBlock = Math.min(shim.tailBlockDepth, body.length / 3);
  const neckBlock = Math.min(neckBlockDepth, body.length / 3);
  return [
    blockPoints(sheet, 0, tailBlock),
    blockPoints(sheet, body.length - neckBlock, body.length),
  ];
}

function blockPoints(sheet: SectionSheet, x0: number, x1: number): readonly Point[] {
  const { frame, setting, profile, cut } = sheet;
  const over = curvePoints(frame, x0, x1, (x) => blockZ(sheet, x));
  const under: Point[] =
    cut === null
      ? curvePoints(frame, x0, x1, (x) => backZ(setting, profile, x, 0))
      : [
          [pxAt(frame, x0), cut],
          [pxAt(frame, x1), cut],
        ];
  return [...over, ...under.reverse()];
}

/** The back on the centreline. */
export const backPoints = ({ frame, setting, profile }: SectionSheet): Point[] =>
  curvePoints(frame, 0, setting.outline.length, (x) => backZ(setting, profile, x, 0));

function backs(sheet: SectionSheet): readonly Shape[] {
  const { frame, setting, profile } = sheet;
  const { outline } = setting;
  const edge = curvePoints(
    frame,
    0,
    outline.length,
    (x) => backZ(setting, profile, x, outline.halfWidth(x)),
    outline.knots,
  );
  return [
    lineShape("back edge at the side", "dashed", edge),
    lineShape("back", "thick", backPoints(sheet)),
  ];
}

/** The finished edge of the side: hidden behind the top as far as it differs from it, in plain sight before the top is on. */
export function rimEdgeShapes(sheet: SectionSheet): GroupShape {
  const { frame, setting } = sheet;
  const dome = rimEdgePoints(sheet);
  const flat = [domeEnd(sheet), setting.instrument.body.length].map((x) => pointAt(frame, x, 0));
  const shapes = frame.turned
    ? [...edge(sheet, "rim edge", "dome", dome), ...edge(sheet, "rim edge", "flat", flat)]
    : [lineShape("rim edge", "dashed", [...dome, pointAt(frame, setting.breakX, 0)])];
  return { kind: "group", role: "rim edge", shapes };
}

/** How far the dish's own edge runs: to the break, or to where the board cuts past it. */
const domeEnd = ({ setting, profile }: SectionSheet): number =>
  setting.breakX - profile.overrunLength;

/** The rim edge as the dish leaves it. */
export const rimEdgePoints = (sheet: SectionSheet): Point[] =>
  curvePoints(
    sheet.frame,
    0,
    domeEnd(sheet),
    (x) => Math.min(0, edgeZ(sheet.setting, sheet.profile, x)),
    sheet.setting.outline.knots,
  );

/** The top, open over the soundhole: warm along the dome, cool along the flat. */
export function topShapes(sheet: SectionSheet): GroupShape {
  const { setting } = sheet;
  const { length } = setting.instrument.body;
  const { breakX } = setting;
  const [hole0, hole1] = soundhole(sheet);
  const run = (wash: "dome" | "flat", x0: number, x1: number): readonly Shape[] =>
    x1 > x0 ? edge(sheet, "top", wash, topPoints(sheet, x0, x1)) : [];
  return {
    kind: "group",
    role: "top",
    shapes: [
      lineShape("soundhole", "thin", topPoints(sheet, hole0, hole1)),
      ...run("dome", 0, Math.min(hole0, breakX)),
      ...run("dome", hole1, breakX),
      ...run("flat", breakX, hole0),
      ...run("flat", Math.max(hole1, breakX), length),
    ],
  };
}

function soundhole({ setting }: SectionSheet): readonly [number, number] {
  const { length, soundholeAt, soundholeDiameter } = setting.instrument.body;
  const within = (x: number): number => Math.min(Math.max(x, 0), length);
  return [within(soundholeAt - soundholeDiameter / 2), within(soundholeAt + soundholeDiameter / 2)];
}

export const topPoints = ({ frame, setting, profile }: SectionSheet, x0: number, x1: number) =>
  curvePoints(frame, x0, x1, (x) => topZ(setting, profile, x), [
    setting.breakX - setting.instrument.dome.blendLength,
    setting.breakX,
  ]);

/** How far the colour along a finished edge reaches into the wood. */
export const inside = ({ turned }: Frame, points: readonly Point[]): Point[] =>
  points.map(([x, y]) => [x, y + (turned ? -washDepth : washDepth)]);

/** A finished edge with its colour along the wood's side of it. */
function edge(
  { frame }: SectionSheet,
  role: string,
  wash: "dome" | "flat",
  points: readonly Point[],
): readonly Shape[] {
  return [
    areaShape(`${wash} colour`, "none", wash, [...points, ...inside(frame, points).reverse()]),
    lineShape(role, "thick", points),
  ];
}
