import fc from "fast-check";

const parts = 2 ** 30;

/**
 * A number from `low` to `high`, none likelier than another. `fc.double` draws evenly over the
 * floating-point numbers instead, so nearly all of its numbers from 0 to 1 are tiny.
 */
export const even = (low: number, high: number): fc.Arbitrary<number> =>
  fc.noBias(fc.integer({ min: 0, max: parts })).map((n) => low + (high - low) * (n / parts));
