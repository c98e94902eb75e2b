import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { defaultInstrument } from "../../src/instrument/default-instrument.ts";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { outlinePoints } from "../support/precise-outline.ts";
import { openWorkshop, topOf, type Workshop } from "../support/solid.ts";
import { aimed, onSeat, solvedSeat } from "../support/solved.ts";

/*
 * The seat against wood: a body is domed all over in its own level frame and cut with the bar's plane, which
 * is laid on a spacer and on the seat's lowest corner; what has come off is then measured. No formula of the
 * core's is used, and the frame is the level rim's, not the seat's: lengths differ by L(1 − cos pitch), and
 * what the dome's slope makes of that is allowed for. Facets are inscribed, so they stand low by up to
 * facet²/8R in each direction.
 */

vi.setConfig({ testTimeout: 120_000, hookTimeout: 60_000 });

let shop: Workshop;
beforeAll(async () => {
  shop = await openWorkshop();
});
afterAll(() => shop.close());

const facet = 4;

const shaped = (
  dome: Partial<Instrument["dome"]>,
  leastCut: number,
  spacer: number,
): Instrument => {
  const own = onSeat({
    ...defaultInstrument,
    dome: { ...defaultInstrument.dome, ...dome },
    seat: { ...defaultInstrument.seat, leastCut },
  });
  return aimed(own, "spacer", spacer);
};

/** The dome over the level rim: its neck end stands at 0 and its tail end `tailExtra` under it, both on the centreline. */
function domeOver(instrument: Instrument): (x: number, y: number) => number {
  const { length } = instrument.body;
  const { dishRadius: radius, tailExtra } = instrument.dome;
  if (radius === null) return (x) => (tailExtra * (x - length)) / length;
  const half = Math.hypot(length, tailExtra) / 2;
  const lean = Math.atan2(tailExtra, length);
  const down = Math.sqrt(radius * radius - half * half);
  const cx = length / 2 + down * Math.sin(lean);
  const cz = -tailExtra / 2 - down * Math.cos(lean);
  return (x, y) => cz + Math.sqrt(radius * radius - (x - cx) ** 2 - y * y);
}

/** The bar's plane as height at the tail end and slope: on the spacer, and `leastCut` under the seat's lowest corner. */
function barOver(instrument: Instrument, saddleX: number, fromX: number) {
  const over = domeOver(instrument);
  const { length, neckEndWidth } = instrument.body;
  const { leastCut, fingerboardWidth } = instrument.seat;
  const onSpacer = over(saddleX, 0) + instrument.target.value;
  const half = fingerboardWidth / 2;
  const planes = [
    { x: fromX, y: half },
    { x: length, y: Math.min(half, neckEndWidth / 2) },
  ].map(({ x, y }) => {
    const slope = (over(x, y) - leastCut - onSpacer) / (x - saddleX);
    return { slope, at: (at: number) => onSpacer + slope * (at - saddleX) };
  });
  // The lower plane over the seat is the one on the lowest corner.
  const [a, b] = planes;
  if (a === undefined || b === undefined) throw new Error("no planes");
  return a.slope < b.slope ? a : b;
}

describe.each([
  ["a 28 ft dish", shaped({}, 0, 1.72)],
  ["a 28 ft dish, cut more and tilted the other way", shaped({}, 0.2, 4.5)],
  [
    "a 15 ft dish with more off the tail",
    shaped({ dishRadius: 4572, braceRadius: 4572, tailExtra: 1 }, 0.1, 3),
  ],
])("%s", (_, instrument) => {
  it("loses on the cut solid what the core says, and tilts as it says", () => {
    const profile = solvedSeat(instrument);
    const { length } = instrument.body;
    const { saddleX, fingerboardEndX: fromX, seat, pitch, tailDrop } = profile;
    const half: [number, number][] = outlinePoints(instrument.body, 64);
    const level = shop.levelBody(half);
    const over = domeOver(instrument);
    const domed = shop.subtract(
      level,
      shop.dishCut(over, { breakX: length + 5, halfWidth: 230, facet }),
    );
    const bar = barOver(instrument, saddleX, fromX);
    const angle = Math.atan(bar.slope);
    const cut = shop.boardCut(domed, -bar.at(0) / bar.slope, angle);
    const off = (x: number): number => (topOf(domed, x, 0) - topOf(cut, x, 0)) * Math.cos(angle);
    const radius = instrument.dome.dishRadius ?? Number.POSITIVE_INFINITY;
    const sag = (facet * facet) / (4 * radius) + 2e-5;
    const inPlan = length * (1 - Math.cos(angle));
    expect(Math.abs(-angle - (pitch * Math.PI) / 180)).toBeLessThan(inPlan / radius + 1e-7);
    expect(Math.abs(off(fromX) - seat.endCut)).toBeLessThan(sag + 0.001);
    expect(Math.abs(off(length - 0.01) - seat.neckEndCut)).toBeLessThan(sag + 0.001);
    const most = Math.max(
      ...Array.from({ length: 200 }, (_, i) => off(fromX + ((length - 0.01 - fromX) * i) / 199)),
    );
    expect(Math.abs(most - seat.mostCut)).toBeLessThan(sag + 0.001);
    const tail = (bar.at(0) - topOf(domed, 1e-6, 0)) * Math.cos(angle);
    expect(Math.abs(tail - tailDrop)).toBeLessThan(
      sag + inPlan * (length / radius + Math.abs(angle)),
    );
    // And something was cut at all.
    expect(most).toBeGreaterThan(0.05);
  });
});
