import { sagitta } from "../geometry/circle.ts";
import { type Dome, domeLeaning, domeThrough, domeZ } from "../geometry/dome.ts";
import { along, edgeOf } from "../geometry/outline/edge.ts";
import type { Outline } from "../geometry/outline/outline.ts";
import { highest, lowest } from "../geometry/peak.ts";
import { rootBetween } from "../geometry/root.ts";
import type { Range } from "../instrument/instrument.ts";
import { mm, phrase } from "../instrument/phrase.ts";
import type { Givens } from "./givens.ts";
import type { Objection } from "./outcome.ts";
import { topTurn } from "./top.ts";

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
export function domeOnShim(givens: Givens, t: number): Dome | null {
  const { dishCurvature, breakX, breakHalfWidth, contact } = givens;
  return domeThrough(dishCurvature, breakX, breakHalfWidth, contact, -t);
}

/** The shim under a dome: how far its centreline lies below the flat at the contact. */
export const shimUnder = (givens: Givens, dome: Dome): number => -domeZ(dome, givens.contact, 0);

/**
 * From no shim to one as thick as the finished rim is deep at the tail, of those whose dome fits. A
 * thicker shim leans the dome less, and what fits is one interval of leans, looked for only when its
 * ends are not the two first named. Objects when nothing is left.
 */
export function reachOf(givens: Givens): ReachResult {
  const deepest = givens.instrument.body.depthTail;
  const [flat, steep] = [fittingDome(givens, 0), fittingDome(givens, deepest)];
  if (flat !== null && steep !== null) return found(0, flat, deepest, steep);
  const leans = fittingLeans(givens);
  if (leans === null) return { ok: false, objection: objectionTo(givens) };
  const [least, most] = leans.map((lean) => domeOfLean(givens, lean));
  const [thinDome, thickDome] = [flat ?? most ?? null, steep ?? least ?? null];
  if (thinDome === null || thickDome === null) {
    return { ok: false, objection: objectionTo(givens) };
  }
  const thinnest = flat === null ? shimUnder(givens, thinDome) : 0;
  const thickest = steep === null ? shimUnder(givens, thickDome) : deepest;
  return 0 <= thinnest && thinnest <= thickest && thickest <= deepest
    ? found(thinnest, thinDome, thickest, thickDome)
    : { ok: false, objection: objectionTo(givens) };
}

function found(
  thinnest: number,
  thinnestDome: Dome,
  thickest: number,
  thickestDome: Dome,
): ReachResult {
  return { ok: true, reach: { thinnest, thickest, thinnestDome, thickestDome } };
}

function fittingDome(givens: Givens, t: number): Dome | null {
  const dome = domeOnShim(givens, t);
  return dome !== null && domeFits(givens, dome) ? dome : null;
}

const domeOfLean = ({ dishCurvature, breakX, breakHalfWidth }: Givens, lean: number) =>
  domeLeaning(dishCurvature, breakX, breakHalfWidth, lean);

/**
 * Whether dish and brace spheres reach over the whole domed part of the rim, and a thicker shim
 * would lower the centreline at contact and saddle, as it does for every dome of a sane size.
 */
export function domeFits(givens: Givens, dome: Dome): boolean {
  const { outline, breakX, dishCurvature, braceCurvature } = givens;
  if (dishCurvature === 0) return archesOver(braceCurvature, outline, breakX);
  const sharper = Math.max(1, braceCurvature / dishCurvature);
  return sphereCovers(dome, outline, breakX, sharper) && sinks(givens, dome);
}

/** How much of its radius a sphere must have to spare, so that no rounding puts a rim beyond it. */
const spare = 1e-12;

/** Whether braces of this curvature, standing square to the centreline, span the outline to x = `to`. */
const archesOver = (curvature: number, outline: Outline, to: number): boolean =>
  curvature * outline.widest <= 1 - spare || curvature * widestIn(outline, to) <= 1 - spare;

/**
 * Whether the dome's sphere, its radius divided by `sharper`, reaches over the outline from the tail
 * to x = `to`. A box round that part settles it for any sphere of a sane size, and its length for
 * those far too small.
 */
export function sphereCovers(dome: Dome, outline: Outline, to: number, sharper: number): boolean {
  const tail = dome.lean - dome.curvature * dome.axis;
  const end = dome.lean - dome.curvature * (dome.axis - to);
  const box = Math.max(tail * tail, end * end) + (dome.curvature * outline.widest) ** 2;
  const least = (1 - spare) / (sharper * sharper);
  if (box <= least) return true;
  return (dome.curvature * (to / 2)) ** 2 <= least && farthest(dome, outline, to) <= least;
}

/** Greatest of κ²((x − cx)² + y²) over the outline from the tail to x = `to`. */
function farthest(dome: Dome, outline: Outline, to: number): number {
  const edge = edgeOf(outline, to);
  const distance2 = (x: number, y = outline.halfWidth(x)): number =>
    (dome.lean - dome.curvature * (dome.axis - x)) ** 2 + (dome.curvature * y) ** 2;
  return highest(distance2, edge.xs, along(edge, distance2)).value;
}

