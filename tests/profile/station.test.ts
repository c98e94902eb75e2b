import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { domeThrough, domeZ } from "../../src/geometry/dome.ts";
import type { Instrument } from "../../src/instrument/instrument.ts";
import type { Station } from "../../src/profile/outcome.ts";
import { profileOf } from "../../src/profile/profile.ts";
import { even } from "../geometry/even.ts";
import { solved } from "../support/solved.ts";
import { builderInstrument } from "./builder-instrument.ts";
import { Book, centreThrough } from "./by-the-book.ts";

fc.configureGlobal({ seed: 20261125 });

function stationsEvery(instrument: Instrument, stationEvery: number): readonly Station[] {
  const result = profileOf(instrument, { stationEvery });
  if (!result.ok) throw new Error(JSON.stringify(result.refusal));
  return result.profile.stations;
}

/** The back by its centre: through both corners of the neck end and the tail seam, upside down. */
function backByTheBook(instrument: Instrument, tailDrop: number): (x: number, y: number) => number {
  const { backRadius, depthTail, depthNeck, length, neckEndWidth } = instrument.body;
  const fall = tailDrop + depthTail - depthNeck;
  if (backRadius === null) return (x) => -depthNeck - fall * (1 - x / length);
  const { cx, cz } = centreThrough(backRadius, length, neckEndWidth / 2, 0, fall);
  return (x, y) => -depthNeck - (cz + Math.sqrt(backRadius ** 2 - (x - cx) ** 2 - y ** 2));
}

describe("stations", { timeout: 30_000 }, () => {
  it("come in order from the tail seam to the neck end, each landmark once", () => {
    fc.assert(
      fc.property(builderInstrument, (instrument) => {
        const { stations, breakX } = solved(instrument);
        stations.forEach(({ arcLength, x }, i) => {
          const before = stations[i - 1];
          if (before === undefined) return;
          expect(arcLength).toBeGreaterThanOrEqual(before.arcLength);
          expect(x).toBeGreaterThanOrEqual(before.x);
        });
        const { lowerBoutAt, waistAt, upperBoutAt, length } = instrument.body;
        const landmarks = new Map([
          ["tail", 0],
          ["lower bout", lowerBoutAt],
          ["waist", waistAt],
          ["break", breakX],
          ["upper bout", upperBoutAt],
          ["neck end", length],
        ]);
        for (const [name, x] of landmarks) {
          const named = stations.filter((station) => station.name === name);
          expect(named.map((station) => station.x)).toEqual([x]);
        }
        expect(stations.at(0)?.name).toBe("tail");
        expect(stations.at(-1)?.name).toBe("neck end");
      }),
      { numRuns: 100 },
    );
  });

  it("stand at every step of the edge between the landmarks, in the number asked for", () => {
    fc.assert(
      fc.property(builderInstrument, fc.constantFrom(3, 10, 25, 40), (instrument, every) => {
        const plain = stationsEvery(instrument, every).filter(({ name }) => name === "");
        const { outline } = new Book(instrument, 0);
        plain.forEach(({ arcLength, x }, i) => {
          expect(arcLength).toBeCloseTo((i + 1) * every, 8);
          expect(Math.abs(outline.arcLength(x) - arcLength)).toBeLessThan(1e-8);
        });
        const left = outline.totalArc() - plain.length * every;
        expect(left).toBeGreaterThan(0);
        expect(left).toBeLessThanOrEqual(every + 1e-9);
      }),
      { numRuns: 60 },
    );
  });

  it("are of the dome tailward of the break and of the flat from there on", () => {
    fc.assert(
      fc.property(builderInstrument, (instrument) => {
        const { stations, breakX } = solved(instrument);
        for (const { x, zone } of stations) expect(zone).toBe(x < breakX ? "dome" : "flat");
      }),
      { numRuns: 50 },
    );
  });

  it("are as deep at the tail seam and at the neck end as stated", () => {
    fc.assert(
      fc.property(builderInstrument, (instrument) => {
        const { stations } = solved(instrument);
        expect(stations.at(0)?.sideDepth).toBeCloseTo(instrument.body.depthTail, 9);
        expect(stations.at(-1)?.sideDepth).toBeCloseTo(instrument.body.depthNeck, 9);
      }),
      { numRuns: 100 },
    );
  });

  it("give half width, removal and side depth by the book, to 1e-9 mm", () => {
    fc.assert(
      fc.property(builderInstrument, (instrument) => {
        const { stations, shim, tailDrop } = solved(instrument);
        const book = new Book(instrument, shim);
        const back = backByTheBook(instrument, tailDrop);
        for (const { x, halfWidth, removal, sideDepth } of stations) {
          expect(Math.abs(halfWidth - book.outline.halfWidth(x))).toBeLessThan(1e-9);
          expect(Math.abs(removal - book.removal(x))).toBeLessThan(1e-9);
          expect(Math.abs(sideDepth - (book.rimZ(x) - back(x, halfWidth)))).toBeLessThan(1e-9);
        }
      }),
      { numRuns: 100 },
    );
  });
});

describe("the strip a side is cut from", { timeout: 30_000 }, () => {
  it("is as wide as the greatest of removal, offset and side depth together, by scan", () => {
    fc.assert(
      fc.property(builderInstrument, even(-5, 5), (drawn, tailExtra) => {
        const instrument = { ...drawn, dome: { ...drawn.dome, tailExtra } };
        const { stockWidth, rimOffset, shim, tailDrop } = solved(instrument);
        const book = new Book(instrument, shim);
        const back = backByTheBook(instrument, tailDrop);
        const { length } = instrument.body;
        let widest = book.removal(length) + rimOffset - back(length, 0);
        for (let i = 0; i <= 3000; i++) {
          const x = (instrument.body.length * (1 - Math.cos((Math.PI * i) / 3000))) / 2;
          const depth = book.rimZ(x) - back(x, book.outline.halfWidth(x));
          widest = Math.max(widest, book.removal(x) + rimOffset + depth);
        }
        expect(stockWidth).toBeGreaterThan(widest - 1e-9);
        expect(stockWidth).toBeLessThan(widest + 1e-4);
      }),
      { numRuns: 60 },
    );
  });
});

it("the back is one sphere through tail seam and both corners of the neck end", () => {
  fc.assert(
    fc.property(builderInstrument, (instrument) => {
      const { back, tailDrop } = solved(instrument);
      const { backRadius, depthTail, depthNeck, length, neckEndWidth } = instrument.body;
      const fall = tailDrop + depthTail;
      const again = domeThrough(
        backRadius === null ? 0 : 1 / backRadius,
        length,
        neckEndWidth / 2,
        0,
        fall,
        depthNeck,
      );
      expect(back.curvature).toBe(again?.curvature);
      expect(domeZ(back, 0, 0)).toBeCloseTo(fall, 9);
      expect(domeZ(back, length, neckEndWidth / 2)).toBeCloseTo(depthNeck, 9);
    }),
    { numRuns: 50 },
  );
});
