import { radians } from "../../geometry/circle.ts";
import { leastShown } from "../../profile/standing.ts";
import { type AngleDimension, angleCandidates } from "../dimensions/angle-dimension.ts";
import { type Dimension, heightCandidates, lengthCandidates } from "../dimensions/dimension.ts";
import { type Point, pointAt, pxAt } from "../frame.ts";
import type { LabelCandidate, LabelPlacement } from "../label-placement.ts";
import type { GroupShape } from "../scene.ts";
import { group } from "../shapes.ts";
import { bridgeEnds, bridgeTopZ } from "./bridge.ts";
import { contactPoint, partPoints } from "./lines.ts";
import { firstRow, nextRow, type SectionLayout } from "./section-layout.ts";
import { bandsEnd } from "./windows.ts";

/** px between dimension lines side by side. */
const laneWidth = 15;
/** From this width on, measures are named in full. */
const roomy = 600;

/** A measure that may be shown, with every candidate for it. */
interface Offer {
  readonly role: string;
  readonly candidates: Iterable<LabelCandidate>;
  /** What it may cost and still be shown, where that is more than usual. */
  readonly limit?: number;
}

/** The shim (or spacer) is what the drawing is for: it is shown even across an outline. */
const partLimit = 36;

/**
 * The dimensions of the section. Those that can stand in one place only come first, then the rest,
 * most important first; what there is no room for is left out.
 */
export function dimensionShapes(
  layout: SectionLayout,
  labels: LabelPlacement,
): readonly GroupShape[] {
  return offersOf(layout).flatMap(({ role, candidates, limit }) => {
    const candidate = labels.choose(candidates, limit);
    return candidate === null
      ? []
      : [group(`dimension ${role}`, [...candidate.shapes(), candidate.text])];
  });
}

function offersOf(layout: SectionLayout): readonly Offer[] {
  const { size, atWork } = layout;
  const byHeight = byHeightAt(size);
  const onRim = layout.givens.seat === null;
  const lengths = (onRim ? [breakToTail, flatLength, contact] : [seatLength]).map((of) =>
    of(layout),
  );
  // Once the spacer is away, its place is the gap.
  const part = onRim || atWork ? [{ ...byHeight(partDimension(layout)), limit: partLimit }] : [];
  const atBridge = [saddleExposed, stringHeight, flatGap, clearance].map((of) => of(layout));
  const byLength = (dimension: Dimension): Offer => ({
    role: dimension.role,
    candidates: lengthCandidates(dimension, size),
  });
  return [
    ...[...lengths, ...overrun(layout)].map(byLength),
    ...part,
    ...seatCut(layout).map(byHeight),
    ...(atWork ? [] : atBridge.map(byHeight)),
    { role: "pitch", candidates: angleCandidates(pitch(layout), size) },
  ];
}

const byHeightAt =
  (size: number) =>
  (dimension: Dimension): Offer => ({
    role: dimension.role,
    candidates: heightCandidates(dimension, size),
  });

/** A measure's name and value: in full where there is room, and always more briefly. */
function wordings({ width }: SectionLayout, full: string, brief: string, value: string) {
  const short = [`${brief} ${value}`, value];
  return width < roomy || full === brief ? short : [`${full} ${value}`, ...short];
}

function partDimension(layout: SectionLayout): Dimension {
  const { frame, profile, words } = layout;
  const foot = contactPoint(layout);
  const [role, value] =
    profile.seat === null
      ? (["shim", profile.shim] as const)
      : (["spacer", profile.seat.spacer] as const);
  const xs = partPoints(layout).map(([x]) => x);
  return {
    role,
    texts: wordings(layout, role, role, words.shim(value)),
    from: foot,
    to: [foot[0], frame.level],
    offsets: [Math.min(...xs) - 16, Math.max(...xs) + 16],
  };
}

/** What comes off the plate at the fingerboard's end. */
function seatCut(layout: SectionLayout): readonly Dimension[] {
  const { frame, givens, profile, words } = layout;
  if (givens.seat === null || profile.seat === null || profile.seat.endCut < leastShown) return [];
  const { fromX } = givens.seat;
  const { endCut } = profile.seat;
  return [
    {
      role: "seat cut",
      texts: wordings(layout, "off the plate", "cut", words.height(endCut)),
      from: pointAt(frame, fromX, 0),
      to: pointAt(frame, fromX, endCut),
      offsets: offsetsFrom(pxAt(frame, fromX) - 14, -1),
    },
  ];
}

function seatLength(layout: SectionLayout): Dimension {
  const { givens, words } = layout;
  const { length } = givens.outline;
  const from = givens.seat?.fromX ?? length;
  return {
    role: "seat length",
    texts: wordings(layout, "seat", "seat", words.length(length - from)),
    from: onFlat(layout, from),
    to: onFlat(layout, length),
    offsets: rows(layout, 1),
  };
}

/** Stands side by side, tailward (-1) or neckward (1) from `first` px. */
const offsetsFrom = (first: number, direction: 1 | -1): readonly number[] =>
  [0, 1, 2, 3, 4, 5, 6].map((i) => first + direction * i * laneWidth);