function sinks(givens: Givens, dome: Dome): boolean {
  return dome.lean >= leastSinking(givens) && topTurn(givens, dome) >= 0;
}

/**
 * The least lean at which the dome's centreline still falls at contact and saddle as a shim grows.
 * It turns about the break's rim points, s = sagitta over the axis between them: the place straight
 * out from there, s·lean/√(1 − κ²yb²) from the break, is where falling turns to rising.
 */
function leastSinking(givens: Givens): number {
  const { dishCurvature, breakX, breakHalfWidth, saddleX, contact } = givens;
  const nearest = breakX - Math.max(saddleX, contact);
  const upright = Math.sqrt(1 - (dishCurvature * breakHalfWidth) ** 2);
  return (-nearest * upright) / sagitta(dishCurvature, breakHalfWidth);
}

/** The leans of the domes that fit, least first; null when there are none. */
function fittingLeans(givens: Givens): Range | null {
  const { dishCurvature, braceCurvature, breakX } = givens;
  const centres = coveringCentres(givens, Math.max(dishCurvature, braceCurvature));
  if (centres === null || dishCurvature === 0) return null;
  const [tailmost, neckmost] = centres;
  const low = Math.max(dishCurvature * (breakX - neckmost), leastSinking(givens));
  const high = dishCurvature * (breakX - tailmost);
  const turn = (lean: number): number => {
    const dome = domeOfLean(givens, lean);
    return dome === null ? Number.NaN : topTurn(givens, dome);
  };
  const [atLow, atHigh] = [turn(low), turn(high)];
  if (atLow < 0 && atHigh > 0) return [rootBetween(turn, low, high), high];
  if (atLow > 0 && atHigh < 0) return [low, rootBetween(turn, low, high)];
  return low <= high && atLow >= 0 && atHigh >= 0 ? [low, high] : null;
}

/**
 * Where on the centreline a sphere's centre may stand for it to reach over the domed part: within
 * √(R² − y²) of each place (x, y) of the edge. Null when nowhere, as when y exceeds R.
 */
function coveringCentres({ outline, breakX }: Givens, curvature: number): Range | null {
  const radius = (1 - spare) / curvature;
  if (radius < breakX / 2) return null;
  const edge = edgeOf(outline, breakX);
  const within = (y: number): number => Math.sqrt(Math.max(0, (radius - y) * (radius + y)));
  const after = (x: number, y = outline.halfWidth(x)): number => x - within(y);
  const before = (x: number, y = outline.halfWidth(x)): number => x + within(y);
  const tailmost = highest(after, edge.xs, along(edge, after)).value;
  const neckmost = lowest(before, edge.xs, along(edge, before)).value;
  return tailmost < neckmost ? [tailmost, neckmost] : null;
}

function widestIn(outline: Outline, to: number): number {
  const edge = edgeOf(outline, to);
  return highest((x) => outline.halfWidth(x), edge.xs, edge.halfWidths).value;
}

/** Why no shim will do: braces or dish too small, or a break so near that the dome cannot be turned. */
function objectionTo(givens: Givens): Objection {
  const { dishCurvature, braceCurvature, breakX, contact, instrument } = givens;
  const shims = coveringShims(givens);
  if (shims !== null && shims[1] < 0) {
    return {
      field: "shim.contact",
      why: phrase`The shim would touch ${mm(breakX - contact)} from the break, where the dome stands over the flat whatever the shim.`,
    };
  }
  if (shims !== null && shims[0] <= instrument.body.depthTail) {
    return {
      field: "dome.flatLength",
      why: phrase`The flat comes so close to the saddle or the shim that a thicker shim would lift the top there.`,
    };
  }
  if (
    braceCurvature > dishCurvature &&
    (dishCurvature === 0 || coveringCentres(givens, dishCurvature) !== null)
  ) {
    return {
      field: "dome.braceRadius",
      why: phrase`Braces arched this sharply would end short of the rim, whatever the shim.`,
    };
  }
  return {
    field: "dome.dishRadius",
    why: phrase`A sphere this small ends short of the rim, whatever the shim.`,
  };
}

/** The thinnest and the thickest shim whose dome covers the domed part, negative ones too; null when there is none, or no dome. */
function coveringShims(givens: Givens): Range | null {
  const { dishCurvature, braceCurvature, breakX } = givens;
  if (dishCurvature === 0) return null;
  const centres = coveringCentres(givens, Math.max(dishCurvature, braceCurvature));
  if (centres === null) return null;
  const [thin, thick] = centres
    .map((centre) => domeOfLean(givens, dishCurvature * (breakX - centre)))
    .map((dome) => (dome === null ? Number.NaN : shimUnder(givens, dome)));
  return thin === undefined || thick === undefined || Number.isNaN(thin + thick)
    ? null
    : [thin, thick];
}
