/**
 * What a builder states about one instrument, exactly as its file holds it.
 * Lengths in millimetres and angles in degrees throughout. Distances called `…At` run along the
 * centreline from the tail end, except where a comment says otherwise.
 */
export interface Instrument {
  readonly format: "rimwright-instrument";
  readonly version: 1;
  readonly id: string;
  readonly name: string;
  readonly notes: string;
  readonly body: Body;
  readonly dome: DomeShape;
  readonly shim: ShimPlace;
  readonly neck: Neck;
  readonly bridge: Bridge;
  readonly strings: Strings;
  readonly target: Target;
  readonly windows: Windows;
  readonly tolerances: Tolerances;
}

/** The outline and the depth of the sides. Widths are full widths, edge to edge. */
export interface Body {
  readonly length: number;
  readonly lowerBoutWidth: number;
  readonly lowerBoutAt: number;
  readonly waistWidth: number;
  readonly waistAt: number;
  readonly upperBoutWidth: number;
  readonly upperBoutAt: number;
  readonly neckEndWidth: number;
  /** Finished side depth at the tail seam and at the neck end, from the finished top edge. */
  readonly depthTail: number;
  readonly depthNeck: number;
  /** Radius of the back's dish; null is a flat back. */
  readonly backRadius: number | null;
  /** Centre of the soundhole. */
  readonly soundholeAt: number;
  readonly soundholeDiameter: number;
  /** The builder's own outline. Where there is one, the widths and places above shape nothing. */
  readonly tracing?: Tracing;
}

/** Half an outline: distance from the tail, rising from 0 to the body's length, and half width there. */
export type Tracing = readonly (readonly [x: number, halfWidth: number])[];

export interface DomeShape {
  /** Sphere radius of the dish; null is no dome. */
  readonly dishRadius: number | null;
  /** Diameter of the dish itself, to see whether the rim fits in it. */
  readonly dishDiameter: number;
  /** Radius the top's braces are arched to; null is flat braces. */
  readonly braceRadius: number | null;
  /** From the neck end to the break line. */
  readonly flatLength: number;
  /** What the dish takes off the tail end more than off the break; 0 is a level dish. */
  readonly tailExtra: number;
  /** How far tailward of the break the plate blends from flat to domed. */
  readonly blendLength: number;
}

export interface ShimPlace {
  /** From the tail end in to the edge of the shim that the domed rim rests on. */
  readonly contact: number;
  readonly tailBlockDepth: number;
}

export interface Neck {
  readonly scale: number;
  readonly joinFret: number;
  readonly lastFret: number;
  /** Fingerboard left beyond the last fret. */
  readonly fingerboardOverhang: number;
  readonly fingerboardThickness: number;
  readonly fretHeight: number;
  /** Cylinder radius of the fingerboard's playing face; null is flat. */
  readonly fingerboardRadius: number | null;
  /** Angle of the fret plane to the flat; 0 when the neck lies on the flat. */
  readonly neckTilt: number;
  /** Gap at the middle of the straight line from fret 1 to the join fret. */
  readonly relief: number;
  /** Height of the heel from shoulder to tip. */
  readonly heelLength: number;
}

export interface Bridge {
  readonly thickness: number;
  readonly compensation: number;
  /** From the saddle line to the bridge pins, along the strings. */
  readonly pinDistance: number;
  /** How far below the bridge's top the string leaves the pin slot. */
  readonly pinRamp: number;
}

export interface Strings {
  readonly count: number;
  /** Between the outer strings, at the nut and at the saddle. */
  readonly spreadNut: number;
  readonly spreadSaddle: number;
  /** String over the fret plane at the nut. */
  readonly nutClearance: number;
  /** String over fret 12. */
  readonly actionBass: number;
  readonly actionTreble: number;
}

export const targetKinds = [
  "pitch",
  "bridgeClearance",
  "saddleExposure",
  "stringHeight",
  "shim",
] as const;

/** One outcome asked for; it fixes the shim. */
export type TargetKind = (typeof targetKinds)[number];

export interface Target {
  readonly kind: TargetKind;
  /** Degrees for pitch, millimetres for the rest. */
  readonly value: number;
}

/** A closed range, low end first. */
export type Range = readonly [low: number, high: number];

export const windowKinds = [
  "bridgeClearance",
  "saddleExposure",
  "stringHeight",
  "breakAngle",
  "pitch",
] as const;

export type WindowKind = (typeof windowKinds)[number];

/** The range the builder accepts for each outcome. */
type Windows = Readonly<Record<WindowKind, Range>>;

/** Plus-or-minus by field path, such as `"dome.flatLength": 0.5`. */
export type Tolerances = Readonly<Record<string, number>>;