/** Of two heights measured to the same side the shorter has the lane next to the part, 0. */
const tailward = (layout: SectionLayout, lane: 0 | 1): readonly number[] =>
  offsetsFrom(pxAt(layout.frame, bridgeEnds(layout)[0]) - 12 - lane * laneWidth, -1);

const neckward = (layout: SectionLayout, lane: 0 | 1): readonly number[] =>
  offsetsFrom(bandsEnd(layout) + 12 + lane * laneWidth, 1);

const atSaddle = (layout: SectionLayout, z: number): Point =>
  pointAt(layout.frame, layout.givens.saddleX, z);

function saddleExposed(layout: SectionLayout): Dimension {
  const { profile, words } = layout;
  const bridgeTop = bridgeTopZ(layout);
  return {
    role: "saddle exposed",
    texts: wordings(layout, "saddle exposed", "saddle", words.height(profile.saddleExposure)),
    from: atSaddle(layout, bridgeTop),
    to: atSaddle(layout, bridgeTop + profile.saddleExposure),
    offsets: neckward(layout, 1),
  };
}

function clearance(layout: SectionLayout): Dimension {
  const { givens, profile, words } = layout;
  const value = words.height(profile.bridgeClearance);
  return {
    role: "fret plane over the bridge",
    texts: wordings(layout, "fret plane over bridge", "fret plane", value),
    from: atSaddle(layout, bridgeTopZ(layout)),
    to: atSaddle(layout, givens.fretPlaneAtSaddle),
    offsets: neckward(layout, 0),
  };
}

function flatGap(layout: SectionLayout): Dimension {
  const { profile, words } = layout;
  return {
    role: "gap under the straightedge",
    texts:
      profile.seat === null
        ? wordings(layout, "gap under straightedge", "gap", words.height(profile.flatGap))
        : wordings(layout, "gap, as the spacer", "spacer", words.height(profile.flatGap)),
    from: atSaddle(layout, -profile.flatGap),
    to: atSaddle(layout, 0),
    offsets: tailward(layout, 0),
  };
}

function stringHeight(layout: SectionLayout): Dimension {
  const { profile, words } = layout;
  return {
    role: "string height",
    texts: wordings(layout, "strings over top", "strings", words.height(profile.stringHeight)),
    from: atSaddle(layout, -profile.flatGap),
    to: atSaddle(layout, profile.stringHeight - profile.flatGap),
    offsets: tailward(layout, 1),
  };
}

function pitch(layout: SectionLayout): AngleDimension {
  const { frame, givens, profile, words } = layout;
  const down = frame.turned ? -1 : 1;
  const shares = [0.3, 0.36, 0.24, 0.62, 0.7, 0.78, 0.18, 0.86];
  return {
    role: "pitch",
    texts: wordings(layout, "pitch", "pitch", words.angle(profile.pitch)),
    apex: pointAt(frame, givens.breakX, 0),
    slope: (down * Math.tan(radians(profile.pitch)) * frame.up) / frame.along,
    radii: shares.map((share) => share * givens.breakX * frame.along),
  };
}

/** Rows for lengths under the drawing; a measure keeps its own row where it can. */
function rows({ size, foot, strip, rows: count }: SectionLayout, own: 0 | 1): readonly number[] {
  const first = Math.min(own, count - 1);
  return [first, first + 1, first - 1]
    .filter((row) => row >= 0)
    .map((row) => foot + firstRow(size) + row * nextRow(size))
    .filter((at) => at < strip);
}

const onFlat = ({ frame }: SectionLayout, x: number): Point => pointAt(frame, x, 0);

const tailPoint = ({ frame, profile }: SectionLayout): Point =>
  pointAt(frame, 0, -profile.tailDrop);

function breakToTail(layout: SectionLayout): Dimension {
  const { givens, words } = layout;
  return {
    role: "break to tail",
    texts: wordings(layout, "break to tail", "break to tail", words.length(givens.breakX)),
    from: tailPoint(layout),
    to: onFlat(layout, givens.breakX),
    offsets: rows(layout, 1),
  };
}

function flatLength(layout: SectionLayout): Dimension {
  const { givens, words } = layout;
  const { body, dome } = givens.instrument;
  return {
    role: "flat length",
    texts: wordings(layout, "flat", "flat", words.length(dome.flatLength)),
    from: onFlat(layout, givens.breakX),
    to: onFlat(layout, body.length),
    offsets: rows(layout, 1),
  };
}

function overrun(layout: SectionLayout): readonly Dimension[] {
  const { givens, profile, words } = layout;
  if (profile.overrunDepth < leastShown) return [];
  const value = words.length(profile.overrunLength);
  const deep = `overrun ${value}, ${words.length(profile.overrunDepth)} deep`;
  return [
    {
      role: "overrun",
      texts: [deep, ...wordings(layout, "overrun", "overrun", value)],
      from: onFlat(layout, givens.breakX - profile.overrunLength),
      to: onFlat(layout, givens.breakX),
      offsets: rows(layout, 0),
    },
  ];
}

function contact(layout: SectionLayout): Dimension {
  const { givens, words } = layout;
  const value = words.length(givens.contact);
  return {
    role: "contact",
    texts: wordings(layout, "stick", "stick", value),
    from: tailPoint(layout),
    to: contactPoint(layout),
    offsets: rows(layout, 0),
  };
}
