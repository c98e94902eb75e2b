import { degrees, radians } from "../geometry/circle.ts";
import { type Dome, domeZ } from "../geometry/dome.ts";
import { rootBetween } from "../geometry/root.ts";
import type { Range, TargetKind } from "../instrument/instrument.ts";
import { anglePart, targetFields } from "../instrument/outcome-fields.ts";
import { deg, mm, phrase, roundedDown, roundedUp } from "../instrument/phrase.ts";
import type { Givens, SeatPlace } from "./givens.ts";
import type { Objection, Reach } from "./outcome.ts";
import {
  coveringTilts,
  domeAt,
  domeFits,
  domeOfLean,
  partUnder,
  type ReachResult,
  reachOf,
} from "./reach.ts";
import { datumHeight } from "./rim.ts";
import { domeTilted, domeUnder, tiltRising } from "./seat.ts";
import { reachLeavingPlate } from "./spacer-reach.ts";
import { topZ } from "./top.ts";

interface Solution {
  /** The shim's thickness, or with a seat the spacer's. */
  readonly part: number;
  readonly dome: Dome;
}

export type SolutionResult =
  | { readonly ok: true; readonly solution: Solution }
  | { readonly ok: false; readonly objection: TargetObjection };

/** For a target out of reach its range is known, and so the nearest end of it; null when the field may not hold that. */
export interface TargetObjection extends Objection {
  readonly reach?: { readonly range: Range; readonly nearest: number | null };
}

/** Rounding allowed at the ends of the reach, in the target's own unit, so that the ends themselves can be asked for. */
const slack = 1e-9;

/** The shim (or spacer) and the dome that meet the instrument's target; objects with the reachable range when nothing does. */
export function solve(givens: Givens): SolutionResult {
  const { target, body, dome: stated } = givens.instrument;
  let known: ReachResult | undefined;
  const reach = (): ReachResult => {
    known ??= reachOf(givens);
    return known;
  };
  const dome = domeForTarget(givens, reach);
  if (dome !== null) {
    const isPart = target.kind === anglePart[stated.method];
    const part = isPart ? target.value : partUnder(givens, dome);
    // The deepest there is under the rim: the shim at the contact, or the tail end under the seat's plane.
    const deep = givens.seat === null ? part : -domeZ(dome, 0, 0);
    if (part >= 0 && deep <= body.depthTail && domeFits(givens, dome)) {
      return { ok: true, solution: { part, dome } };
    }
  }
  const reached = reach();
  return reached.ok ? atTheEnds(givens, reached.reach) : reached;
}

/** A target that misses the reach by rounding alone is met by its end; any other is refused. */
function atTheEnds(givens: Givens, reach: Reach): SolutionResult {
  const { thinnest, thickest, thinnestDome, thickestDome } = reach;
  const { kind, value } = givens.instrument.target;
  const [low, high] = rangeOver(givens, reach, kind);
  if (Math.abs(value - low) <= slack) {
    return { ok: true, solution: { part: thinnest, dome: thinnestDome } };
  }
  if (Math.abs(value - high) <= slack) {
    return { ok: true, solution: { part: thickest, dome: thickestDome } };
  }
  return {
    ok: false,
    objection: outOf(givens, rangeOver(givens, reachWithin(givens, reach), kind)),
  };
}

function outOf({ instrument }: Givens, range: Range): TargetObjection {
  const { kind, value } = instrument.target;
  const [low, high] = range;
  const show = kind === "pitch" ? deg : mm;
  const { label, min, max } = targetFields[kind];
  const nearest = value < low ? low : high;
  return {
    field: "target.value",
    why: [
      label,
      ...phrase` can be ${roundedUp(show(low))} to ${roundedDown(show(high))} on this instrument; ${show(value)} is out of its reach.`,
    ],
    reach: { range, nearest: min <= nearest && nearest <= max ? nearest : null },
  };
}

/** The reach that is named to a builder: with a seat, the part of it that leaves some plate, if any does. */
export function reachWithin(givens: Givens, reach: Reach): Reach {
  const { seat } = givens;
  return (seat === null ? null : reachLeavingPlate(givens, seat, reach)) ?? reach;
}

