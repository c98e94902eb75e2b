/**
 * The root of a continuous `f` between two places where its signs differ, to the last digits of a
 * double, by Chandrupatla's method (inverse quadratic steps where safe, halving elsewhere).
 * Returns whichever end is nearer when the signs do not differ.
 *
 * T. R. Chandrupatla, "A new hybrid quadratic/bisection algorithm", Advances in Engineering
 * Software 28 (1997) 145–149; the method from memory.
 */
export function rootBetween(f: (x: number) => number, from: number, to: number): number {
  let a = from;
  let b = to;
  let fa = f(a);
  let fb = f(b);
  if (fa * fb > 0) return Math.abs(fa) < Math.abs(fb) ? a : b;
  let c = a;
  let fc = fa;
  let share = 0.5;
  for (let step = 0; step < 120; step++) {
    const x = a + share * (b - a);
    const fx = f(x);
    if (Math.sign(fx) === Math.sign(fa)) {
      c = a;
      fc = fa;
    } else {
      c = b;
      fc = fb;
      b = a;
      fb = fa;
    }
    a = x;
    fa = fx;
    const best = Math.abs(fa) < Math.abs(fb) ? a : b;
    const tolerance = 2 * Number.EPSILON * Math.abs(best) + 1e-300;
    const least = tolerance / Math.abs(b - a);
    if (fa === 0 || least > 0.5) return best;
    share = Math.min(1 - least, Math.max(least, nextShare(a, b, c, fa, fb, fc)));
  }
  return a;
}

function nextShare(a: number, b: number, c: number, fa: number, fb: number, fc: number): number {
  const xi = (a - b) / (c - b);
  const phi = (fa - fb) / (fc - fb);
  const safe = phi ** 2 < xi && (1 - phi) ** 2 < 1 - xi;
  if (!safe) return 0.5;
  return (
    (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb))
  );
}
