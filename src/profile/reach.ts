import { sagitta } from "../geometry/circle.ts";
import { type Dome, domeLeaning, domeThrough, domeZ } from "../geometry/dome.ts";
import { numberAt } from "../geometry/number-at.ts";
import { edgeOf, highestOn, lowestOn } from "../geometry/outline/edge.ts";
import { highest } from "../geometry/peak.ts";
import { rootBetween } from "../geometry/root.ts";
import type { Range } from "../instrument/instrument.ts";
import { mm, phrase } from "../instrument/phrase.ts";
import { domedEnd, type Givens, type SeatPlace } from "./givens.ts";
import { type Half, type Halves, spanAt } from "./halves.ts";
import type { Objection, Reach } from "./outcome.ts";
import { domeUnder } from "./seat.ts";
import { sinksOnSeat, spacerReach, spacerUnder } from "./spacer-reach.ts";
import { topTurn } from "./top.ts";

/** The shim's thickness, or with a seat the spacer's, that a dome asks for. */
export const partUnder = (givens: Givens, dome: Dome): number =>
  givens.seat === null ? shimUnder(givens, dome) : spacerUnder(givens, dome);

/** The dome that a shim, or with a seat a spacer, of thickness t makes; null where there is none. */
export function domeOnPart(givens: Givens, t: number): Dome | null {
  const { seat } = givens;
  if (seat === null) return domeOnShim(givens, t);
  const tilts = coveringTilts(givens);
  return tilts === null ? null : domeUnder(givens, seat, [givens.saddleX, -t], tilts);
}

export type ReachResult =
  | { readonly ok: true; readonly reach: Reach }
  | { readonly ok: false; readonly objection: Objection };

/** The dome through both ends of the break line and (x, 0, z). */
export function domeAt(givens: Givens, x: number, z: number): Dome | null {
  const { dishCurvature, breakX, breakHalfWidth, breakMiddle } = givens;
  return domeThrough(dishCurvature, breakX, breakHalfWidth, x, z, 0, breakMiddle);
}

/** The dome through both ends of the break line with this lean. */
export function domeOfLean(givens: Givens, lean: number): Dome | null {
  const { dishCurvature, breakX, breakHalfWidth, breakMiddle } = givens;
  return domeLeaning(dishCurvature, breakX, breakHalfWidth, lean, 0, breakMiddle);
}

/** The dome of a shim of thickness t: the rim rests on it `contact` in from the tail end. */
export const domeOnShim = (givens: Givens, t: number): Dome | null =>
  domeAt(givens, givens.contact, -t);

/** The shim under a dome: how far its centreline lies below the flat at the contact. */
export const shimUnder = (givens: Givens, dome: Dome): number => -domeZ(dome, givens.contact, 0);

/**
 * From no shim to one as thick as the finished rim is deep at the tail, of those whose dome fits. A
 * thicker shim leans the dome less, and what fits is one interval of leans, looked for only when its
 * ends are not the two first named. Objects when nothing is left.
 */
