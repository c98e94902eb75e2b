import { degrees, radians } from "../geometry/angle.ts";
import { type Dome, domeLeaning, domeThrough, domeZ } from "../geometry/dome.ts";
import { rootBetween } from "../geometry/root.ts";
import type { Range, TargetKind } from "../instrument/instrument.ts";
import { targetFields } from "../instrument/outcome-fields.ts";
import { deg, mm, phrase, roundedDown, roundedUp } from "../instrument/phrase.ts";
import type { Objection } from "./outcome.ts";
import { domeFits, type Reach, type ReachResult, reachOf, shimUnder } from "./reach.ts";
import type { Setting } from "./setting.ts";
import { topZ } from "./top.ts";

interface Solution {
  readonly shim: number;
  readonly dome: Dome;
}

export type SolutionResult =
  | { readonly ok: true; readonly solution: Solution }
  | { readonly ok: false; readonly objection: TargetObjection };

/** For a target out of reach the nearest value is known at once; null when it is more than the field may hold. */
export interface TargetObjection extends Objection {
  readonly nearest?: number | null;
}

/** Rounding allowed at the ends of the reach, in the target's own unit, so that the ends themselves can be asked for. */
const slack = 1e-9;

/** The shim and the dome that meet the instrument's target; objects with the reachable range when nothing does. */
export function solve(setting: Setting): SolutionResult {
  const { target, body } = setting.instrument;
  let known: ReachResult | undefined;
  const reach = (): ReachResult => {
    known ??= reachOf(setting);
    return known;
  };
  const dome = domeForTarget(setting, reach);
  if (dome !== null) {
    const shim = target.kind === "shim" ? target.value : shimUnder(setting, dome);
    if (shim >= 0 && shim <= body.depthTail && domeFits(setting, dome)) {
      return { ok: true, solution: { shim, dome } };
    }
  }
  const reached = reach();
  return reached.ok ? atTheEnds(setting, reached.reach) : reached;
}

/** A target that misses the reach by rounding alone is met by its end; any other is refused. */
function atTheEnds(setting: Setting, reach: Reach): SolutionResult {
  const { thinnest, thickest, thinnestDome, thickestDome } = reach;
  const { kind, value } = setting.instrument.target;
  const [low, high] = reachableRange(setting, reach, kind);
  if (Math.abs(value - low) <= slack) {
    return { ok: true, solution: { shim: thinnest, dome: thinnestDome } };
  }
  if (Math.abs(value - high) <= slack) {
    return { ok: true, solution: { shim: thickest, dome: thickestDome } };
  }
  const show = kind === "pitch" ? deg : mm;
  const { min, max } = targetFields[kind];
  const nearest = value < low ? low : high;
  return {
    ok: false,
    objection: {
      field: "target.value",
      why: phrase`This instrument can be given ${roundedUp(show(low))} to ${roundedDown(show(high))}; ${show(value)} is out of its reach.`,
      nearest: min <= nearest && nearest <= max ? nearest : null,
    },
  };
}

/** A target's value at both ends of the reach; every one of them grows with the shim. */
export function reachableRange(setting: Setting, reach: Reach, kind: TargetKind): Range {
  if (kind === "shim") return [reach.thinnest, reach.thickest];
  return [
    outcomeOf(setting, reach.thinnestDome, kind),
    outcomeOf(setting, reach.thickestDome, kind),
  ];
}

/** What a dome gives of one target, mm or degrees. */
export function outcomeOf(setting: Setting, dome: Dome, kind: Exclude<TargetKind, "shim">): number {
  if (kind === "pitch") {
    const { tailExtra } = setting.instrument.dome;
    return degrees(Math.atan((-domeZ(dome, 0, 0) - tailExtra) / setting.breakX));
  }
  return heightOverTop(setting, kind) - topZ(setting, dome, setting.saddleX);
}

/** Height over the flat's plane at the saddle line from which a target measures down to the top. */
function heightOverTop(setting: Setting, kind: Exclude<TargetKind, "shim" | "pitch">): number {
  const { fretPlaneAtSaddle, middleString, instrument } = setting;
  const { thickness } = instrument.bridge;
  if (kind === "bridgeClearance") return fretPlaneAtSaddle - thickness;
  const string = fretPlaneAtSaddle + middleString.atSaddle;
  return kind === "stringHeight" ? string : string - thickness;
}

/** The dome through the one centreline point the target gives, in place of the shim's contact. */
function domeForTarget(setting: Setting, reach: () => ReachResult): Dome | null {
  const { kind, value } = setting.instrument.target;
  if (kind === "shim") return domeAt(setting, setting.contact, -value);
  if (kind === "pitch") {
    if (Math.abs(value) >= 90) return null;
    const rise = setting.breakX * Math.tan(radians(value));
    return domeAt(setting, 0, -rise - setting.instrument.dome.tailExtra);
  }
  return domeUnderTop(setting, heightOverTop(setting, kind) - value, reach);
}

const domeAt = (setting: Setting, x: number, z: number): Dome | null =>
  domeThrough(setting.dishCurvature, setting.breakX, setting.breakHalfWidth, x, z);

/**
 * The dome whose top stands at z on the saddle line. Braces arched as the dish add nothing there;
 * otherwise what they add depends a little on the dome itself, and its lean is the one root of a
 * function that rises over the reach. Looked for by the lean, not by the height at the saddle: every
 * lean between the ends of the reach has a dome, while the height may turn where a sphere hardly
 * larger than the body ends.
 */
function domeUnderTop(setting: Setting, z: number, reach: () => ReachResult): Dome | null {
  const { dishCurvature, braceCurvature, breakX, breakHalfWidth, saddleX } = setting;
  if (braceCurvature === dishCurvature) return domeAt(setting, saddleX, z);
  const reached = reach();
  if (!reached.ok) return null;
  const { thinnestDome, thickestDome } = reached.reach;
  const leaning = (lean: number) => domeLeaning(dishCurvature, breakX, breakHalfWidth, lean);
  const over = (lean: number): number => {
    const dome = leaning(lean);
    return dome === null ? Number.NaN : topZ(setting, dome, saddleX) - z;
  };
  const [low, high] = [thickestDome.lean, thinnestDome.lean];
  return over(low) <= slack && over(high) >= -slack ? leaning(rootBetween(over, low, high)) : null;
}
