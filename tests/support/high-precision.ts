import { Decimal } from "decimal.js";

/** Arithmetic at 50 digits, for the second derivation of every outcome. */
export const Exact = Decimal.clone({ precision: 50 });
export type Exact = Decimal;

export const exact = (value: number | string | Exact): Exact => new Exact(value);

const half = exact("0.5");
const fineEnough = exact("1e-36");

/**
 * Root of f between two places where it has opposite signs, by Chandrupatla's bracketed method,
 * to 1e-36 of the bracket's size or better. Throws where the signs agree.
 */
export function root(f: (x: Exact) => Exact, from: Exact, to: Exact): Exact {
  let [a, b] = [from, to];
  let [fa, fb] = [f(a), f(b)];
  if (fa.isZero()) return a;
  if (fb.isZero()) return b;
  if (fa.isNegative() === fb.isNegative()) throw new Error("the root is not between the ends");
  let step = half;
  const tolerance = fineEnough.times(to.minus(from).abs());
  for (let turn = 0; turn < 300; turn++) {
    const x = a.plus(b.minus(a).times(step));
    const fx = f(x);
    let [c, fc] = [a, fa];
    if (fx.isNegative() !== fa.isNegative()) {
      [c, fc] = [b, fb];
      [b, fb] = [a, fa];
    }
    [a, fa] = [x, fx];
    if (fa.isZero() || b.minus(a).abs().lt(tolerance)) return a;
    step = nextStep(a, b, c, fa, fb, fc);
  }
  throw new Error("the root did not settle");
}

/** Inverse quadratic interpolation where it is safe, else a halving. */
function nextStep(a: Exact, b: Exact, c: Exact, fa: Exact, fb: Exact, fc: Exact): Exact {
  const xi = a.minus(b).div(c.minus(b));
  const phi = fa.minus(fb).div(fc.minus(fb));
  const safe = phi.times(phi).lt(xi) && exact(1).minus(phi).pow(2).lt(exact(1).minus(xi));
  if (!safe) return half;
  const first = fa.div(fb.minus(fa)).times(fc.div(fb.minus(fc)));
  const second = c
    .minus(a)
    .div(b.minus(a))
    .times(fa.div(fc.minus(fa)))
    .times(fb.div(fc.minus(fb)));
  const step = first.plus(second);
  const least = exact("1e-37");
  return Exact.min(Exact.max(step, least), exact(1).minus(least));
}

export interface Place {
  readonly x: Exact;
  readonly value: Exact;
}

/** The highest of f over the places given, its two highest peaks refined as `peaksOver` does. */
export function highestOver(f: (x: Exact) => Exact, places: readonly Exact[]): Place {
  const scan = places.map((x) => placeAt(f, x));
  const peaks = peaksIn(scan).sort((p, q) => q.here.value.comparedTo(p.here.value));
  const refined = peaks.slice(0, 2).map((peak) => goldenSection(f, peak));
  return [...scan, ...refined].reduce((best, place) => (place.value.gt(best.value) ? place : best));
}

/**
 * Every local high of f over the places given, in order of x, refined between its neighbours by golden section
 * to 1e-9 mm, which leaves its height good to about 1e-20. A level stretch has none.
 */
export function peaksOver(f: (x: Exact) => Exact, places: readonly Exact[]): Place[] {
  return peaksIn(places.map((x) => placeAt(f, x))).map((peak) => goldenSection(f, peak));
}

interface Peak {
  readonly before: Exact;
  readonly here: Place;
  readonly after: Exact;
}

function peaksIn(scan: readonly Place[]): Peak[] {
  return scan.flatMap((here, i) => {
    const before = scan[i - 1] ?? here;
    const after = scan[i + 1] ?? here;
    if (before.value.gt(here.value) || after.value.gt(here.value)) return [];
    if (here.value.minus(Exact.min(before.value, after.value)).lt("1e-30")) return [];
    return [{ before: before.x, here, after: after.x }];
  });
}

const golden = exact(5).sqrt().minus(1).div(2);

function goldenSection(f: (x: Exact) => Exact, { before, here, after }: Peak): Place {
  let [a, b] = [before, after];
  let best = here;
  let low: Place = placeAt(f, b.minus(b.minus(a).times(golden)));
  let high: Place = placeAt(f, a.plus(b.minus(a).times(golden)));
  while (b.minus(a).gt("1e-9")) {
    if (low.value.gt(high.value)) {
      b = high.x;
      high = low;
      low = placeAt(f, b.minus(b.minus(a).times(golden)));
    } else {
      a = low.x;
      low = high;
      high = placeAt(f, a.plus(b.minus(a).times(golden)));
    }
    for (const place of [low, high]) if (place.value.gt(best.value)) best = place;
  }
  return best;
}

const placeAt = (f: (x: Exact) => Exact, x: Exact): Place => ({ x, value: f(x) });