export function reachOf(givens: Givens): ReachResult {
  if (givens.seat !== null) return reachOnSeat(givens, givens.seat);
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

function reachOnSeat(givens: Givens, seat: SeatPlace): ReachResult {
  const tilts = coveringTilts(givens);
  const reach = tilts === null ? null : spacerReach(givens, seat, tilts);
  return reach === null
    ? { ok: false, objection: objectionToSeat(givens, seat, tilts) }
    : { ok: true, reach };
}

/** A plane's slope, so far from level that no instrument's comes near it. */
const steepest = 0.9;

/** The tilts at the neck end of the domes that reach over the whole outline; null when none does. */
export function coveringTilts(givens: Givens): Range | null {
  const { dishCurvature, braceCurvature, breakX } = givens;
  if (dishCurvature === 0) return archesOver(givens, braceCurvature) ? [-steepest, steepest] : null;
  const centres = coveringCentres(givens, Math.max(dishCurvature, braceCurvature));
  if (centres === null) return null;
  const [tailmost, neckmost] = centres;
  return [dishCurvature * (breakX - neckmost), dishCurvature * (breakX - tailmost)];
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

/**
 * Whether dish and brace spheres reach over the whole domed part of the rim, and a thicker shim
 * would lower the centreline at contact and saddle, as it does for every dome of a sane size.
 */
export function domeFits(givens: Givens, dome: Dome): boolean {
  const { halves, dishCurvature, braceCurvature } = givens;
  if (dishCurvature === 0) return archesOver(givens, braceCurvature);
  const sharper = Math.max(1, braceCurvature / dishCurvature);
  if (!sphereCovers(dome, halves, domedEnds(givens), sharper)) return false;
  return givens.seat === null ? sinks(givens, dome) : sinksOnSeat(givens, dome);
}

/** How much of its radius a sphere must have to spare, so that no rounding puts a rim beyond it. */
const spare = 1e-12;

/** Whether braces of this curvature, standing square to the centreline, span the domed part from edge to edge. */
function archesOver(givens: Givens, curvature: number): boolean {
  const { halves } = givens;
  const most = 1 - spare;
  const widest = halves.reduce((sum, { outline }) => sum + outline.widest, 0) / halves.length;
  return curvature * widest <= most || curvature * widestSpan(givens) <= most;
}

/** Half of the widest span between the edges over the domed part. */
function widestSpan(givens: Givens): number {
  const { halves } = givens;
  const xs = [...new Set(halves.flatMap((half) => edgeOf(half.outline, givens.breakX).us))];
  const places = xs.filter((x) => x <= givens.breakX).sort((a, b) => a - b);
  const span = (x: number): number => spanAt(halves, x).half;
  return highest(span, places, places.map(span)).value;
}

/** Where the domed part of each half ends. */
const domedEnds = (givens: Givens): readonly number[] =>
  givens.halves.map((half) => domedEnd(givens, half));

/**
 * Whether the dome's sphere, its radius divided by `sharper`, reaches over each half from the tail to its place
 * of `ends`. A box round that part settles it for any sphere of a sane size, and its length for those far
 * too small.
 */
export function sphereCovers(
  dome: Dome,
  halves: Halves,
  ends: readonly number[],
  sharper: number,
): boolean {
  const least = (1 - spare) / (sharper * sharper);
  return halves.every((half, i) => {
    const to = numberAt(ends, i);
    const length = Math.min(to, half.outline.length);
    const tail = dome.lean - dome.curvature * dome.axis;
    const end = dome.lean - dome.curvature * (dome.axis - length);
    const widest = half.outline.widest + Math.abs(dome.middle);
    const box = Math.max(tail * tail, end * end) + (dome.curvature * widest) ** 2;
    if (box <= least) return true;
    return (dome.curvature * (length / 2)) ** 2 <= least && farthest(dome, half, to) <= least;
  });
}

/** Greatest of κ²((x − cx)² + (y − cy)²) over a half from the tail to u = `to`. */
function farthest(dome: Dome, { outline, sign }: Half, to: number): number {
  const distance2 = (x: number, halfWidth: number): number =>
    (dome.lean - dome.curvature * (dome.axis - x)) ** 2 +
    (dome.curvature * (sign * halfWidth - dome.middle)) ** 2;
  return highestOn(outline, edgeOf(outline, to), distance2).value;
}

function sinks(givens: Givens, dome: Dome): boolean {
  return dome.lean >= leastSinking(givens) && topTurn(givens, dome) >= 0;
}

/**
 * The least lean at which the dome's centreline still falls at contact and saddle as a shim grows.
 * It turns about the break's rim points, s = how far it arches over their axis on the centreline: the place
 * straight out from there, s·lean/√(1 − κ²yb²) from the break, is where falling turns to rising.
 */
function leastSinking(givens: Givens): number {
  const { dishCurvature, breakX, breakHalfWidth, breakMiddle, saddleX, contact } = givens;
  const nearest = breakX - Math.max(saddleX, contact);
  const upright = Math.sqrt(1 - (dishCurvature * breakHalfWidth) ** 2);
  const arch = sagitta(dishCurvature, breakHalfWidth) - sagitta(dishCurvature, breakMiddle);
  return (-nearest * upright) / arch;
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
 * Where along the body a sphere's centre may stand, on its own line beside the centreline, for it to reach
 * over the domed part: within √(R² − (y − cy)²) of each place (x, y) of both edges. Null when nowhere, as
 * when y − cy exceeds R.
 */
function coveringCentres(givens: Givens, curvature: number): Range | null {
  const { halves, seat } = givens;
  const radius = (1 - spare) / curvature;
  if (radius < givens.breakX / 2) return null;
  const middle = seat === null ? givens.breakMiddle : 0;
  const ranges = halves.map((half): Range => {
    const { outline, sign } = half;
    const edge = edgeOf(outline, domedEnd(givens, half));
    const within = (halfWidth: number): number => {
      const y = sign * halfWidth - middle;
      return Math.sqrt(Math.max(0, (radius - y) * (radius + y)));
    };
    const after = (x: number, y: number): number => x - within(y);
    const before = (x: number, y: number): number => x + within(y);
    return [highestOn(outline, edge, after).value, lowestOn(outline, edge, before).value];
  });
  const tailmost = Math.max(...ranges.map(([low]) => low));
  const neckmost = Math.min(...ranges.map(([, high]) => high));
  return tailmost < neckmost ? [tailmost, neckmost] : null;
}

/** Why no spacer will do: braces or dish too small, or sides too shallow for the tail to lie so low. */
function objectionToSeat(givens: Givens, seat: SeatPlace, tilts: Range | null): Objection {
  if (tilts === null) return objectionToSphere(givens, "spacer");
  const { dishCurvature, braceCurvature, instrument } = givens;
  const onTop = domeUnder(givens, seat, [givens.saddleX, 0], tilts);
  const drop = onTop === null ? 0 : -domeZ(onTop, 0, 0);
  if (drop > instrument.body.depthTail) {
    return {
      field: "body.depthTail",
      why: phrase`Even with no spacer the tail end would lie ${mm(drop)} under the seat's plane, deeper than the sides are.`,
    };
  }
  return {
    field: braceCurvature > dishCurvature ? "dome.braceRadius" : "dome.dishRadius",
    why: phrase`A top arched this sharply cannot be tipped so far that the saddle comes under the seat's plane.`,
  };
}

/** Why no shim will do: braces or dish too small, or a break so near that the dome cannot be turned. */
function objectionTo(givens: Givens): Objection {
  const { breakX, contact, instrument } = givens;
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
  return objectionToSphere(givens, "shim");
}

/** That braces or dish are too sharply curved to reach over the rim. */
function objectionToSphere(givens: Givens, part: "shim" | "spacer"): Objection {
  const { dishCurvature, braceCurvature } = givens;
  if (
    braceCurvature > dishCurvature &&
    (dishCurvature === 0 || coveringCentres(givens, dishCurvature) !== null)
  ) {
    return {
      field: "dome.braceRadius",
      why: [`Braces arched this sharply would end short of the rim, whatever the ${part}.`],
    };
  }
  return {
    field: "dome.dishRadius",
    why: [`A sphere this small ends short of the rim, whatever the ${part}.`],
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
