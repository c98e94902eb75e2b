import type { Instrument } from "../../src/instrument/instrument.ts";
import { type Exact, exact } from "./high-precision.ts";
import { type PreciseOutline, preciseOutline } from "./precise-outline.ts";

/** A height over the flat's plane at a place in plan. */
export type Height = (x: Exact, y: Exact) => Exact;

interface Sphere {
  readonly x: Exact;
  readonly z: Exact;
  readonly radius: Exact;
}

export interface Ground {
  readonly instrument: Instrument;
  readonly outline: PreciseOutline;
  readonly breakX: Exact;
  readonly breakHalfWidth: Exact;
  readonly saddleX: Exact;
  readonly saddleHalfWidth: Exact;
  /** Places to scan, from the tail end to the break, about 4 mm apart. */
  readonly tailSide: readonly Exact[];
}

export function groundOf(instrument: Instrument): Ground {
  const { body, dome, neck, bridge } = instrument;
  const outline = preciseOutline(body);
  const breakX = exact(body.length).minus(dome.flatLength);
  const saddleX = exact(body.length)
    .minus(toBridge(neck.scale, neck.joinFret))
    .minus(bridge.compensation);
  const steps = Math.ceil(breakX.toNumber() / 4);
  return {
    instrument,
    outline,
    breakX,
    breakHalfWidth: outline.halfWidth(breakX),
    saddleX,
    saddleHalfWidth: outline.halfWidth(saddleX),
    tailSide: Array.from({ length: steps + 1 }, (_, i) => breakX.times(i).div(steps)),
  };
}

/** From a fret to the uncompensated saddle line. */
export const toBridge = (scale: number, fret: number): Exact =>
  exact(scale).times(exact(2).pow(exact(-fret).div(12)));

/** How far a circle of the given radius falls over a half chord; a null radius is a straight line. */
export function drop(radius: Exact | null, halfChord: Exact): Exact {
  return radius === null ? exact(0) : radius.minus(legOf(radius, halfChord));
}

export const legOf = (radius: Exact, other: Exact): Exact =>
  radius.pow(2).minus(other.pow(2)).sqrt();

/**
 * Centre of the sphere through (x1, ±y1, z1) and (x2, ±y2, z2), on the side given (-1 below, 1 above):
 * Newton on the two circle equations.
 */
export function sphereThrough(
  radius: Exact,
  [x1, y1, z1]: readonly [Exact, Exact, Exact],
  [x2, y2, z2]: readonly [Exact, Exact, Exact],
  side: -1 | 1,
): Sphere {
  let x = x1.plus(x2).div(2);
  let z = radius.times(side);
  for (let turn = 0; turn < 40; turn++) {
    const [dx1, dz1, dx2, dz2] = [x1.minus(x), z1.minus(z), x2.minus(x), z2.minus(z)];
    const miss1 = dx1.pow(2).plus(y1.pow(2)).plus(dz1.pow(2)).minus(radius.pow(2));
    const miss2 = dx2.pow(2).plus(y2.pow(2)).plus(dz2.pow(2)).minus(radius.pow(2));
    const turnBy = dx1.times(dz2).minus(dx2.times(dz1)).times(2);
    const stepX = miss1.times(dz2).minus(miss2.times(dz1)).div(turnBy);
    const stepZ = miss2.times(dx1).minus(miss1.times(dx2)).div(turnBy);
    x = x.plus(stepX);
    z = z.plus(stepZ);
    if (stepX.abs().plus(stepZ.abs()).lt("1e-42")) return { x, z, radius };
  }
  throw new Error("no sphere passes through these places");
}

/** The dome that touches the break line's two ends and the shim's edge. Null is no dome, a plane. */
export function domeOn(ground: Ground, shim: Exact): { sphere: Sphere | null; height: Height } {
  const { instrument, breakX, breakHalfWidth } = ground;
  const contact = exact(Math.min(instrument.shim.contact, instrument.shim.tailBlockDepth));
  if (instrument.dome.dishRadius === null) {
    const fall = shim.div(breakX.minus(contact));
    return { sphere: null, height: (x) => x.minus(breakX).times(fall) };
  }
  const sphere = sphereThrough(
    exact(instrument.dome.dishRadius),
    [breakX, breakHalfWidth, exact(0)],
    [contact, exact(0), shim.negated()],
    -1,
  );
  return { sphere, height: (x, y) => sphereHeight(sphere, x, y) };
}

export function sphereHeight(sphere: Sphere, x: Exact, y: Exact): Exact {
  const below = sphere.radius.pow(2).minus(x.minus(sphere.x).pow(2)).minus(y.pow(2)).sqrt();
  return sphere.z.isNegative() ? sphere.z.plus(below) : sphere.z.minus(below);
}
