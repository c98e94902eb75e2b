import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { even } from "../geometry/even.ts";
import { solved, withShim } from "../support/solved.ts";
import { builderInstrument, domedInstrument } from "./builder-instrument.ts";
import { Book } from "./by-the-book.ts";

fc.configureGlobal({ seed: 20261125 });

/** Domes on shims thin enough that most boards cut past the break. */
const thinShim = fc
  .record({ instrument: domedInstrument, shim: even(0, 8) })
  .map(({ instrument, shim }) => withShim(instrument, shim));

/** The tailmost place that stands over the flat, and the highest, of very many. */
function scan(book: Book, count: number): { start: number | null; depth: number } {
  let start: number | null = null;
  let depth = 0;
  for (let i = 0; i < count; i++) {
    const x = (book.breakX * i) / count;
    const z = book.sphereZ(x, book.outline.halfWidth(x));
    if (z > 1e-9 && start === null) start = x;
    depth = Math.max(depth, z);
  }
  return { start, depth };
}

describe("the overrun", { timeout: 30_000 }, () => {
  it("begins and cuts as deep as a scan of the rim's edge in four thousand places finds", () => {
    let overran = 0;
    fc.assert(
      fc.property(thinShim, (instrument) => {
        const { overrunLength, overrunDepth, breakX, shim } = solved(instrument);
        const book = new Book(instrument, shim);
        const { start, depth } = scan(book, 4000);
        if (overrunLength > 0) overran += 1;
        expect(overrunDepth).toBeGreaterThan(depth - 1e-9);
        expect(overrunDepth).toBeLessThan(depth + 1e-4);
        const scanned = start === null ? 0 : breakX - start;
        expect(overrunLength).toBeGreaterThan(scanned - 1e-3);
        // The scan may step over a cut no deeper than it can see.
        if (start !== null) expect(overrunLength).toBeLessThan(scanned + breakX / 1000 + 0.5);
        else expect(overrunDepth).toBeLessThan(1e-4);
      }),
      { numRuns: 100 },
    );
    expect(overran).toBeGreaterThan(30);
  });

  it("begins where the rim's edge passes through the flat", () => {
    fc.assert(
      fc.property(thinShim, (instrument) => {
        const { overrunLength, overrunDepth, breakX, shim } = solved(instrument);
        fc.pre(overrunDepth > 1e-4 && overrunLength < breakX);
        const book = new Book(instrument, shim);
        const start = breakX - overrunLength;
        expect(Math.abs(book.rimZ(start))).toBeLessThan(1e-8);
        expect(book.rimZ(start + 0.01)).toBeGreaterThan(0);
      }),
      { numRuns: 100 },
    );
  });

  it("has a length exactly when it has a depth", () => {
    fc.assert(
      fc.property(thinShim, (instrument) => {
        const { overrunLength, overrunDepth } = solved(instrument);
        expect(overrunLength > 0).toBe(overrunDepth > 0);
        expect(Math.min(overrunLength, overrunDepth)).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 100 },
    );
  });

  it("is none without a dome", () => {
    fc.assert(
      fc.property(thinShim, (drawn) => {
        const instrument = { ...drawn, dome: { ...drawn.dome, dishRadius: null } };
        const { overrunLength, overrunDepth, cleanShim } = solved(instrument);
        expect([overrunLength, overrunDepth, cleanShim]).toEqual([0, 0, 0]);
      }),
      { numRuns: 20 },
    );
  });
});

describe("the clean shim", { timeout: 30_000 }, () => {
  const clean = (instrument: Instrument): number => {
    const { cleanShim } = solved(instrument);
    if (cleanShim === null) throw new Error("no clean shim");
    return cleanShim;
  };

  it("overruns nowhere, nor does one a thousandth thicker; one a hundredth thinner does", () => {
    fc.assert(
      fc.property(domedInstrument, (instrument) => {
        const shim = clean(instrument);
        expect(shim).toBeGreaterThan(0);
        expect(solved(withShim(instrument, shim)).overrunLength).toBe(0);
        expect(solved(withShim(instrument, shim + 1e-3)).overrunLength).toBe(0);
        expect(solved(withShim(instrument, shim - 0.01)).overrunLength).toBeGreaterThan(0);
      }),
      { numRuns: 150 },
    );
  });

  it("leaves the scanned edge under the flat everywhere, and a hundredth less does not", () => {
    fc.assert(
      fc.property(domedInstrument, (instrument) => {
        const shim = clean(instrument);
        expect(scan(new Book(instrument, shim), 3000).depth).toBeLessThan(1e-9);
        expect(scan(new Book(instrument, shim - 0.05), 3000).depth).toBeGreaterThan(0);
      }),
      { numRuns: 60 },
    );
  });

  it("is thinner for a flatter dish", () => {
    fc.assert(
      fc.property(domedInstrument, (instrument) => {
        const { dishRadius } = instrument.dome;
        const flatter = { ...instrument.dome, dishRadius: (dishRadius ?? Number.NaN) * 1.2 };
        expect(clean({ ...instrument, dome: flatter })).toBeLessThan(clean(instrument));
      }),
      { numRuns: 60 },
    );
  });

  it("is none when no shim within reach is thick enough", () => {
    fc.assert(
      fc.property(domedInstrument, (instrument) => {
        const thickest = clean(instrument) / 2;
        const shallow = { ...instrument.body, depthTail: thickest };
        const cut = withShim({ ...instrument, body: shallow }, thickest);
        expect(solved(cut).cleanShim).toBeNull();
        expect(solved(cut).overrunLength).toBeGreaterThan(0);
      }),
      { numRuns: 40 },
    );
  });

  it("is the same whatever shim is asked for", () => {
    fc.assert(
      fc.property(builderInstrument, (instrument) => {
        expect(solved(withShim(instrument, 3)).cleanShim).toBe(solved(instrument).cleanShim);
      }),
      { numRuns: 40 },
    );
  });
});
