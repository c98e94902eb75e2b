import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { rootBetween } from "../../src/geometry/root.ts";
import { even } from "./even.ts";

fc.configureGlobal({ seed: 20261125 });

/** How often `f` is asked. */
function asked(f: (x: number) => number, from: number, to: number): { x: number; times: number } {
  let times = 0;
  const x = rootBetween(
    (at) => {
      times += 1;
      return f(at);
    },
    from,
    to,
  );
  return { x, times };
}

describe("the root between two places", () => {
  it("is found to the last digits, whichever end is given first", () => {
    const root = even(-100, 100);
    const shape = fc.constantFrom(
      (t: number) => t,
      (t: number) => t * t * t,
      (t: number) => Math.expm1(t),
      (t: number) => Math.sign(t) * Math.sqrt(Math.abs(t)),
      (t: number) => t + t ** 5,
      (t: number) => Math.atan(1e4 * t),
    );
    const reach = even(1e-3, 5);
    fc.assert(
      fc.property(root, shape, reach, reach, (at, f, below, above) => {
        for (const [from, to] of [
          [at - below, at + above],
          [at + above, at - below],
        ] as const) {
          const x = rootBetween((place) => f(place - at), from, to);
          expect(Math.abs(x - at)).toBeLessThanOrEqual(1e-15 * Math.abs(at) + 1e-15);
        }
      }),
      { numRuns: 500 },
    );
  });

  it("agrees with roots known in closed form", () => {
    expect(rootBetween((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 15);
    expect(rootBetween(Math.cos, 1, 2)).toBeCloseTo(Math.PI / 2, 15);
    expect(rootBetween((x) => x ** 3 - 2 * x - 5, 2, 3)).toBeCloseTo(2.0945514815423265, 14);
  });

  it("is an end itself where that is the root", () => {
    expect(rootBetween((x) => x, 0, 5)).toBe(0);
    expect(rootBetween((x) => x - 5, 0, 5)).toBe(5);
  });

  it("is the nearer end where the signs do not differ", () => {
    expect(rootBetween((x) => x + 1, 0, 5)).toBe(0);
    expect(rootBetween((x) => x - 9, 0, 5)).toBe(5);
  });

  it("takes few looks at a smooth function, and ends on a jump", () => {
    expect(asked((x) => Math.exp(x) - 3, 0, 10).times).toBeLessThan(16);
    const { x, times } = asked((at) => (at < 1 / 3 ? -1 : 1), 0, 1);
    expect(x).toBeCloseTo(1 / 3, 14);
    expect(times).toBeLessThan(125);
  });
});
