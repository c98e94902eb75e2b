import type { Dome } from "../geometry/dome.ts";
import type { FieldPath } from "../instrument/fields.ts";
import type { Range, TargetKind } from "../instrument/instrument.ts";
import type { Phrase } from "../instrument/phrase.ts";
import type { BodySide } from "./halves.ts";

/** Why an instrument cannot be solved, before the nearest value that would work has been looked for. */
export interface Objection {
  /** The field to blame. */
  readonly field: FieldPath;
  readonly why: Phrase;
}

/** The shims an instrument can be given (with a seat, the spacers), thinnest and thickest, each with the dome it makes. */
export interface Reach {
  readonly thinnest: number;
  readonly thickest: number;
  readonly thinnestDome: Dome;
  readonly thickestDome: Dome;
}

/** The numbers of a profile. All lengths in mm, all angles in degrees. Frame: origin at the tail end on the flat's plane, x toward the neck, z out of the top. */
export interface Outcomes {
  /** How far the tail end lies below the flat's plane. */
  readonly tailDrop: number;
  /** Angle between the flat's plane and the chord from the tail end to the break, or to the neck end where all is domed. */
  readonly chordPitch: number;
  /** Angle between the flat and the datum, the level rim's top edge. */
  readonly pitch: number;
  /** Between the fingerboard's plane and a heel face cut to a neck end square to the datum. */
  readonly heelAngle: number;
  readonly saddleX: number;
  /** Gap under a straightedge laid on the flat, at the saddle line; negative: it cannot lie there. */
  readonly flatGap: number;
  /** Fret plane over the top at the saddle line. */
  readonly projection: number;
  readonly bridgeClearance: number;
  readonly stringHeight: number;
  readonly saddleExposure: number;
  /** One per string, bass first. */
  readonly stringExposure: readonly number[];
  readonly breakAngle: number;
  /** How far and how deep the flat board cuts tailward of the break; both 0 when it does not. */
  readonly overrunLength: number;
  readonly overrunDepth: number;
  /** How much the whole level edge must come down because it was too low somewhere. */
  readonly rimOffset: number;
  /** Most that comes off the level rim anywhere, `rimOffset` included. */
  readonly maxRemoval: number;
  readonly maxRemovalX: number;
  /** Where the least comes off, so what is sanded last. */
  readonly leastRemovalX: number;
  /** Both as length of edge from the tail seam. */
  readonly maxRemovalArc: number;
  readonly leastRemovalArc: number;
  /** On which side both are; null where the other side's are the same. */
  readonly maxRemovalSide: BodySide | null;
  readonly leastRemovalSide: BodySide | null;
  /** Diameter of the smallest dish the domed part of the rim fits in. */
  readonly dishNeeded: number;
  /** Distance from tail of the fingerboard's end. */
  readonly fingerboardEndX: number;
}

/** What only a rim with a break and a flat has. */
export interface BreakOutcomes {
  /** Thickness of the shim under the tail. */
  readonly shim: number;
  /** Thinnest shim with no overrun; null when none within reach is. */
  readonly cleanShim: number | null;
  readonly breakX: number;
  /** Half the distance between the rim's edges on the break line. */
  readonly breakHalfWidth: number;
  /** How far the middle between them lies to the bass side of the centreline. */
  readonly breakMiddle: number;
  /**
   * How far a dish that sands the whole rim cuts under the flat anywhere neckward of the break, and where;
   * 0 and null where nowhere; both null where so small a dish ends short of the neck.
   */
  readonly dishUndercut: number | null;
  readonly dishUndercutX: number | null;
  readonly seat: null;
}

/** What comes off the plate on the seat, all on the centreline, where the cut is deepest. */
export interface SeatCut {
  readonly mostCut: number;
  readonly mostCutX: number;
  /** At the fingerboard's end, and at the neck end. */
  readonly endCut: number;
  readonly neckEndCut: number;
}

/** What only a top with a seat sanded flat has. */
export interface SeatOutcomes {
  readonly shim: null;
  readonly cleanShim: null;
  readonly breakX: null;
  readonly breakHalfWidth: null;
  readonly breakMiddle: null;
  readonly dishUndercut: null;
  readonly dishUndercutX: null;
  readonly seat: SeatCut & {
    /** Under the bar at the saddle line while the seat is sanded: the gap there. */
    readonly spacer: number;
    /** The body's width where the seat lies, at the narrower of its ends. */
    readonly bodyWidth: number;
    /** Of the plate, where most is cut; 0 or less: none. */
    readonly thicknessLeft: number;
  };
}

/** Either way's outcomes. */
export type AnyOutcomes = Outcomes & (BreakOutcomes | SeatOutcomes);

interface Shape {
  /** Width the side's strip must have before it is cut to shape. */
  readonly stockWidth: number;
  /** Along the bass half's edge, and along the treble half's; null where that mirrors it. */
  readonly stations: readonly Station[];
  readonly trebleStations: readonly Station[] | null;
  /** Worst first. */
  readonly checks: readonly Check[];
  /** The sphere (or plane) the top's rim lies on, and the back's, for drawing. */
  readonly dome: Dome;
  readonly back: Dome;
}

/** The range of each target that an instrument can be given; null for the other method's. */
type Reachable<Own extends TargetKind, Other extends TargetKind> = Readonly<
  Record<Exclude<TargetKind, Other> | Own, Range> & Record<Other, null>
>;

export type BreakProfile = Outcomes &
  BreakOutcomes &
  Shape & { readonly reachable: Reachable<"shim", "spacer"> };

/** `reachable` is what leaves some plate, if anything does. */
export type SeatProfile = Outcomes &
  SeatOutcomes &
  Shape & { readonly reachable: Reachable<"spacer", "shim"> };

/** Everything that follows from an instrument, by either method; `seat` tells which. */
export type Profile = BreakProfile | SeatProfile;

/** What a profile gives of a target; null for the other method's. */
export function targetIn(profile: Profile, kind: TargetKind): number | null {
  if (kind === "spacer") return profile.seat?.spacer ?? null;
  return profile[kind];
}

/** The stations of one side. */
export const stationsOn = (
  { stations, trebleStations }: Pick<Shape, "stations" | "trebleStations">,
  side: BodySide,
): readonly Station[] => (side === "bass" ? stations : (trebleStations ?? stations));

export interface Station {
  /** A landmark's name, or "" for a place that is only one of the even spacing. */
  readonly name: string;
  readonly x: number;
  readonly halfWidth: number;
  /** Along the outline from the tail seam. */
  readonly arcLength: number;
  /** What comes off the level rim here, `rimOffset` not included. */
  readonly removal: number;
  readonly sideDepth: number;
  readonly zone: "dome" | "flat";
}

/** `stop`: it cannot be built or set up so; `warn`: out of what was asked or usual; `note`: good to know. */
export type Grade = "stop" | "warn" | "note";

export interface Check {
  readonly id: string;
  readonly grade: Grade;
  /** The field that fixes it best. */
  readonly field: FieldPath;
  /** What it means at the bench. */
  readonly means: Phrase;
  /** What would fix it. */
  readonly fix: Phrase;
}

/** Why an instrument has no profile: one field to blame, and the nearest value of it that would work (null: none does). */
export interface Refusal {
  readonly field: FieldPath;
  readonly why: Phrase;
  readonly nearest: number | null;
}

export type ProfileResult =
  | { readonly ok: true; readonly profile: Profile }
  | { readonly ok: false; readonly refusal: Refusal };
