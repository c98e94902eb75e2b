import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { presets } from "../../src/instrument/presets.ts";
import { even } from "../geometry/even.ts";
import { solved, withShim } from "../support/solved.ts";
import { builderInstrument } from "./builder-instrument.ts";
import { Book } from "./by-the-book.ts";

fc.configureGlobal({ seed: 20261125 });

/** Dishes that take much more or less off the tail, so that the level rim is too low somewhere. */
const tilted = fc
  .record({
    instrument: builderInstrument,
    tailExtra: even(-12, 12),
  })
  .map(
    ({ instrument, tailExtra }): Instrument => ({
      ...instrument,
      dome: { ...instrument.dome, tailExtra },
    }),
  );

interface Scan {
  readonly most: number;
  readonly least: number;
  readonly mostX: number;
  readonly leastX: number;
}

/** What comes off, at very many places round the whole rim, closer together at both its ends and the break. */
function scan(book: Book, count: number): Scan {
  const { length } = book.outline;
  const found = { most: -1e9, least: 1e9, mostX: 0, leastX: 0 };
  for (let i = 0; i <= count; i++) {
    const turn = (1 - Math.cos((Math.PI * i) / count)) / 2;
    for (const x of [turn * book.breakX, book.breakX + turn * (length - book.breakX)]) {
      const removal = book.removal(x);
      if (removal > found.most) Object.assign(found, { most: removal, mostX: x });
      if (removal < found.least) Object.assign(found, { least: removal, leastX: x });
    }
  }
  return found;
}

describe("what comes off the level rim", { timeout: 30_000 }, () => {
  it("at most and at least is what a scan of four thousand places finds", () => {
    fc.assert(
      fc.property(tilted, (instrument) => {
        const profile = solved(instrument);
        const { most, least } = scan(new Book(instrument, profile.shim), 2000);
        const rimOffset = Math.max(0, -least);
        // A scan falls short by its spacing squared over the sphere's radius.
        const short = 1e-5;
        expect(profile.rimOffset).toBeGreaterThan(rimOffset - 1e-9);
        expect(profile.rimOffset).toBeLessThan(rimOffset + short);
        expect(profile.maxRemoval - profile.rimOffset).toBeGreaterThan(most - 1e-9);
        expect(profile.maxRemoval - profile.rimOffset).toBeLessThan(most + short);
      }),
      { numRuns: 100 },
    );
  });

  it("is most, and least, where it is said to be", () => {
    fc.assert(
      fc.property(tilted, (instrument) => {
        const { maxRemovalX, leastRemovalX, maxRemoval, rimOffset, shim } = solved(instrument);
        const book = new Book(instrument, shim);
        expect(book.removal(maxRemovalX)).toBeCloseTo(maxRemoval - rimOffset, 9);
        const { least } = scan(book, 1000);
        expect(book.removal(leastRemovalX)).toBeLessThan(least + 1e-9);
      }),
      { numRuns: 100 },
    );
  });

  it("leaves nothing standing too high once the offset is taken: nowhere less than nothing comes off", () => {
    let lowered = 0;
    fc.assert(
      fc.property(tilted, (instrument) => {
        const { stations, rimOffset, maxRemoval } = solved(instrument);
        if (rimOffset > 0) lowered += 1;
        for (const { removal } of stations) {
          expect(removal + rimOffset).toBeGreaterThan(-1e-9);
          expect(removal + rimOffset).toBeLessThan(maxRemoval + 1e-9);
        }
      }),
      { numRuns: 100 },
    );
    expect(lowered).toBeGreaterThan(20);
  });

  it("is nothing at the break, and at the tail what the pitch turns the datum down by", () => {
    fc.assert(
      fc.property(tilted, (instrument) => {
        const { stations, pitch, breakX, tailDrop } = solved(instrument);
        const cos = Math.cos((pitch * Math.PI) / 180);
        const at = (name: string): number =>
          stations.find((station) => station.name === name)?.removal ?? Number.NaN;
        expect(Math.abs(at("break"))).toBeLessThan(1e-12);
        const datum = -breakX * Math.tan((pitch * Math.PI) / 180);
        expect(at("tail")).toBeCloseTo((datum + tailDrop) * cos, 9);
        expect(at("tail")).toBeCloseTo(instrument.dome.tailExtra * cos, 9);
      }),
      { numRuns: 100 },
    );
  });
});

describe("the dish needed", () => {
  it("spans the domed part: every point of its edge fits, with two of them on the rim of the dish", () => {
    fc.assert(
      fc.property(builderInstrument, (instrument) => {
        const { dishNeeded, breakX, shim } = solved(instrument);
        const { outline } = new Book(instrument, shim);
        const points = Array.from({ length: 2001 }, (_, i) => {
          const x = (breakX * (1 - Math.cos((Math.PI * i) / 2000))) / 2;
          return [x, outline.halfWidth(x)] as const;
        });
        const span = (cx: number): number =>
          2 * Math.sqrt(Math.max(...points.map(([x, y]) => (x - cx) ** 2 + y ** 2)));
        let best = Number.POSITIVE_INFINITY;
        for (let i = 0; i <= 400; i++) best = Math.min(best, span((breakX * i) / 400));
        expect(dishNeeded).toBeLessThan(best + 1e-6);
        expect(dishNeeded).toBeGreaterThan(best - (2 * breakX) / 400);
      }),
      { numRuns: 40 },
    );
  });
});

describe("a rim without a dome, nowhere too low", () => {
  it("has no offset at all, not one of rounding", () => {
    const raised = presets.flatMap((preset) =>
      [4, 6, 7.3, 8.4, 11].map((shim) => {
        const dome = { ...preset.dome, dishRadius: null, braceRadius: null };
        return solved(withShim({ ...preset, dome }, shim)).rimOffset;
      }),
    );
    expect(new Set(raised)).toEqual(new Set([0]));
  });
});
