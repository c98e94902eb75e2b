import { sagitta } from "../geometry/circle.ts";
import { type Dome, domeSlope, domeTilt, domeTurn, domeZ } from "../geometry/dome.ts";
import { type Givens, isDomed } from "./givens.ts";
import { type Span, spanAt, spanSlopeAt } from "./halves.ts";

/**
 * Height of the top on the centreline over the flat's plane, mm: the dome, and what braces arched to
 * another radius add between the rims; 0 on the flat. A top of even thickness lies this much
 * over its seat everywhere, so its thickness cancels out of every result and is left out.
 */
export function topZ(givens: Givens, dome: Dome, x: number): number {
  const { saddleX, saddleSpan, halves } = givens;
  if (!isDomed(givens, x)) return 0;
  const span = x === saddleX ? saddleSpan : spanAt(halves, x);
  return domeZ(dome, x, 0) + braceLift(givens, domeTilt(dome, x), span, 0);
}

/** How much higher the top stands at x than on the saddle line, mm. */
export const topRise =
  (givens: Givens, dome: Dome) =>
  (x: number): number =>
    topZ(givens, dome, x) - topZ(givens, dome, givens.saddleX);

/**
 * What the braces add to the dome at y, where its tilt is κ(x − cx): the arch of their own radius over the
 * span between the body's edges at that place of it, less the dish's. Both arches are the cross sections at x of spheres about one centre: radius
 * √(R² − (x − cx)²), so curvature κ/√(1 − κ²(x − cx)²). Where there is no dome there is no centre,
 * and a brace simply stands square to the centreline with its full radius.
 */
export function braceLift(
  { dishCurvature, braceCurvature }: Givens,
  dishTilt: number,
  { half, middle }: Span,
  y: number,
): number {
  if (braceCurvature === dishCurvature) return 0;
  const brace = crossCurvature(
    braceCurvature,
    braceTiltAt(dishCurvature, braceCurvature, dishTilt),
  );
  const dish = crossCurvature(dishCurvature, dishCurvature === 0 ? 0 : dishTilt);
  const more = (from: number): number => sagitta(brace, from) - sagitta(dish, from);
  return more(half) - more(y - middle);
}

/** The tilt of the braces' sphere about the dish's centre; none where there is no such centre. */
const braceTiltAt = (dishCurvature: number, braceCurvature: number, dishTilt: number): number =>
  dishCurvature === 0 ? 0 : (dishTilt * braceCurvature) / dishCurvature;

/**
 * d(topZ)/d(lean) on the saddle line: how the top there rises as the dome leans more, so falls as the
 * shim thickens. Not negative but where a sphere hardly larger than the body is turned far.
 */
export function topTurn(givens: Givens, dome: Dome): number {
  const { saddleX, saddleSpan, dishCurvature, braceCurvature } = givens;
  const turn = domeTurn(dome, saddleX);
  if (braceCurvature === dishCurvature || dishCurvature === 0) return turn;
  const dishTilt = domeTilt(dome, saddleX);
  const share = braceCurvature / dishCurvature;
  const { half, middle } = saddleSpan;
  const braces = (from: number): number => sagittaTurn(braceCurvature, dishTilt * share, from);
  const dish = (from: number): number => sagittaTurn(dishCurvature, dishTilt, from);
  return turn + share * (braces(half) - braces(middle)) - (dish(half) - dish(middle));
}

/** d(topZ)/dx on the saddle line: how steeply the top falls toward the tail there. */
export function topSlope(givens: Givens, dome: Dome): number {
  const { halves, saddleX, saddleSpan, dishCurvature, braceCurvature } = givens;
  const slope = domeSlope(dome, saddleX);
  if (braceCurvature === dishCurvature) return slope;
  const widening = spanSlopeAt(halves, saddleX);
  const dishTilt = dishCurvature === 0 ? 0 : domeTilt(dome, saddleX);
  const braceTilt = braceTiltAt(dishCurvature, braceCurvature, dishTilt);
  const arches = (curvature: number, tilt: number): number =>
    archSlope(curvature, tilt, saddleSpan.half, widening.half) -
    archSlope(curvature, tilt, saddleSpan.middle, widening.middle);
  return slope + arches(braceCurvature, braceTilt) - arches(dishCurvature, dishTilt);
}

/** d/dx of the sagitta of a sphere's cross section: its curvature's tilt grows by κ along x, its half width by `widening`. */
const archSlope = (curvature: number, tilt: number, halfWidth: number, widening: number): number =>
  curvature * sagittaTurn(curvature, tilt, halfWidth) +
  widening * sagittaSlope(crossCurvature(curvature, tilt), halfWidth);

/** d/dw of the sagitta over half a width w: κw/√(1 − κ²w²). */
const sagittaSlope = (curvature: number, halfWidth: number): number =>
  (curvature * halfWidth) / Math.sqrt(1 - (curvature * halfWidth) ** 2);

/** d/d(tilt) of the sagitta over half a width w at the curvature of the cross section, c: c·tilt/(1 − tilt²) · w²/(q(1 + q)), q² = 1 − c²w². */
function sagittaTurn(curvature: number, tilt: number, halfWidth: number): number {
  const cross = crossCurvature(curvature, tilt);
  const q = Math.sqrt(1 - (cross * halfWidth) ** 2);
  return ((cross * tilt) / (1 - tilt * tilt)) * (halfWidth ** 2 / (q * (1 + q)));
}

const crossCurvature = (curvature: number, tilt: number): number =>
  curvature / Math.sqrt(1 - tilt * tilt);

/** From where on the finished top is flat, to the neck end: the break, or the seat's end. */
export const flatFromX = ({ seat, breakX }: Givens): number => seat?.fromX ?? breakX;

/**
 * The top as built, for drawing: the plate takes up the step between the flat brace and the first
 * domed one over `blendLength` tailward of the break, here as a curve that meets both along their own
 * slopes. Where a seat is sanded, the plate is cut down to it. Nothing is computed from it.
 */
export function blendedTopZ(givens: Givens, dome: Dome, x: number): number {
  const { seat } = givens;
  if (seat !== null)
    return x < seat.fromX ? topZ(givens, dome, x) : Math.min(0, topZ(givens, dome, x));
  const { blendLength } = givens.instrument.dome;
  const z = topZ(givens, dome, x);
  const share = (givens.breakX - x) / blendLength;
  return share >= 0 && share < 1 ? z * share * share * (3 - 2 * share) : z;
}
