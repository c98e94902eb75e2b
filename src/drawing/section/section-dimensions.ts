import { radians } from "../../geometry/angle.ts";
import { type AngleDimension, angleWays } from "../dimensions/angle-dimension.ts";
import { type Dimension, heightWays, lengthWays } from "../dimensions/dimension.ts";
import { type Point, pointAt, pxAt } from "../frame.ts";
import type { Placer, Way } from "../label-placement.ts";
import type { GroupShape } from "../scene.ts";
import { bridgeEnds, bridgeTopZ } from "./bridge.ts";
import { contactPoint, group, shimPoints } from "./lines.ts";
import { firstRow, nextRow, type SectionSheet } from "./section-sheet.ts";
import { bandsEnd } from "./windows.ts";

/** px between dimension lines side by side. */
const laneWidth = 15;
/** From this width on, measures are named in full. */
const roomy = 600;

/** A measure that may be shown, with every way to show it. */
interface Offer {
  readonly role: string;
  readonly ways: Iterable<Way>;
  /** What it may cost and still be shown, where that is more than usual. */
  readonly dearest?: number;
}

/** The shim is what the drawing is for: it is shown even across an outline. */
const dearestShim = 36;

/**
 * The dimensions of the section. Those that can stand in one place only come first, then the rest,
 * most important first; what there is no room for is left out.
 */
export function dimensionShapes(sheet: SectionSheet, placer: Placer): readonly GroupShape[] {
  return offersOf(sheet).flatMap(({ role, ways, dearest }) => {
    const way = placer.choose(ways, dearest);
    return way === null ? [] : [group(`dimension ${role}`, [...way.shapes(), way.text])];
  });
}

function offersOf(sheet: SectionSheet): readonly Offer[] {
  const { size } = sheet;
  const lengths = [breakToTail, flatLength, contact].map((of) => of(sheet));
  const atBridge = [saddleExposed, stringHeight, flatGap, clearance].map((of) => of(sheet));
  const byHeight = (dimension: Dimension): Offer => ({
    role: dimension.role,
    ways: heightWays(dimension, size),
  });
  const byLength = (dimension: Dimension): Offer => ({
    role: dimension.role,
    ways: lengthWays(dimension, size),
  });
  return [
    ...[...lengths, ...overrun(sheet)].map(byLength),
    { ...byHeight(shim(sheet)), dearest: dearestShim },
    ...(sheet.frame.turned ? [] : atBridge.map(byHeight)),
    { role: "pitch", ways: angleWays(pitch(sheet), size) },
  ];
}

/** A measure's name and value: in full where there is room, and always more briefly. */
function wordings({ width }: SectionSheet, full: string, brief: string, value: string) {
  const short = [`${brief} ${value}`, value];
  return width < roomy || full === brief ? short : [`${full} ${value}`, ...short];
}

function shim(sheet: SectionSheet): Dimension {
  const { frame, profile, words } = sheet;
  const foot = contactPoint(sheet);
  return {
    role: "shim",
    texts: wordings(sheet, "shim", "shim", words.length(profile.shim)),
    from: foot,
    to: [foot[0], frame.level],
    stands: [Math.min(...shimPoints(sheet).map(([x]) => x)) - 16, foot[0] + 16],
  };
}

/** Stands side by side, tailward (-1) or neckward (1) from `first` px. */
const standsFrom = (first: number, way: 1 | -1): readonly number[] =>
  [0, 1, 2, 3, 4, 5, 6].map((i) => first + way * i * laneWidth);

/** Of two heights measured to the same side the shorter has the lane next to the part, 0. */
const tailward = (sheet: SectionSheet, lane: 0 | 1): readonly number[] =>
  standsFrom(pxAt(sheet.frame, bridgeEnds(sheet)[0]) - 12 - lane * laneWidth, -1);

const neckward = (sheet: SectionSheet, lane: 0 | 1): readonly number[] =>
  standsFrom(bandsEnd(sheet) + 12 + lane * laneWidth, 1);

const atSaddle = (sheet: SectionSheet, z: number): Point =>
  pointAt(sheet.frame, sheet.setting.saddleX, z);

function saddleExposed(sheet: SectionSheet): Dimension {
  const { profile, words } = sheet;
  const bridgeTop = bridgeTopZ(sheet);
  return {
    role: "saddle exposed",
    texts: wordings(sheet, "saddle exposed", "saddle", words.length(profile.saddleExposure)),
    from: atSaddle(sheet, bridgeTop),
    to: atSaddle(sheet, bridgeTop + profile.saddleExposure),
    stands: neckward(sheet, 1),
  };
}

