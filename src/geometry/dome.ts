/**
 * A sphere, or the plane it becomes when it has no curvature, that holds two fixed points
 * (x = axis, y = middle ± halfWidth, z = level) and may turn about the line between them. z is up, out of the dome.
 *
 * Kept by its curvature κ = 1/R and the unit-like vector (lean, rise) = κ·(axis − cx, level − cz), where
 * (cx, middle, cz) is the centre. With d = axis − x and u = z − level the surface is the root of
 * κu² + 2·rise·u = q,  q = d(2·lean − κd) + κ(halfWidth² − (y − middle)²),
 * which subtracts nothing large from anything large, and with κ = 0 is the plane z = d·lean/rise.
 */
export interface Dome {
  readonly curvature: number;
  readonly axis: number;
  readonly halfWidth: number;
  readonly level: number;
  /** Of the two points; off the centreline where a body's halves differ. */
  readonly middle: number;
  readonly lean: number;
  readonly rise: number;
}

/**
 * The dome of `curvature` (1/mm, 0 for a plane) through (axis, middle ± halfWidth, level) and the centreline
 * point (x, 0, z), centre below; null when there is none: the points are too far apart for it.
 * x < axis. In the plane y = middle the centre lies √(R² − halfWidth²) from the axis and √(R² − middle²)
 * from the point.
 */
export function domeThrough(
  curvature: number,
  axis: number,
  halfWidth: number,
  x: number,
  z: number,
  level = 0,
  middle = 0,
): Dome | null {
  const reach = axis - x;
  const u = z - level;
  const chord = Math.hypot(reach, u);
  // Along the chord to the point, and square to it, the centre lies at `along` and `across` (times κ).
  const less = (halfWidth - middle) * (halfWidth + middle);
  const along = (curvature * (chord * chord - less)) / (2 * chord);
  const across2 = 1 - (curvature * halfWidth) ** 2 - along * along;
  if (!(across2 >= 0) || !(reach > 0)) return null;
  const across = Math.sqrt(across2);
  const lean = (along * reach + u * across) / chord;
  const rise = (across * reach - along * u) / chord;
  // The point must lie on the upper half: z over the centre's −rise/κ.
  return rise > 0 && rise + curvature * u > 0
    ? { curvature, axis, halfWidth, level, middle, lean, rise }
    : null;
}

/** The dome turned so that its `lean` is the one given; null when it would have no top. */
export function domeLeaning(
  curvature: number,
  axis: number,
  halfWidth: number,
  lean: number,
  level = 0,
  middle = 0,
): Dome | null {
  const rise2 = 1 - (curvature * halfWidth) ** 2 - lean * lean;
  return rise2 > 0
    ? { curvature, axis, halfWidth, level, middle, lean, rise: Math.sqrt(rise2) }
    : null;
}

/** Height of the dome over the plane z = 0 at (x, y); NaN beyond the sphere's own edge. */
export function domeZ(dome: Dome, x: number, y: number): number {
  const { curvature, axis, halfWidth, level, middle, lean, rise } = dome;
  const [d, off] = [axis - x, y - middle];
  const q = d * (2 * lean - curvature * d) + curvature * (halfWidth - off) * (halfWidth + off);
  return level + q / (Math.sqrt(rise * rise + curvature * q) + rise);
}

/** x of the sphere's centre measured from the axis, toward the tail, times the curvature at x: κ(x − cx) = lean − κd. */
export function domeTilt(dome: Dome, x: number): number {
  return dome.lean - dome.curvature * (dome.axis - x);
}

/** d(domeZ)/dx on the centreline at x: from κu² + 2·rise·u = q, −(lean − κd)/(κu + rise). */
export function domeSlope(dome: Dome, x: number): number {
  return -domeTilt(dome, x) / (dome.curvature * (domeZ(dome, x, 0) - dome.level) + dome.rise);
}

/**
 * d(domeZ)/d(lean) on the centreline at x, the two points held: from κu² + 2·rise·u = q with
 * rise² + lean² fixed, (d + u·lean/rise)/(κu + rise).
 */
export function domeTurn(dome: Dome, x: number): number {
  const { curvature, axis, lean, rise } = dome;
  const u = domeZ(dome, x, 0) - dome.level;
  return (axis - x + (u * lean) / rise) / (curvature * u + rise);
}
