import { numberAt } from "./number-at.ts";

const golden = (Math.sqrt(5) - 1) / 2;

export interface Peak {
  readonly x: number;
  readonly value: number;
}

/**
 * The highest point of `f` over the rising places `xs`, ends included, where `values[i]` is f(xs[i]).
 * Every sample no lower than its neighbours is refined between them, unless no curve that is concave
 * there could come up to the highest found. The value is exact to rounding for an f that is concave
 * over the two gaps beside each such sample, or has its only turn there; the place only to about the
 * square root of rounding, since a peak is flat.
 */
export function highest(
  f: (x: number) => number,
  xs: readonly number[],
  values: readonly number[],
): Peak {
  let best = 0;
  for (let i = 1; i < values.length; i++)
    if (numberAt(values, i) > numberAt(values, best)) best = i;
  let top = peakNear(f, xs, numberAt(values, best), best);
  for (let i = 0; i < values.length; i++) {
    if (i === best || !(mostNear(xs, values, i) > top.value)) continue;
    const peak = peakNear(f, xs, numberAt(values, i), i);
    if (peak.value > top.value) top = peak;
  }
  return top;
}

/**
 * What a concave curve can reach at most between the neighbours of sample i: the straight line from
 * the one neighbour through the sample, extended to the other. Nothing where a neighbour is higher:
 * the peak, if there is one, is that neighbour's.
 */
function mostNear(xs: readonly number[], values: readonly number[], i: number): number {
  const here = numberAt(values, i);
  const [before, after] = [values[i - 1], values[i + 1]];
  if ((before ?? here) > here || (after ?? here) > here) return Number.NEGATIVE_INFINITY;
  if (before === undefined || after === undefined) return Number.POSITIVE_INFINITY;
  const tailward = numberAt(xs, i) - numberAt(xs, i - 1);
  const neckward = numberAt(xs, i + 1) - numberAt(xs, i);
  return (
    here + Math.max(((here - before) * neckward) / tailward, ((here - after) * tailward) / neckward)
  );
}

/** The lowest point, as `highest` finds the highest. */
export function lowest(
  f: (x: number) => number,
  xs: readonly number[],
  values: readonly number[],
): Peak {
  const { x, value } = highest(
    (x) => -f(x),
    xs,
    values.map((value) => -value),
  );
  return { x, value: -value };
}

/**
 * The top of `f` between the neighbours of sample i, where it is `value` and no lower than at them:
 * parabolas through the three best places, golden cuts where they stray (R. P. Brent, *Algorithms for
 * Minimization Without Derivatives*, 1973, chapter 5; from memory).
 */
export function peakNear(
  f: (x: number) => number,
  xs: readonly number[],
  value: number,
  i: number,
): Peak {
  let lo = numberAt(xs, Math.max(0, i - 1));
  let hi = numberAt(xs, Math.min(xs.length - 1, i + 1));
  let best: Peak = { x: numberAt(xs, i), value };
  if (risesTo(f, best, lo, hi)) return best;
  let second = best;
  let third = best;
  let step = 0;
  let before = 0;
  for (let round = 0; round < 60; round++) {
    const middle = (lo + hi) / 2;
    const near = 1e-7 * Math.abs(best.x) + 1e-9;
    if (Math.abs(best.x - middle) <= 2 * near - (hi - lo) / 2) break;
    const parabola = parabolaStep(best, second, third);
    const trusted =
      Math.abs(parabola) < Math.abs(before / 2) && best.x + parabola > lo && best.x + parabola < hi;
    const cut = (1 - golden) * (best.x < middle ? hi - best.x : lo - best.x);
    before = trusted ? step : cut / (1 - golden);
    step = trusted ? parabola : cut;
    const x = best.x + (Math.abs(step) >= near ? step : Math.sign(step || 1) * near);
    const tried = { x, value: f(x) };
    if (tried.value >= best.value) {
      if (x >= best.x) lo = best.x;
      else hi = best.x;
      [third, second, best] = [second, best, tried];
    } else {
      if (x < best.x) lo = x;
      else hi = x;
      if (tried.value >= second.value || second === best) [third, second] = [second, tried];
      else if (tried.value >= third.value || third === best || third === second) third = tried;
    }
  }
  return best;
}

/** Whether the sample is an end of the curve that the curve runs up to: then no turn between hides a higher place. */
function risesTo(f: (x: number) => number, { x, value }: Peak, lo: number, hi: number): boolean {
  if (x !== lo && x !== hi) return false;
  return f(x + 1e-4 * (x === lo ? hi - lo : lo - hi)) < value;
}

/** From `best` to the top of the parabola through three places; not finite when they lie on a line. */
function parabolaStep(best: Peak, second: Peak, third: Peak): number {
  const r = (best.x - second.x) * (best.value - third.value);
  const q = (best.x - third.x) * (best.value - second.value);
  return ((best.x - third.x) * q - (best.x - second.x) * r) / (2 * (r - q));
}
