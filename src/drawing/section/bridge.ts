import { type Point, pointAt } from "../frame.ts";
import { areaShape, curvePoints, lineShape } from "../path.ts";
import type { GroupShape, Shape } from "../scene.ts";
import { stringZ, topZ } from "./heights.ts";
import { neckCutX } from "./neck.ts";
import type { SectionSheet } from "./section-sheet.ts";

/** Bridge as drawn, mm: before the saddle line and behind the pins; saddle's width and its slot's depth. Nothing depends on them. */
const before = 9;
const behind = 9;
const saddleWidth = 3;
const slotDepth = 6;
/** How far the string is shown below the top. */
const throughTop = 3;

/** The bridge on the top, its saddle and pin, and the middle string over them. */
export function bridgeShapes(sheet: SectionSheet): GroupShape {
  return {
    kind: "group",
    role: "bridge",
    shapes: [bridgeBody(sheet), pin(sheet), saddle(sheet), string(sheet)],
  };
}

/** Tailward and neckward edges of the bridge, mm from the tail. */
export const bridgeEnds = ({ setting }: SectionSheet): readonly [number, number] => [
  setting.saddleX - setting.instrument.bridge.pinDistance - behind,
  setting.saddleX + before,
];

/** The bridge's top at the saddle line, mm over the flat's plane. */
export const bridgeTopZ = ({ setting, profile }: SectionSheet): number =>
  setting.instrument.bridge.thickness - profile.flatGap;

const pinX = ({ setting }: SectionSheet): number =>
  setting.saddleX - setting.instrument.bridge.pinDistance;

const bridgeBody = (sheet: SectionSheet): Shape =>
  areaShape("bridge", "thick", "wood", bridgePoints(sheet));

export function bridgePoints(sheet: SectionSheet): readonly Point[] {
  const { frame, setting, profile } = sheet;
  const { thickness } = setting.instrument.bridge;
  const [tail, neck] = bridgeEnds(sheet);
  const seat = curvePoints(frame, tail, neck, (x) => topZ(setting, profile, x));
  const over = curvePoints(frame, tail, neck, (x) => topZ(setting, profile, x) + thickness);
  return [...seat, ...over.reverse()];
}

function saddle(sheet: SectionSheet): Shape {
  const { frame, setting } = sheet;
  const x0 = setting.saddleX - saddleWidth / 2;
  const x1 = setting.saddleX + saddleWidth / 2;
  const crown = stringZ(setting, setting.saddleX);
  const slot = Math.min(bridgeTopZ(sheet) - slotDepth, crown);
  return areaShape("saddle", "thin", "paper", [
    pointAt(frame, x0, slot),
    pointAt(frame, x0, crown),
    pointAt(frame, x1, crown),
    pointAt(frame, x1, slot),
  ]);
}

/** Where the string goes down at its pin: `pinRamp` under the bridge's top, as measured at the saddle line. */
const pinPoint = (sheet: SectionSheet): Point =>
  pointAt(sheet.frame, pinX(sheet), bridgeTopZ(sheet) - sheet.setting.instrument.bridge.pinRamp);

function pin(sheet: SectionSheet): Shape {
  const { frame, setting, profile } = sheet;
  const x = pinX(sheet);
  return lineShape("pin", "thin", [
    pinPoint(sheet),
    pointAt(frame, x, topZ(setting, profile, x) - throughTop),
  ]);
}

/** Points of the middle string, from its pin over the saddle to where the neck is cut. */
export function stringPoints(sheet: SectionSheet): readonly Point[] {
  const { frame, setting } = sheet;
  const end = neckCutX(sheet);
  return [
    pinPoint(sheet),
    pointAt(frame, setting.saddleX, stringZ(setting, setting.saddleX)),
    pointAt(frame, end, stringZ(setting, end)),
  ];
}

const string = (sheet: SectionSheet): Shape => lineShape("string", "thin", stringPoints(sheet));
