import { describe, expect, it } from "vitest";
import { normalBelow } from "../../../src/profile/uncertainty/first-order.ts";
import { Random } from "../../../src/profile/uncertainty/random.ts";

const draws = 200_000;
const seeds = [1, 2, 20261125];

/** Greatest distance between the draws' own distribution and the one they should follow, times √n. */
function kolmogorovSmirnov(values: Float64Array, below: (x: number) => number): number {
  const sorted = values.slice().sort();
  const n = sorted.length;
  let most = 0;
  sorted.forEach((value, i) => {
    const share = below(value);
    most = Math.max(most, share - i / n, (i + 1) / n - share);
  });
  return most * Math.sqrt(n);
}

/**
 * √n·D passes this once in a thousand for a right generator (Kolmogorov's limit distribution:
 * 2·exp(−2·1.9495²) = 0.001; exact arithmetic).
 */
const onceInAThousand = 1.9495;

describe("the even generator", () => {
  it("gives the reference sequence of xoshiro128** from 1, 2, 3, 4", () => {
    // The authors' own C program, version 1.1, as the Rust crate rand_xoshiro tests it.
    const random = new Random(1, 2, 3, 4);
    expect(Array.from({ length: 10 }, () => random.word())).toEqual([
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597,
      4258142804,
    ]);
  });

  it("fills its state by splitmix32", () => {
    // Words for seed 42 from a repository's own Python version of splitmix32, seen beside the sequence above.
    const random = Random.seeded(42);
    const same = new Random(551831576, 144025891, 322543647, 3034809370);
    for (let i = 0; i < 100; i++) expect(random.word()).toBe(same.word());
  });

  it.each(seeds)("is even, seed %i", (seed) => {
    const random = Random.seeded(seed);
    const values = Float64Array.from({ length: draws }, () => random.even());
    expect(kolmogorovSmirnov(values, (x) => x)).toBeLessThan(onceInAThousand);
  });
});

describe("the normal generator", () => {
  const drawn = (seed: number): Float64Array => {
    const random = Random.seeded(seed);
    return Float64Array.from({ length: draws }, () => random.normal());
  };

  it.each(seeds)("follows the normal distribution, seed %i", (seed) => {
    expect(kolmogorovSmirnov(drawn(seed), normalBelow)).toBeLessThan(onceInAThousand);
  });

  it.each(seeds)("has the normal's first four moments, seed %i", (seed) => {
    const values = drawn(seed);
    const moment = (power: number): number =>
      values.reduce((sum, x) => sum + x ** power, 0) / values.length;
    // Standard errors of the sample moments of a normal: √(1, 2, 15, 96)/√n (exact), four of them allowed.
    const allowed = (variance: number): number => 4 * Math.sqrt(variance / draws);
    expect(Math.abs(moment(1))).toBeLessThan(allowed(1));
    expect(Math.abs(moment(2) - 1)).toBeLessThan(allowed(2));
    expect(Math.abs(moment(3))).toBeLessThan(allowed(15));
    expect(Math.abs(moment(4) - 3)).toBeLessThan(allowed(96));
  });

  it("gives neighbours that have nothing to do with each other", () => {
    const values = drawn(7);
    let sum = 0;
    for (let i = 1; i < values.length; i++) sum += (values[i] ?? 0) * (values[i - 1] ?? 0);
    expect(Math.abs(sum / draws)).toBeLessThan(4 / Math.sqrt(draws));
  });
});

it("knows the normal distribution", () => {
  // Published tables give Φ(1.96) = 0.97500, Φ(1) = 0.84134, Φ(5) = 0.99999971 (digits from memory).
  expect(normalBelow(0)).toBe(0.5);
  expect(normalBelow(1)).toBeCloseTo(0.8413447460685429, 14);
  expect(normalBelow(1.959963984540054)).toBeCloseTo(0.975, 14);
  expect(normalBelow(-5)).toBeCloseTo(2.866515718791939e-7, 18);
  expect(normalBelow(3.999999) - normalBelow(4.000001)).toBeCloseTo(-2.68e-10, 11);
});