function clearance(sheet: SectionSheet): Dimension {
  const { setting, profile, words } = sheet;
  const value = words.length(profile.bridgeClearance);
  return {
    role: "fret plane over the bridge",
    texts: wordings(sheet, "fret plane over bridge", "fret plane", value),
    from: atSaddle(sheet, bridgeTopZ(sheet)),
    to: atSaddle(sheet, setting.fretPlaneAtSaddle),
    stands: neckward(sheet, 0),
  };
}

function flatGap(sheet: SectionSheet): Dimension {
  const { profile, words } = sheet;
  return {
    role: "gap under the straightedge",
    texts: wordings(sheet, "gap under straightedge", "gap", words.length(profile.flatGap)),
    from: atSaddle(sheet, -profile.flatGap),
    to: atSaddle(sheet, 0),
    stands: tailward(sheet, 0),
  };
}

function stringHeight(sheet: SectionSheet): Dimension {
  const { profile, words } = sheet;
  return {
    role: "string height",
    texts: wordings(sheet, "strings over top", "strings", words.length(profile.stringHeight)),
    from: atSaddle(sheet, -profile.flatGap),
    to: atSaddle(sheet, profile.stringHeight - profile.flatGap),
    stands: tailward(sheet, 1),
  };
}

function pitch(sheet: SectionSheet): AngleDimension {
  const { frame, setting, profile, words } = sheet;
  const down = frame.turned ? -1 : 1;
  const shares = [0.3, 0.36, 0.24, 0.62, 0.7, 0.78, 0.18, 0.86];
  return {
    role: "pitch",
    texts: wordings(sheet, "pitch", "pitch", words.angle(profile.pitch)),
    apex: pointAt(frame, setting.breakX, 0),
    slope: (down * Math.tan(radians(profile.pitch)) * frame.up) / frame.along,
    radii: shares.map((share) => share * setting.breakX * frame.along),
  };
}

/** Rows for lengths under the drawing; a measure keeps its own row where it can. */
function rows({ size, foot, strip, rows: count }: SectionSheet, own: 0 | 1): readonly number[] {
  const first = Math.min(own, count - 1);
  return [first, first + 1, first - 1]
    .filter((row) => row >= 0)
    .map((row) => foot + firstRow(size) + row * nextRow(size))
    .filter((at) => at < strip);
}

const onFlat = ({ frame }: SectionSheet, x: number): Point => pointAt(frame, x, 0);

const tailPoint = ({ frame, profile }: SectionSheet): Point => pointAt(frame, 0, -profile.tailDrop);

function breakToTail(sheet: SectionSheet): Dimension {
  const { setting, words } = sheet;
  return {
    role: "break to tail",
    texts: wordings(sheet, "break to tail", "break to tail", words.length(setting.breakX)),
    from: tailPoint(sheet),
    to: onFlat(sheet, setting.breakX),
    stands: rows(sheet, 1),
  };
}

function flatLength(sheet: SectionSheet): Dimension {
  const { setting, words } = sheet;
  const { body, dome } = setting.instrument;
  return {
    role: "flat length",
    texts: wordings(sheet, "flat", "flat", words.length(dome.flatLength)),
    from: onFlat(sheet, setting.breakX),
    to: onFlat(sheet, body.length),
    stands: rows(sheet, 1),
  };
}

function overrun(sheet: SectionSheet): readonly Dimension[] {
  const { setting, profile, words } = sheet;
  if (profile.overrunLength === 0) return [];
  const value = words.length(profile.overrunLength);
  const deep = `overrun ${value}, ${words.length(profile.overrunDepth)} deep`;
  return [
    {
      role: "overrun",
      texts: [deep, ...wordings(sheet, "overrun", "overrun", value)],
      from: onFlat(sheet, setting.breakX - profile.overrunLength),
      to: onFlat(sheet, setting.breakX),
      stands: rows(sheet, 0),
    },
  ];
}

function contact(sheet: SectionSheet): Dimension {
  const { setting, words } = sheet;
  const value = words.length(setting.instrument.shim.contact);
  return {
    role: "contact",
    texts: wordings(sheet, "contact", "contact", value),
    from: tailPoint(sheet),
    to: contactPoint(sheet),
    stands: rows(sheet, 0),
  };
}
