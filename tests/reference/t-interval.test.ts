import * as jstat from "jstat";
import { describe, expect, it } from "vitest";
import { intervalOf, isOutlier, studentWithin } from "../../src/profile/bench/student-t.ts";

describe("the t interval against published worked examples", () => {
  it("gives Student's own sleep data as R prints them", () => {
    // Cushny and Peebles 1905, in Student, "The probable error of a mean", Biometrika 6 (1908): hours of sleep gained.
    // R's example of t.test, paired: mean 1.58, 95 % interval 0.7001142 to 2.4598858 (seen in several printed R sessions).
    const gained = [1.2, 2.4, 1.3, 1.3, 0, 1, 1.8, 0.8, 4.6, 1.4];
    const interval = intervalOf(gained);
    expect(interval?.mean).toBeCloseTo(1.58, 12);
    expect(interval?.low).toBeCloseTo(0.7001142, 7);
    expect(interval?.high).toBeCloseTo(2.4598858, 7);
  });

  it("gives the heat flow meter's limits from their own mean and spread", () => {
    // NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.2, confidence limits for the mean, file ZARR13.DAT:
    // N 195, mean 9.261460, standard deviation 0.022789, 95 % limits 9.258242 to 9.264679 (seen, quoted in others' tests of it).
    // Mean and deviation are printed rounded, so the limits come back to about 1e-6.
    const half = (studentWithin(0.95, 194) * 0.022789) / Math.sqrt(195);
    expect(9.26146 - half).toBeCloseTo(9.258242, 5);
    expect(9.26146 + half).toBeCloseTo(9.264679, 5);
  });

  it.each([
    [1, 12.706],
    [2, 4.303],
    [3, 3.182],
    [4, 2.776],
    [10, 2.228],
    [30, 2.042],
    [120, 1.98],
  ])("gives the table's t at 95 %% for %d degrees of freedom", (dof, t) => {
    // The table at the back of every statistics book; from memory.
    expect(studentWithin(0.95, dof)).toBeCloseTo(t, 3);
  });
});

describe("the t interval against a general library", () => {
  it("has jstat's quantiles", () => {
    for (const confidence of [0.5, 0.8, 0.95, 0.99])
      for (const dof of [1, 2, 3, 4, 5, 6, 7, 12, 25, 60, 199]) {
        const theirs = jstat.studentt.inv((1 + confidence) / 2, dof);
        expect(studentWithin(confidence, dof) / theirs, `${confidence}, ${dof}`).toBeCloseTo(1, 6);
      }
  });

  it("has jstat's mean, spread and interval", () => {
    const values = [-0.21, -0.05, -0.34, 0.11, -0.18, -0.02, -0.27];
    const interval = intervalOf(values);
    const [low, high] = jstat.tci(jstat.mean(values), 0.05, values);
    expect(interval?.mean).toBeCloseTo(jstat.mean(values), 12);
    expect(interval?.spread).toBeCloseTo(jstat.stdev(values, true), 12);
    expect(interval?.low).toBeCloseTo(low, 6);
    expect(interval?.high).toBeCloseTo(high, 6);
  });

  it("is exact where the quantile has a closed form", () => {
    // One degree of freedom: the Cauchy distribution, tan(pi·c/2). Two: c·√(2/(1 − c²)).
    for (const c of [0.1, 0.5, 0.9, 0.99]) {
      expect(studentWithin(c, 1) / Math.tan((Math.PI * c) / 2)).toBeCloseTo(1, 12);
      expect(studentWithin(c, 2) / (c * Math.sqrt(2 / (1 - c * c)))).toBeCloseTo(1, 12);
    }
  });
});

describe("an outlier", () => {
  it("lies outside the others' own 99 % prediction interval, and needs three others", () => {
    const values = [0.1, 0.12, 0.08, 0.11, 0.9];
    expect(values.map((_, i) => isOutlier(values, i))).toEqual([false, false, false, false, true]);
    expect(isOutlier([0, 0.1, 9], 2)).toBe(false);
    expect(isOutlier([0.1, 0.12, 0.08, 0.11, 0.1], 4)).toBe(false);
  });
});
