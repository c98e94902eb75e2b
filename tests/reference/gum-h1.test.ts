import { describe, expect, it } from "vitest";
import { firstOrderOf } from "../../src/profile/uncertainty/first-order.ts";
import { type Input, type Model, MonteCarlo } from "../../src/profile/uncertainty/monte-carlo.ts";

/*
 * GUM (JCGM 100:2008) H.1, end-gauge calibration. The components in nm are as the documentation of a
 * national metrology institute's library states them (docs/API/GUM_H1.rst): 25, 16.599, 6.7, 5.8, 3.9
 * and 2.887, together 32 (31.66); terms of the second order raise it to 34. The inputs that yield these
 * components are the document's own, from memory: they are held to the components below.
 */

const standard = 50_000_623;

const normal = (value: number, u: number): Input => ({ value, u, shape: "normal" });
const even = (value: number, half: number): Input => ({
  value,
  u: half / Math.sqrt(3),
  shape: "rectangular",
});

/** ls; the three parts of d; difference of expansion; mean and cyclic deviation of temperature; expansion; difference of temperature. */
const inputs: readonly Input[] = [
  normal(standard, 25),
  normal(215, 5.8),
  normal(0, 3.9),
  normal(0, 6.7),
  even(0, 1e-6),
  normal(-0.1, 0.2),
  { value: 0, u: 0.5 / Math.SQRT2, shape: "normal" },
  even(11.5e-6, 2e-6),
  even(0, 0.05),
];

const steps = [100, 1, 1, 1, 1e-7, 0.01, 0.01, 1e-7, 0.001];

/** l = ls + d − ls(δα·θ + α·δθ) */
const gauge: Model = (x, outcomes) => {
  const [ls = 0, d1 = 0, d2 = 0, d3 = 0, dAlpha = 0, mean = 0, cycle = 0, alpha = 0, dTheta = 0] =
    x;
  outcomes[0] = ls + d1 + d2 + d3 - ls * (dAlpha * (mean + cycle) + alpha * dTheta);
  return true;
};

describe("GUM H.1", () => {
  const [first] = firstOrderOf(gauge, inputs, steps, 1) ?? [];

  it("has the document's components", () => {
    const expected = [25, 5.8, 3.9, 6.7, 2.887, 0, 0, 0, 16.599];
    expected.forEach((nm, i) => {
      expect(Math.abs(first?.parts[i] ?? Number.NaN), `component ${i}`).toBeCloseTo(nm, 2);
    });
  });

  it("combines them to 32 nm", () => {
    expect(first?.u).toBeCloseTo(31.66, 2);
    expect(first?.value).toBeCloseTo(50_000_838, 6);
  });

  it("drawn, has the 34 nm that terms of the second order make of it", () => {
    const run = new MonteCarlo(inputs, gauge, [null], 1);
    run.run(1_000_000);
    const u = run.outcome(0, 40)?.u ?? Number.NaN;
    expect(Math.round(u)).toBe(34);
    // The two second-order terms, ls·u(δα)·u(θ) and ls·u(α)·u(δθ), added by hand (exact).
    const theta = Math.hypot(0.2, 0.5 / Math.SQRT2);
    const product = standard * (1e-6 / Math.sqrt(3)) * theta;
    const other = standard * (2e-6 / Math.sqrt(3)) * (0.05 / Math.sqrt(3));
    expect(u).toBeCloseTo(Math.hypot(first?.u ?? 0, product, other), 1);
  });
});
