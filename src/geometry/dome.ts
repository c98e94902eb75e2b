/**
 * A sphere, or the plane it becomes when it has no curvature, that holds two fixed rim points
 * (x = axis, y = ±halfWidth, z = 0) and may turn about the line between them. z is up, out of the dome.
 *
 * Kept by its curvature κ = 1/R and the unit-like vector (lean, rise) = κ·(axis − cx, −cz), where
 * (cx, cz) is the centre. With d = axis − x the surface is the root of
 * κz² + 2·rise·z = q,  q = d(2·lean − κd) + κ(halfWidth² − y²),
 * which subtracts nothing large from anything large, and with κ = 0 is the plane z = d·lean/rise.
 */
export interface Dome {
  readonly curvature: number;
  readonly axis: number;
  readonly halfWidth: number;
  readonly lean: number;
  readonly rise: number;
}

/**
 * The dome of `curvature` (1/mm, 0 for a plane) through (axis, ±halfWidth, 0) and the centreline
 * point (x, 0, z), centre below; null when there is none: the points are too far apart for it.
 * x < axis.
 */
export function domeThrough(
  curvature: number,
  axis: number,
  halfWidth: number,
  x: number,
  z: number,
): Dome | null {
  const reach = axis - x;
  const chord = Math.hypot(reach, z);
  // Along the chord to the point, and square to it, the centre lies at `along` and `across` (times κ).
  const along = (curvature * (chord * chord - halfWidth * halfWidth)) / (2 * chord);
  const across2 = 1 - (curvature * halfWidth) ** 2 - along * along;
  if (!(across2 >= 0) || !(reach > 0)) return null;
  const across = Math.sqrt(across2);
  const lean = (along * reach + z * across) / chord;
  const rise = (across * reach - along * z) / chord;
  // The point must lie on the upper half: z over the centre's −rise/κ.
  return rise > 0 && rise + curvature * z > 0 ? { curvature, axis, halfWidth, lean, rise } : null;
}

/** The dome turned so that its `lean` is the one given; null when it would have no top. */
export function domeLeaning(
  curvature: number,
  axis: number,
  halfWidth: number,
  lean: number,
): Dome | null {
  const rise2 = 1 - (curvature * halfWidth) ** 2 - lean * lean;
  return rise2 > 0 ? { curvature, axis, halfWidth, lean, rise: Math.sqrt(rise2) } : null;
}

/** Height of the dome over the flat at (x, y); NaN beyond the sphere's own edge. */
export function domeZ(dome: Dome, x: number, y: number): number {
  const { curvature, axis, halfWidth, lean, rise } = dome;
  const d = axis - x;
  const q = d * (2 * lean - curvature * d) + curvature * (halfWidth - y) * (halfWidth + y);
  return q / (Math.sqrt(rise * rise + curvature * q) + rise);
}

/** x of the sphere's centre measured from the break, toward the tail, times the curvature at x: κ(x − cx) = lean − κd. */
export function domeTilt(dome: Dome, x: number): number {
  return dome.lean - dome.curvature * (dome.axis - x);
}

/** d(domeZ)/dx on the centreline at x: from κz² + 2·rise·z = q, −(lean − κd)/(κz + rise). */
export function domeSlope(dome: Dome, x: number): number {
  return -domeTilt(dome, x) / (dome.curvature * domeZ(dome, x, 0) + dome.rise);
}

/**
 * d(domeZ)/d(lean) on the centreline at x, the rim points held: from κz² + 2·rise·z = q with
 * rise² + lean² fixed, (d + z·lean/rise)/(κz + rise).
 */
export function domeTurn(dome: Dome, x: number): number {
  const { curvature, axis, lean, rise } = dome;
  const z = domeZ(dome, x, 0);
  return (axis - x + (z * lean) / rise) / (curvature * z + rise);
}
