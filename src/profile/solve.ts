import { degrees, radians } from "../geometry/circle.ts";
import { type Dome, domeLeaning, domeThrough, domeZ } from "../geometry/dome.ts";
import { rootBetween } from "../geometry/root.ts";
import type { Range, TargetKind } from "../instrument/instrument.ts";
import { targetFields } from "../instrument/outcome-fields.ts";
import { deg, mm, phrase, roundedDown, roundedUp } from "../instrument/phrase.ts";
import type { Givens } from "./givens.ts";
import type { Objection } from "./outcome.ts";
import { domeFits, type Reach, type ReachResult, reachOf, shimUnder } from "./reach.ts";
import { topZ } from "./top.ts";

interface Solution {
  readonly shim: number;
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

/** The shim and the dome that meet the instrument's target; objects with the reachable range when nothing does. */
export function solve(givens: Givens): SolutionResult {
  const { target, body } = givens.instrument;
  let known: ReachResult | undefined;
  const reach = (): ReachResult => {
    known ??= reachOf(givens);
    return known;
  };
  const dome = domeForTarget(givens, reach);
  if (dome !== null) {
    const shim = target.kind === "shim" ? target.value : shimUnder(givens, dome);
    if (shim >= 0 && shim <= body.depthTail && domeFits(givens, dome)) {
      return { ok: true, solution: { shim, dome } };
    }
  }
  const reached = reach();
  return reached.ok ? atTheEnds(givens, reached.reach) : reached;
}

/** A target that misses the reach by rounding alone is met by its end; any other is refused. */
function atTheEnds(givens: Givens, reach: Reach): SolutionResult {
  const { thinnest, thickest, thinnestDome, thickestDome } = reach;
  const { kind, value } = givens.instrument.target;
  const [low, high] = reachableRange(givens, reach, kind);
  if (Math.abs(value - low) <= slack) {
    return { ok: true, solution: { shim: thinnest, dome: thinnestDome } };
  }
  if (Math.abs(value - high) <= slack) {
    return { ok: true, solution: { shim: thickest, dome: thickestDome } };
  }
  const show = kind === "pitch" ? deg : mm;
  const { label, min, max } = targetFields[kind];
  const nearest = value < low ? low : high;
  return {
    ok: false,
    objection: {
      field: "target.value",
      why: [
        label,
        ...phrase` can be ${roundedUp(show(low))} to ${roundedDown(show(high))} on this instrument; ${show(value)} is out of its reach.`,
      ],
      reach: { range: [low, high], nearest: min <= nearest && nearest <= max ? nearest : null },
    },
  };
}

/** A target's value at both ends of the reach; every one of them grows with the shim. */
export function reachableRange(givens: Givens, reach: Reach, kind: TargetKind): Range {
  if (kind === "shim") return [reach.thinnest, reach.thickest];
  return [outcomeOf(givens, reach.thinnestDome, kind), outcomeOf(givens, reach.thickestDome, kind)];
}

/** What a dome gives of one target, mm or degrees. */
export function outcomeOf(givens: Givens, dome: Dome, kind: Exclude<TargetKind, "shim">): number {
  if (kind === "pitch") {
    const { tailExtra } = givens.instrument.dome;
    return degrees(Math.atan((-domeZ(dome, 0, 0) - tailExtra) / givens.breakX));
  }
  return heightOverTop(givens, kind) - topZ(givens, dome, givens.saddleX);
}

/** Height over the flat's plane at the saddle line from which a target measures down to the top. */
function heightOverTop(givens: Givens, kind: Exclude<TargetKind, "shim" | "pitch">): number {
  const { fretPlaneAtSaddle, middleString, instrument } = givens;
  const { thickness } = instrument.bridge;
  if (kind === "bridgeClearance") return fretPlaneAtSaddle - thickness;
  const string = fretPlaneAtSaddle + middleString.atSaddle;
  return kind === "stringHeight" ? string : string - thickness;
}

/** The dome through the one centreline point the target gives, in place of the shim's contact. */
function domeForTarget(givens: Givens, reach: () => ReachResult): Dome | null {
  const { kind, value } = givens.instrument.target;
  if (kind === "shim") return domeAt(givens, givens.contact, -value);
  if (kind === "pitch") {
    if (Math.abs(value) >= 90) return null;
    const rise = givens.breakX * Math.tan(radians(value));
    return domeAt(givens, 0, -rise - givens.instrument.dome.tailExtra);
  }
  return domeUnderTop(givens, heightOverTop(givens, kind) - value, reach);
}

const domeAt = (givens: Givens, x: number, z: number): Dome | null =>
  domeThrough(givens.dishCurvature, givens.breakX, givens.breakHalfWidth, x, z);

/**
 * The dome whose top stands at z on the saddle line. Braces arched as the dish add nothing there;
 * otherwise what they add depends a little on the dome itself, and its lean is the one root of a
 * function that rises over the reach. Looked for by the lean, not by the height at the saddle: every
 * lean between the ends of the reach has a dome, while the height may turn where a sphere hardly
 * larger than the body ends.
 */
function domeUnderTop(givens: Givens, z: number, reach: () => ReachResult): Dome | null {
  const { dishCurvature, braceCurvature, breakX, breakHalfWidth, saddleX } = givens;
  if (braceCurvature === dishCurvature) return domeAt(givens, saddleX, z);
  const reached = reach();
  if (!reached.ok) return null;
  const { thinnestDome, thickestDome } = reached.reach;
  const leaning = (lean: number) => domeLeaning(dishCurvature, breakX, breakHalfWidth, lean);
  const over = (lean: number): number => {
    const dome = leaning(lean);
    return dome === null ? Number.NaN : topZ(givens, dome, saddleX) - z;
  };
  const [low, high] = [thickestDome.lean, thinnestDome.lean];
  return over(low) <= slack && over(high) >= -slack ? leaning(rootBetween(over, low, high)) : null;
}
