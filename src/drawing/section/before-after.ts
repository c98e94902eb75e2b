import type { Stand } from "../../profile/bench/outlook-stand.ts";
import { fretPlaneZ } from "../../profile/neck.ts";
import { blendedTopZ } from "../../profile/top.ts";
import type { Frame } from "../frame.ts";
import { pointAt, pxAt, pyAt } from "../frame.ts";
import { textWidth } from "../lettering.ts";
import { areaShape, curvePoints, lineShape } from "../path.ts";
import type { LineStyle, Scene, Shape, TextShape } from "../scene.ts";

export interface BeforeAfterOptions {
  readonly width: number;
  readonly height: number;
  readonly length: (mm: number) => string;
}

/** Drawn tailward of the saddle line, and of the neck beyond the body, mm. */
const behind = 42;
const beyond = 26;
/** Bridge before and behind the saddle line and saddle's width as drawn, mm. */
const bridgeHalf = 15;
const saddleHalf = 1.5;
const size = 13;
const margin = 10;
/** px of the two rows of lettering: over the drawing and under it. */
const overhead = 26;
const underneath = 2 * size + 22;

/**
 * The end of the section that a correction moves, saddle to neck end: as it stands in dashes, and after
 * the correction in full lines. The flat is laid on the flat, so what the rim loses shows in the top.
 */
export function beforeAfter(before: Stand, after: Stand, options: BeforeAfterOptions): Scene {
  const width = Math.max(options.width, 260);
  const height = Math.max(options.height, 180);
  const frame = frameFor([before, after], width, height);
  const { length } = options;
  const [was, becomes] = [before, after].map(({ heights }) => length(heights.saddleExposure));
  return {
    width,
    height,
    title: `Saddle to neck end, before and after: the saddle stands ${was} before and ${becomes} after.`,
    shapes: [
      { kind: "group", role: "after", shapes: standShapes(frame, after, "thick", true) },
      { kind: "group", role: "before", shapes: standShapes(frame, before, "dashed", false) },
      lineShape("flat", "chain", [
        pointAt(frame, before.setting.saddleX - behind, 0),
        pointAt(frame, neckEdge(before), 0),
      ]),
      ...lettering(frame, width, height, [before, after], options),
    ],
  };
}

const neckEdge = ({ instrument }: Stand): number => instrument.body.length + beyond;

/** Underside of the middle string at x: straight over the two heights at the saddle and the neck end. */
function stringAt(stand: Stand, x: number): number {
  const { instrument, setting, heights, gap } = stand;
  const atSaddle = heights.stringHeight - gap;
  const { scale } = instrument.neck;
  const { middleString: middle } = setting;
  const fall = (middle.atSaddle - middle.atNut) / (scale + instrument.bridge.compensation);
  const plane = fretZ(stand, x) - fretZ(stand, setting.saddleX);
  return atSaddle + plane - fall * (x - setting.saddleX);
}

const fretZ = ({ instrument, offsets }: Stand, x: number): number =>
  fretPlaneZ(instrument, x) + offsets.fretPlane;

function topAt(stand: Stand, x: number): number {
  const { setting, dome, gap } = stand;
  if (dome !== null) return blendedTopZ(setting, dome, x);
  const share = (setting.breakX - x) / (setting.breakX - setting.saddleX);
  return share <= 0 ? 0 : -gap * share;
}

function standShapes(
  frame: Frame,
  stand: Stand,
  line: Extract<LineStyle, "thick" | "dashed">,
  filled: boolean,
): readonly Shape[] {
  const { setting, instrument, heights } = stand;
  const { saddleX } = setting;
  const [tail, neck] = [saddleX - behind, neckEdge(stand)];
  const top = curvePoints(frame, tail, instrument.body.length, (x) => topAt(stand, x), [
    setting.breakX,
  ]);
  const seat = topAt(stand, saddleX);
  const roof = seat + instrument.bridge.thickness;
  const crown = roof + heights.saddleExposure;
  const box = (x0: number, x1: number, z0: number, z1: number) => [
    pointAt(frame, x0, z0),
    pointAt(frame, x0, z1),
    pointAt(frame, x1, z1),
    pointAt(frame, x1, z0),
    pointAt(frame, x0, z0),
  ];
  const bridge = box(saddleX - bridgeHalf, saddleX + bridgeHalf, seat, roof);
  const saddle = box(saddleX - saddleHalf, saddleX + saddleHalf, roof, crown);
  return [
    filled ? areaShape("bridge", line, "wood", bridge) : lineShape("bridge", line, bridge),
    lineShape("saddle", filled ? "thin" : line, saddle),
    lineShape("top", line, top),
    lineShape("fret plane", filled ? "thin" : line, [
      pointAt(frame, saddleX, fretZ(stand, saddleX)),
      pointAt(frame, neck, fretZ(stand, neck)),
    ]),
    lineShape("string", filled ? "thin" : line, [
      pointAt(frame, saddleX, stringAt(stand, saddleX)),
      pointAt(frame, neck, stringAt(stand, neck)),
    ]),
  ];
}

function frameFor(stands: readonly Stand[], width: number, height: number): Frame {
  const tails = stands.map(({ setting }) => setting.saddleX - behind);
  const necks = stands.map(neckEdge);
  const [from, to] = [Math.min(...tails), Math.max(...necks)];
  const along = (width - 2 * margin) / (to - from);
  const lows = stands.map((stand) => Math.min(0, topAt(stand, stand.setting.saddleX - behind)));
  const highs = stands.map((stand) =>
    Math.max(stringAt(stand, stand.setting.saddleX), stringAt(stand, neckEdge(stand))),
  );
  const [low, high] = [Math.min(...lows) - 0.5, Math.max(...highs) + 0.5];
  const up = (height - overhead - underneath) / (high - low);
  return {
    along,
    up,
    left: margin - from * along,
    level: overhead + high * up,
    turned: false,
  };
}

function lettering(
  frame: Frame,
  width: number,
  height: number,
  [before, after]: readonly [Stand, Stand],
  { length }: BeforeAfterOptions,
): readonly Shape[] {
  const stretch = Math.round(frame.up / frame.along);
  const rows = [
    ["now", before, "dashed"],
    ["after", after, "thick"],
  ] as const;
  const legend = rows.flatMap(([name, { heights }, line], i): Shape[] => {
    const y = height - underneath + size + 6 + i * (size + 6);
    const full = `${name}: saddle ${length(heights.saddleExposure)}, strings ${length(heights.stringHeight)} over the top`;
    const short = `${name}: saddle ${length(heights.saddleExposure)}`;
    const text = textWidth(full, size) < width - 60 ? full : short;
    return [
      lineShape(`${name} sign`, line, [
        [margin, y - 4],
        [margin + 28, y - 4],
      ]),
      words(`${name} value`, margin + 36, y, "start", text),
    ];
  });
  const saddle = pxAt(frame, after.setting.saddleX);
  const neck = pxAt(frame, after.instrument.body.length);
  return [
    ...legend,
    words("saddle name", Math.max(saddle, margin + 24), size + 4, "middle", "saddle"),
    words("stretch", width - margin, size + 4, "end", `heights ×${stretch}`),
    lineShape("neck end", "thin", [
      [neck, pyAt(frame, 0) - 14],
      [neck, pyAt(frame, 0) + 14],
    ]),
  ];
}

const words = (
  role: string,
  x: number,
  y: number,
  anchor: TextShape["anchor"],
  text: string,
): TextShape => ({ kind: "text", role, x, y, anchor, size, text });
