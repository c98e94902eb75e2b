/**
 * The two cubic Bezier shapes an outline is made of, each on the unit square and named by how it
 * looks in plan. `xi` and `eta` are the coordinates at parameter s in [0, 1], `dxi` and `deta` their
 * derivatives; both rise. `parameter` is the exact inverse of `xi`, the cubic solved for s.
 */
export interface UnitCurve {
  xi(s: number): number;
  dxi(s: number): number;
  eta(s: number): number;
  deta(s: number): number;
  parameter(xi: number): number;
}

/** Control length that makes a cubic the best quarter of a circle. */
const kappa = 0.5522847498;
/** Control length of the curve between two bouts. */
const ease = 0.45;

// xi(s) = a s³ + b s² with a < 0. About its inflection m = −b/3a it is −4a m³ sin²ω, and with
// θ = 2ω/3 the root is m(1 + 2 cos(2π/3 − θ)), here without the difference of near equals.
const a = 3 * kappa - 2;
const b = 3 - 3 * kappa;
const inflection = -b / (3 * a);
const reach = -4 * a * inflection ** 3;

/** A quarter round: leaves (0, 0) square to x and meets (1, 1) along x. Controls (0, κ) and (1 − κ, 1). */
export const quarter: UnitCurve = {
  xi: (s) => s * s * (a * s + b),
  dxi: (s) => s * (3 * a * s + 2 * b),
  eta: (s) => s * (3 * kappa + s * (3 - 6 * kappa + s * a)),
  deta: (s) => 3 * kappa + s * (6 - 12 * kappa + 3 * a * s),
  parameter: (xi) => {
    const theta = (2 / 3) * Math.asin(Math.sqrt(xi / reach));
    return inflection * (2 * Math.sin(theta / 2) ** 2 + Math.sqrt(3) * Math.sin(theta));
  },
};

// About its middle xi − ½ = c τ³ + e τ with c, e > 0: one real root, by Cardano.
const c = 6 * ease - 2;
const e = 1.5 * (1 - ease);
const third = e / (3 * c);

/** An easing between two bouts: leaves (0, 0) and meets (1, 1) along x. Controls (g, 0) and (1 − g, 1). */
export const easing: UnitCurve = {
  xi: (s) => 0.5 + (s - 0.5) * (e + c * (s - 0.5) ** 2),
  dxi: (s) => e + 3 * c * (s - 0.5) ** 2,
  eta: (s) => s * s * (3 - 2 * s),
  deta: (s) => 6 * s * (1 - s),
  parameter: (xi) => {
    const half = (xi - 0.5) / (2 * c);
    const u = Math.cbrt(half + Math.sqrt(half * half + third * third * third));
    return 0.5 + u - third / u;
  },
};
