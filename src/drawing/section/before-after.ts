import type { MadeInstrument } from "../../profile/bench/made-instrument.ts";
import { fretPlaneZ } from "../../profile/neck.ts";
import { blendedTopZ, flatFromX } from "../../profile/top.ts";
import type { Frame } from "../frame.ts";
import { pointAt, pxAt, pyAt } from "../frame.ts";
import { textWidth } from "../lettering.ts";
import { curvePoints } from "../path.ts";
import type { LineStyle, Scene, Shape } from "../scene.ts";
import { areaShape, group, lineShape, outlineShape, rectangle, textShape } from "../shapes.ts";

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
export function beforeAfter(
  before: MadeInstrument,
  after: MadeInstrument,
  options: BeforeAfterOptions,
): Scene {
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
      group("after", madeShapes(frame, after, "thick", true)),
      group("before", madeShapes(frame, before, "dashed", false)),
      lineShape("flat", "chain", [
        pointAt(frame, before.givens.saddleX - behind, 0),
        pointAt(frame, neckEdge(before), 0),
      ]),
      ...lettering(frame, width, height, [before, after], options),
    ],
  };
}

const neckEdge = ({ instrument }: MadeInstrument): number => instrument.body.length + beyond;

/** Underside of the middle string at x: straight over the two heights at the saddle and the neck end. */
function stringAt(made: MadeInstrument, x: number): number {
  const { instrument, givens, heights, gap } = made;
  const atSaddle = heights.stringHeight - gap;
  const { scale } = instrument.neck;
  const { middleString: middle } = givens;
  const fall = (middle.atSaddle - middle.atNut) / (scale + instrument.bridge.compensation);
  const plane = fretZ(made, x) - fretZ(made, givens.saddleX);
  return atSaddle + plane - fall * (x - givens.saddleX);
}

const fretZ = ({ instrument, offsets }: MadeInstrument, x: number): number =>
  fretPlaneZ(instrument, x) + offsets.fretPlane;

function topAt(made: MadeInstrument, x: number): number {
  const { givens, dome, gap } = made;
  if (dome !== null) return blendedTopZ(givens, dome, x);
  const flatX = flatFromX(givens);
  const share = (flatX - x) / (flatX - givens.saddleX);
  return share <= 0 ? 0 : -gap * share;
}

function madeShapes(
  frame: Frame,
  made: MadeInstrument,
  line: Extract<LineStyle, "thick" | "dashed">,
  filled: boolean,
): readonly Shape[] {
  const { givens, instrument, heights } = made;
  const { saddleX } = givens;
  const [tail, neck] = [saddleX - behind, neckEdge(made)];
  const top = curvePoints(frame, tail, instrument.body.length, (x) => topAt(made, x), [
    flatFromX(givens),
  ]);
  const seat = topAt(made, saddleX);
  const roof = seat + instrument.bridge.thickness;
  const crown = roof + heights.saddleExposure;
  const box = (x0: number, x1: number, z0: number, z1: number) =>
    rectangle(pointAt(frame, x0, z0), pointAt(frame, x1, z1));
  const bridge = box(saddleX - bridgeHalf, saddleX + bridgeHalf, seat, roof);
  const saddle = box(saddleX - saddleHalf, saddleX + saddleHalf, roof, crown);
  return [
    filled ? areaShape("bridge", line, "wood", bridge) : outlineShape("bridge", line, bridge),
    outlineShape("saddle", filled ? "thin" : line, saddle),
    lineShape("top", line, top),
    lineShape("fret plane", filled ? "thin" : line, [
      pointAt(frame, saddleX, fretZ(made, saddleX)),
      pointAt(frame, neck, fretZ(made, neck)),
    ]),
    lineShape("string", filled ? "thin" : line, [
      pointAt(frame, saddleX, stringAt(made, saddleX)),
      pointAt(frame, neck, stringAt(made, neck)),
    ]),
  ];
}

function frameFor(all: readonly MadeInstrument[], width: number, height: number): Frame {
  const tails = all.map(({ givens }) => givens.saddleX - behind);
  const necks = all.map(neckEdge);
  const [from, to] = [Math.min(...tails), Math.max(...necks)];
  const along = (width - 2 * margin) / (to - from);
  const lows = all.map((made) => Math.min(0, topAt(made, made.givens.saddleX - behind)));
  const highs = all.map((made) =>
    Math.max(stringAt(made, made.givens.saddleX), stringAt(made, neckEdge(made))),
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
  [before, after]: readonly [MadeInstrument, MadeInstrument],
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
      textShape(`${name} value`, text, [margin + 36, y], size, { anchor: "start" }),
    ];
  });
  const saddle = pxAt(frame, after.givens.saddleX);
  const neck = pxAt(frame, after.instrument.body.length);
  return [
    ...legend,
    textShape("saddle name", "saddle", [Math.max(saddle, margin + 24), size + 4], size),
    textShape("stretch", `heights ×${stretch}`, [width - margin, size + 4], size, {
      anchor: "end",
    }),
    lineShape("neck end", "thin", [
      [neck, pyAt(frame, 0) - 14],
      [neck, pyAt(frame, 0) + 14],
    ]),
  ];
}