/** A target's value at both ends of the reach; every one of them grows with the shim, and with the spacer. */
export function rangeOver(givens: Givens, reach: Reach, kind: TargetKind): Range {
  if (kind === "shim" || kind === "spacer") return [reach.thinnest, reach.thickest];
  return [outcomeOf(givens, reach.thinnestDome, kind), outcomeOf(givens, reach.thickestDome, kind)];
}

/** What sets the angle at the bench: a target, but no outcome of the dome alone. */
type Part = "shim" | "spacer";

/** What a dome gives of one target, mm or degrees. */
export function outcomeOf(givens: Givens, dome: Dome, kind: Exclude<TargetKind, Part>): number {
  if (kind === "pitch") {
    const { tailExtra } = givens.instrument.dome;
    const rise = datumHeight(givens, dome) - domeZ(dome, 0, 0);
    return degrees(Math.atan((rise - tailExtra) / givens.breakX));
  }
  return heightOverTop(givens, kind) - topZ(givens, dome, givens.saddleX);
}

/** Height over the flat's plane at the saddle line from which a target measures down to the top. */
function heightOverTop(givens: Givens, kind: Exclude<TargetKind, Part | "pitch">): number {
  const { fretPlaneAtSaddle, middleString, instrument } = givens;
  const { thickness } = instrument.bridge;
  if (kind === "bridgeClearance") return fretPlaneAtSaddle - thickness;
  const string = fretPlaneAtSaddle + middleString.atSaddle - instrument.strings.settling;
  return kind === "stringHeight" ? string : string - thickness;
}

/** The dome through the one centreline point the target gives, in place of the shim's contact. */
function domeForTarget(givens: Givens, reach: () => ReachResult): Dome | null {
  if (givens.seat !== null) return seatDomeForTarget(givens, givens.seat);
  const { kind, value } = givens.instrument.target;
  if (kind === "spacer") return null;
  if (kind === "shim") return domeAt(givens, givens.contact, -value);
  if (kind === "pitch") {
    if (Math.abs(value) >= 90) return null;
    const rise = givens.breakX * Math.tan(radians(value));
    return domeAt(givens, 0, -rise - givens.instrument.dome.tailExtra);
  }
  return domeUnderTop(givens, heightOverTop(givens, kind) - value, reach);
}

/** The same where a seat is sanded on a top domed all over: one more point, or the slope from tail to neck end. */
function seatDomeForTarget(givens: Givens, seat: SeatPlace): Dome | null {
  const { kind, value } = givens.instrument.target;
  const tilts = coveringTilts(givens);
  if (tilts === null || kind === "shim") return null;
  if (kind === "pitch") {
    if (Math.abs(value) >= 90) return null;
    const rise = givens.outline.length * Math.tan(radians(value));
    const tilt = tiltRising(givens, rise + givens.instrument.dome.tailExtra);
    return domeTilted(givens, seat, tilt);
  }
  const top = kind === "spacer" ? -value : heightOverTop(givens, kind) - value;
  return domeUnder(givens, seat, [givens.saddleX, top], tilts);
}

/**
 * The dome whose top stands at z on the saddle line. Braces arched as the dish add nothing there;
 * otherwise what they add depends a little on the dome itself, and its lean is the one root of a
 * function that rises over the reach. Looked for by the lean, not by the height at the saddle: every
 * lean between the ends of the reach has a dome, while the height may turn where a sphere hardly
 * larger than the body ends.
 */
function domeUnderTop(givens: Givens, z: number, reach: () => ReachResult): Dome | null {
  const { dishCurvature, braceCurvature, saddleX } = givens;
  if (braceCurvature === dishCurvature) return domeAt(givens, saddleX, z);
  const reached = reach();
  if (!reached.ok) return null;
  const { thinnestDome, thickestDome } = reached.reach;
  const over = (lean: number): number => {
    const dome = domeOfLean(givens, lean);
    return dome === null ? Number.NaN : topZ(givens, dome, saddleX) - z;
  };
  const [low, high] = [thickestDome.lean, thinnestDome.lean];
  return over(low) <= slack && over(high) >= -slack
    ? domeOfLean(givens, rootBetween(over, low, high))
    : null;
}
