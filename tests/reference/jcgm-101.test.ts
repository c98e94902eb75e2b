import { describe, expect, it } from "vitest";
import { firstOrderOf } from "../../src/profile/uncertainty/first-order.ts";
import { type Input, type Model, MonteCarlo } from "../../src/profile/uncertainty/monte-carlo.ts";

/*
 * JCGM 101:2008, 9.2: the additive model Y = X1 + X2 + X3 + X4. Standard uncertainties exact; the
 * 95 % half-widths, from memory of the document, were worked out again exactly: 3.92 for four normals,
 * 3.879407 for four rectangular ones, 17.015814 with the last one ten times as uncertain.
 */

const sum: Model = (inputs, outcomes) => {
  outcomes[0] = inputs.reduce((total, input) => total + input, 0);
  return true;
};

const draws = 1_000_000;

const inputs = (shape: Input["shape"], last = 1): Input[] =>
  [1, 1, 1, last].map((u) => ({ value: 0, u, shape }));

const cases = [
  { clause: "9.2.2, four normals", inputs: inputs("normal"), u: 2, half: 3.919928 },
  { clause: "9.2.3, four rectangular", inputs: inputs("rectangular"), u: 2, half: 3.879407 },
  {
    clause: "9.2.4, one rectangular ten times the rest",
    inputs: inputs("rectangular", 10),
    u: Math.sqrt(103),
    half: 17.015814,
  },
];

describe.each(cases)("$clause", ({ inputs, u, half }) => {
  it("first order: combined standard uncertainty", () => {
    const [first] = firstOrderOf(sum, inputs, [0.1, 0.1, 0.1, 0.1], 1) ?? [];
    expect(first?.u).toBeCloseTo(u, 9);
    expect(first?.interval[1]).toBeCloseTo(1.959964 * u, 5);
  });

  it("a million draws: mean, standard uncertainty and 95 % interval", () => {
    const run = new MonteCarlo(inputs, sum, [null], 101);
    run.run(draws);
    const drawn = run.outcome(0, 40);
    if (drawn === null) throw new Error("nothing was drawn");
    // Four standard errors: of the mean u/√n, of u itself at most u/√(2n), and of a 2.5 % point 2.67·u/√n.
    const error = (4 * u) / Math.sqrt(draws);
    expect(Math.abs(drawn.mean)).toBeLessThan(error);
    expect(Math.abs(drawn.u - u)).toBeLessThan(error / Math.SQRT2);
    expect(Math.abs(drawn.interval[0] + half)).toBeLessThan(2.67 * error);
    expect(Math.abs(drawn.interval[1] - half)).toBeLessThan(2.67 * error);
  });
});

it("the interval of four rectangular inputs is told apart from four normal ones", () => {
  const [normal, rectangular] = [inputs("normal"), inputs("rectangular")].map((both) => {
    const run = new MonteCarlo(both, sum, [null], 5);
    run.run(draws);
    return run.outcome(0, 40)?.interval[1] ?? Number.NaN;
  });
  expect((normal ?? 0) - (rectangular ?? 0)).toBeGreaterThan(0.025);
});
