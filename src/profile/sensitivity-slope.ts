/**
 * The slope of a smooth `f` at x from four places `step` and 2·`step` to either side: central
 * differences with Richardson's extrapolation. The error left is step⁴ times a thirtieth of the fifth
 * derivative, and rounding over step: for heights of some 10 mm that change over 100 mm or more, a
 * step near a tenth of a millimetre, or a thousandth of the value, leaves about 1e-12 of either.
 */
export function slopeAt(f: (x: number) => number, x: number, step: number): number {
  const near = f(x + step) - f(x - step);
  const far = f(x + 2 * step) - f(x - 2 * step);
  return (8 * near - far) / (12 * step);
}
