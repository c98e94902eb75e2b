import { type Dome, domeLeaning, domeThrough, domeZ } from "../geometry/dome.ts";
import { along, edgeOf } from "../geometry/edge.ts";
import { enclosingCircle } from "../geometry/enclosing-circle.ts";
import type { Outline } from "../geometry/outline.ts";
import { highest } from "../geometry/peak.ts";
import { phrase } from "../instrument/phrase.ts";
import type { Objection } from "./objection.ts";
import type { Setting } from "./setting.ts";

/** The shims an instrument can be given, thinnest first, each with the dome it makes. */
export interface Reach {
  readonly thinnest: number;
  readonly thickest: number;
  readonly thinnestDome: Dome;
  readonly thickestDome: Dome;
}

export type ReachResult =
  | { readonly ok: true; readonly reach: Reach }
  | { readonly ok: false; readonly objection: Objection };

/** The dome of a shim of thickness t: the rim rests on it `contact` in from the tail end. */
export function domeOnShim(setting: Setting, t: number): Dome | null {
  const { dishCurvature, breakX, breakHalfWidth, instrument } = setting;
  return domeThrough(dishCurvature, breakX, breakHalfWidth, instrument.shim.contact, -t);
}

/** The shim under a dome: how far its centreline lies below the flat at the contact. */
export const shimUnder = (setting: Setting, dome: Dome): number =>
  -domeZ(dome, setting.instrument.shim.contact, 0);

/**
 * From no shim to one as thick as the finished rim is deep at the tail, where neither the dish nor
 * the braces' sphere ends short of the rim: √((x − cx)² + y²) stays within both radii all round the
 * domed part. That distance is convex in cx, so what fits is one interval, found by halving where
 * its ends are not the two first named. Objects when not even the best-placed sphere fits.
 */
export function reachOf(setting: Setting): ReachResult {
  const deepest = setting.instrument.body.depthTail;
  const flat = fittingDome(setting, 0);
  const steep = fittingDome(setting, deepest);
  if (flat !== null && steep !== null) return found(0, flat, deepest, steep);
  const anchor = Math.min(deepest, Math.max(0, bestPlacedShim(setting)));
  if (fittingDome(setting, anchor) === null) return { ok: false, objection: tooSmall(setting) };
  const low = flat === null ? edgeOfFit(setting, anchor, 0) : 0;
  const high = steep === null ? edgeOfFit(setting, anchor, deepest) : deepest;
  const [lowDome, highDome] = [fittingDome(setting, low), fittingDome(setting, high)];
  if (lowDome === null || highDome === null) return { ok: false, objection: tooSmall(setting) };
  return found(low, lowDome, high, highDome);
}

function found(
  thinnest: number,
  thinnestDome: Dome,
  thickest: number,
  thickestDome: Dome,
): ReachResult {
  return { ok: true, reach: { thinnest, thickest, thinnestDome, thickestDome } };
}

function fittingDome(setting: Setting, t: number): Dome | null {
  const dome = domeOnShim(setting, t);
  return dome !== null && domeFits(setting, dome) ? dome : null;
}

/** Whether dish and brace spheres reach over the whole domed part of the rim. */
export function domeFits(setting: Setting, dome: Dome): boolean {
  const { outline, breakX, dishCurvature, braceCurvature } = setting;
  if (dishCurvature === 0) return braceCurvature * outline.widest <= 1;
  const sharper = Math.max(1, braceCurvature / dishCurvature);
  return sphereCovers(dome, outline, breakX, sharper);
}

/**
 * Whether the dome's sphere, its radius divided by `sharper`, reaches over the outline from the tail
 * to x = `to`. A box round that part settles it for any sphere of a sane size.
 */
export function sphereCovers(dome: Dome, outline: Outline, to: number, sharper: number): boolean {
  const tail = dome.lean - dome.curvature * dome.axis;
  const end = dome.lean - dome.curvature * (dome.axis - to);
  const box = Math.max(tail * tail, end * end) + (dome.curvature * outline.widest) ** 2;
  if (box * sharper * sharper <= 1) return true;
  return farthest(dome, outline, to) * sharper * sharper <= 1;
}

/** Greatest of κ²((x − cx)² + y²) over the outline from the tail to x = `to`. */
function farthest(dome: Dome, outline: Outline, to: number): number {
  const edge = edgeOf(outline, to);
  const distance2 = (x: number, y: number): number =>
    (dome.lean - dome.curvature * (dome.axis - x)) ** 2 + (dome.curvature * y) ** 2;
  return highest((x) => distance2(x, outline.halfWidth(x)), edge.xs, along(edge, distance2)).value;
}

/** The shim that sets the sphere over the middle of the smallest circle round the domed part. */
function bestPlacedShim(setting: Setting): number {
  const { dishCurvature, breakX, breakHalfWidth, outline } = setting;
  const { centreX } = enclosingCircle(outline, breakX);
  const dome = domeLeaning(
    dishCurvature,
    breakX,
    breakHalfWidth,
    dishCurvature * (breakX - centreX),
  );
  return dome === null ? Number.NaN : shimUnder(setting, dome);
}

function tooSmall({ dishCurvature, braceCurvature }: Setting): Objection {
  const brace = braceCurvature > dishCurvature;
  return {
    field: brace ? "dome.braceRadius" : "dome.dishRadius",
    why: brace
      ? phrase`Braces arched this sharply would end short of the rim.`
      : phrase`A sphere this small ends short of the rim, however it is turned.`,
  };
}

/** Between a shim that fits and one that does not, the last that does. */
function edgeOfFit(setting: Setting, fits: number, fails: number): number {
  let [inside, outside] = [fits, fails];
  for (let halving = 0; halving < 60; halving++) {
    const middle = (inside + outside) / 2;
    if (fittingDome(setting, middle) === null) outside = middle;
    else inside = middle;
  }
  return inside;
}
