import type { Givens } from "../../profile/givens.ts";
import { fretPlaneZ } from "../../profile/neck.ts";
import type { Profile } from "../../profile/outcome.ts";
import { blendedTopZ, flatFromX } from "../../profile/top.ts";
import { type Frame, type Point, pointAt, pyAt } from "../frame.ts";
import { curvePoints } from "../path.ts";
import type { LineStyle, Scene, Shape } from "../scene.ts";
import { group, lineShape, textShape } from "../shapes.ts";
import { fitted, letteringSize, spacedApart } from "./chart.ts";

/** The base is drawn thick; each variant after it has a line type of its own. */
const variantLines: readonly LineStyle[] = [
  "dashed",
  "chain",
  "dotted",
  "long-dashed",
  "double-chain",
  "fine-dashed",
  "dash-dotted",
  "thin",
];

/** The line of the base (0) or of the i-th variant. */
export const compareLine = (i: number): LineStyle =>
  i === 0 ? "thick" : (variantLines[(i - 1) % variantLines.length] ?? "thin");

export interface OverlaidVariant {
  readonly name: string;
  readonly line: LineStyle;
  readonly givens: Givens;
  readonly profile: Profile;
}

export interface OverlayOptions {
  readonly width: number;
  readonly height: number;
  /** The base first. */
  readonly variants: readonly OverlaidVariant[];
}

const stretches = [10, 5, 2, 1];
const nameRoom = 122;

/**
 * Sections of several plans on one another, the flat zones in line: each top along the centreline, its
 * bridge and saddle, and its fret plane, in a line type of its own, named where its tail ends. Heights
 * are stretched by the most that fits, and the drawing says by how much.
 */
export function variantsOverlay({ width, height, variants }: OverlayOptions): Scene {
  const longest = Math.max(...variants.map(({ givens }) => givens.outline.length), 1);
  const { low, high } = heightsOf(variants);
  const along = Math.max(100, width - nameRoom - 14) / longest;
  const room = Math.max(60, height - 46);
  const stretch = stretches.find((times) => (high - low) * along * times <= room) ?? 1;
  const up = along * stretch;
  const frame: Frame = {
    along,
    up,
    left: nameRoom,
    level: 24 + high * up + Math.max(0, room - (high - low) * up) / 2,
    turned: false,
  };
  const names = variants.map(({ name, profile }) => ({ name, y: pyAt(frame, -profile.tailDrop) }));
  return {
    width,
    height,
    title: `Sections of ${variants.map(({ name }) => name).join(", ")} on one another, heights drawn ${stretch} times.`,
    shapes: [
      lineShape("flat", "thin", [pointAt(frame, 0, 0), pointAt(frame, longest, 0)]),
      ...variants.map((variant) => group("variant", variantShapes(frame, variant))),
      ...spacedApart(names, 16, [14, height - 30]).flatMap(({ name, y, at }) => [
        lineShape("leader", "thin", [
          [frame.left - 2, y],
          [frame.left - 12, at],
        ]),
        textShape(
          "variant-name",
          fitted(name, nameRoom - 18),
          [frame.left - 15, at + 4],
          letteringSize,
          { anchor: "end" },
        ),
      ]),
      ...nameLines(frame, variants, longest),
      textShape(
        "stretch",
        stretch === 1 ? "Heights true to scale" : `Heights drawn ${stretch}×; the flat is in line`,
        [width - 4, height - 8],
        letteringSize,
        { anchor: "end" },
      ),
    ],
  };
}

/** What the straight lines are, at their neck ends. */
function nameLines(
  frame: Frame,
  variants: readonly OverlaidVariant[],
  longest: number,
): readonly Shape[] {
  const base = variants[0]?.givens;
  if (base === undefined) return [];
  const [x, flat] = pointAt(frame, longest, 0);
  const [, frets] = pointAt(frame, longest, fretPlaneZ(base.instrument, base.outline.length));
  return [
    textShape("line-name", "the flat", [x, flat + 16], letteringSize, { anchor: "end" }),
    textShape("line-name", "fret plane", [x, frets - 7], letteringSize, { anchor: "end" }),
  ];
}

function heightsOf(variants: readonly OverlaidVariant[]): {
  readonly low: number;
  readonly high: number;
} {
  const lows = variants.map(({ profile }) => -profile.tailDrop);
  const highs = variants.flatMap(({ profile, givens }) => [
    profile.stringHeight - profile.flatGap,
    givens.fretPlaneAtSaddle,
  ]);
  return { low: Math.min(-1, ...lows), high: Math.max(1, ...highs) };
}

function variantShapes(frame: Frame, { line, givens, profile }: OverlaidVariant): readonly Shape[] {
  const { instrument, outline, breakX, saddleX } = givens;
  const top = (x: number): number => blendedTopZ(givens, profile.dome, x);
  const { length } = outline;
  const seat = -profile.flatGap;
  const bridge = seat + instrument.bridge.thickness;
  const string = seat + profile.stringHeight;
  const pad = 11;
  const at = (x: number, z: number): Point => pointAt(frame, x, z);
  const blendX = breakX - instrument.dome.blendLength;
  return [
    lineShape("top", line, curvePoints(frame, 0, length, top, [blendX, flatFromX(givens)])),
    lineShape("fret-plane", line, [
      at(saddleX, fretPlaneZ(instrument, saddleX)),
      at(length, fretPlaneZ(instrument, length)),
    ]),
    lineShape("bridge", line, [
      at(saddleX - pad, top(saddleX - pad)),
      at(saddleX - pad, bridge),
      at(saddleX + pad, bridge),
      at(saddleX + pad, top(saddleX + pad)),
    ]),
    lineShape("saddle", line, [at(saddleX, bridge), at(saddleX, string)]),
  ];
}
