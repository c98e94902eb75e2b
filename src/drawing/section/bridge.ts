import { type Point, pointAt } from "../frame.ts";
import { curvePoints } from "../path.ts";
import type { GroupShape, Shape } from "../scene.ts";
import { areaShape, group, lineShape } from "../shapes.ts";
import { neckCutX } from "./neck.ts";
import type { SectionLayout } from "./section-layout.ts";
import { stringZ, topZ } from "./section-layout.ts";

/** Bridge as drawn, mm: before the saddle line and behind the pins; saddle's width and its slot's depth. Nothing depends on them. */
const before = 9;
const behind = 9;
const saddleWidth = 3;
const slotDepth = 6;
/** How far the string is shown below the top. */
const throughTop = 3;

/** The bridge on the top, its saddle and pin, and the middle string over them. */
export function bridgeShapes(layout: SectionLayout): GroupShape {
  return group("bridge", [bridgeBody(layout), pin(layout), saddle(layout), string(layout)]);
}

/** Tailward and neckward edges of the bridge, mm from the tail. */
export const bridgeEnds = ({ givens }: SectionLayout): readonly [number, number] => [
  givens.saddleX - givens.instrument.bridge.pinDistance - behind,
  givens.saddleX + before,
];

/** The bridge's top at the saddle line, mm over the flat's plane. */
export const bridgeTopZ = ({ givens, profile }: SectionLayout): number =>
  givens.instrument.bridge.thickness - profile.flatGap;

const pinX = ({ givens }: SectionLayout): number =>
  givens.saddleX - givens.instrument.bridge.pinDistance;

const bridgeBody = (layout: SectionLayout): Shape =>
  areaShape("bridge", "thick", "wood", bridgePoints(layout));

export function bridgePoints(layout: SectionLayout): readonly Point[] {
  const { frame, givens, profile } = layout;
  const { thickness } = givens.instrument.bridge;
  const [tail, neck] = bridgeEnds(layout);
  const seat = curvePoints(frame, tail, neck, (x) => topZ(givens, profile, x));
  const over = curvePoints(frame, tail, neck, (x) => topZ(givens, profile, x) + thickness);
  return [...seat, ...over.reverse()];
}

function saddle(layout: SectionLayout): Shape {
  const { frame, givens } = layout;
  const x0 = givens.saddleX - saddleWidth / 2;
  const x1 = givens.saddleX + saddleWidth / 2;
  const crown = stringZ(givens, givens.saddleX);
  const slot = Math.min(bridgeTopZ(layout) - slotDepth, crown);
  return areaShape("saddle", "thin", "paper", [
    pointAt(frame, x0, slot),
    pointAt(frame, x0, crown),
    pointAt(frame, x1, crown),
    pointAt(frame, x1, slot),
  ]);
}

/** Where the string goes down at its pin: `pinRamp` under the bridge's top, as measured at the saddle line. */
const pinPoint = (layout: SectionLayout): Point =>
  pointAt(layout.frame, pinX(layout), bridgeTopZ(layout) - layout.givens.instrument.bridge.pinRamp);

function pin(layout: SectionLayout): Shape {
  const { frame, givens, profile } = layout;
  const x = pinX(layout);
  return lineShape("pin", "thin", [
    pinPoint(layout),
    pointAt(frame, x, topZ(givens, profile, x) - throughTop),
  ]);
}

/** Points of the middle string, from its pin over the saddle to where the neck is cut. */
export function stringPoints(layout: SectionLayout): readonly Point[] {
  const { frame, givens } = layout;
  const end = neckCutX(layout);
  return [
    pinPoint(layout),
    pointAt(frame, givens.saddleX, stringZ(givens, givens.saddleX)),
    pointAt(frame, end, stringZ(givens, end)),
  ];
}

const string = (layout: SectionLayout): Shape => lineShape("string", "thin", stringPoints(layout));
