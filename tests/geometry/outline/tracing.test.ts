import { describe, expect, test } from "vitest";
import { edgeOf } from "../../../src/geometry/outline/edge.ts";
import { BoutOutline } from "../../../src/geometry/outline/outline.ts";
import { splineThrough, splineX } from "../../../src/geometry/outline/spline.ts";
import { TracedOutline } from "../../../src/geometry/outline/traced-outline.ts";
import { framed, halvesIn, isClosed } from "../../../src/geometry/outline/tracing.ts";
import { fitted } from "../../../src/geometry/outline/tracing-fit.ts";
import { lengthOf, type Place } from "../../../src/geometry/polyline.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { outlinePoints } from "../../support/precise-outline.ts";
import { roundedCutaway } from "../../support/uneven-bodies.ts";

const body = (presets[2] ?? presets[0])?.body;
if (body === undefined) throw new Error("no preset");
const exact = outlinePoints(body, 400);
const traced = (chords: number): Place[] => outlinePoints(body, chords);

function halfOrFault(places: readonly Place[], length = body?.length ?? 0, slack = 0.25) {
  const result = halvesIn(places, length, slack);
  return result.ok ? result.halves : result.fault;
}

function half(places: readonly Place[], length = body?.length ?? 0, slack = 0.25) {
  const { bass, treble, apart } = halves(places, length, slack);
  const one = bass ?? treble;
  if (one === null) throw new Error("no half");
  return { places: one, apart };
}

function halves(places: readonly Place[], length = body?.length ?? 0, slack = 0.25) {
  const result = halvesIn(places, length, slack);
  if (!result.ok) throw new Error(result.fault.why);
  return result.halves;
}

/** Composite Simpson on a fine grid, of a function that is smooth within each stretch. */
function simpson(f: (t: number) => number, from: number, to: number, panels: number): number {
  const h = (to - from) / panels;
  let sum = f(from) + f(to);
  for (let i = 1; i < panels; i++) sum += f(from + i * h) * (i % 2 === 1 ? 4 : 2);
  return (sum * h) / 3;
}

describe("a traced outline", () => {
  const outline = new TracedOutline(fitted(half(traced(60)).places, 0.05, 400).places);

  // The four Bezier pieces it was traced from, worked in 50 digits.
  test("lies on what was traced", () => {
    let worst = 0;
    for (const [x, y] of exact) {
      const slope = outline.slope(x);
      const off =
        Math.abs(outline.halfWidth(x) - y) / Math.hypot(1, Number.isFinite(slope) ? slope : 1e9);
      worst = Math.max(worst, off);
    }
    expect(worst).toBeLessThan(0.06);
  });

  test("starts at the tail, square to the centreline, and ends where the tracing does", () => {
    expect(outline.halfWidth(0)).toBe(0);
    expect(outline.slope(0)).toBe(Number.POSITIVE_INFINITY);
    expect(outline.length).toBe(body.length);
    expect(outline.halfWidth(outline.length)).toBeCloseTo(body.neckEndWidth / 2, 9);
    expect(outline.knots[0]).toBe(0);
    expect(outline.knots.at(-1)).toBe(body.length);
  });

  test("is as long as a fine polyline of itself, and as one of what was traced", () => {
    const xs = edgeOf(outline, outline.length).xs;
    const fine: Place[] = [];
    for (let i = 1; i < xs.length; i++)
      for (let j = 0; j < 400; j++) {
        const x = (xs[i - 1] ?? 0) + (((xs[i] ?? 0) - (xs[i - 1] ?? 0)) * j) / 400;
        fine.push([x, outline.halfWidth(x)]);
      }
    fine.push([outline.length, outline.halfWidth(outline.length)]);
    expect(outline.totalArc() - lengthOf(fine)).toBeGreaterThan(0);
    expect(outline.totalArc() - lengthOf(fine)).toBeLessThan(2e-3);
    expect(Math.abs(outline.totalArc() - lengthOf(exact))).toBeLessThan(0.2);
  });

  test("its length between two places is what Simpson's rule gives", () => {
    const speed = (x: number): number => Math.hypot(1, outline.slope(x));
    const inner = outline.knots.filter((x) => x > 20 && x < body.length - 40);
    let sum = 0;
    for (let i = 1; i < inner.length; i++)
      sum += simpson(speed, inner[i - 1] ?? 0, inner[i] ?? 0, 400);
    const [a, b] = [inner[0] ?? 0, inner.at(-1) ?? 0];
    expect(outline.arcLength(b) - outline.arcLength(a)).toBeCloseTo(sum, 6);
  });

  test("finds its way back from length to place", () => {
    for (let x = 0.5; x < body.length; x += 3.3)
      expect(outline.placeAtArc(outline.arcLength(x))[0]).toBeCloseTo(x, 9);
    expect(outline.placeAtArc(0)[0]).toBe(0);
    expect(outline.placeAtArc(outline.totalArc())[0]).toBeCloseTo(body.length, 9);
  });

  test("has no corner: its slope is the same from both sides, and the slope of its own width", () => {
    for (const x of outline.knots.slice(1, -1)) {
      expect(outline.slope(x - 1e-9)).toBeCloseTo(outline.slope(x + 1e-9), 4);
    }
    for (let x = 30; x < body.length - 20; x += 7.7) {
      const [before, after] = [outline.halfWidth(x - 1e-4), outline.halfWidth(x + 1e-4)];
      expect(outline.slope(x)).toBeCloseTo((after - before) / 2e-4, 4);
    }
  });

  test("is widest where it is widest", () => {
    const widths = Array.from({ length: 50_000 }, (_, i) =>
      outline.halfWidth((i / 50_000) * body.length),
    );
    expect(outline.widest).toBeGreaterThanOrEqual(Math.max(...widths) - 1e-9);
    expect(outline.widest - Math.max(...widths)).toBeLessThan(1e-6);
  });

  test("is sampled closely enough that its edge shows every turn", () => {
    const { xs } = edgeOf(outline, outline.length);
    const model = new BoutOutline(body);
    expect(xs.length).toBeGreaterThan(100);
    for (const x of xs) {
      const steep = Math.hypot(1, Math.min(1e9, Math.abs(model.slope(x))));
      expect(Math.abs(outline.halfWidth(x) - model.halfWidth(x)) / steep).toBeLessThan(0.06);
    }
  });
});

describe("a curve through few and uneven places", () => {
  const steep: Place[] = [
    [0, 0],
    [40, 60],
    [140, 70],
    [140.02, 130],
    [260, 136],
    [300, 40],
  ];

  test("leaves the tail square to the centreline, however the places lean", () => {
    expect(new TracedOutline(steep).slope(0)).toBe(Number.POSITIVE_INFINITY);
  });

  test("never runs back toward the tail", () => {
    const spline = splineThrough(steep);
    for (let piece = 0; piece < steep.length - 1; piece++) {
      let before = steep[piece]?.[0] ?? 0;
      for (let t = 0.01; t <= 1; t += 0.01) {
        const x = splineX(spline, piece, t);
        expect(x).toBeGreaterThanOrEqual(before - 1e-9);
        before = x;
      }
    }
  });
});

describe("fitting", () => {
  test.each([1, 0.25, 0.05])("keeps within %f mm, and takes more places for less", (error) => {
    const places = half(traced(200)).places;
    const fit = fitted(places, error, 400);
    expect(fit.error).toBeLessThanOrEqual(error);
    const looser = fitted(places, error * 4, 400);
    expect(looser.places.length).toBeLessThanOrEqual(fit.places.length);
  });

  test("a trembling hand is smoothed, and the error says so", () => {
    const tremble = traced(60).map(
      ([x, y], i): Place => [x, i === 0 ? y : y + 0.15 * Math.sin(i * 12.9898)],
    );
    const fit = fitted(half(tremble).places, 0.4, 400);
    expect(fit.error).toBeLessThanOrEqual(0.4);
    expect(fit.error).toBeGreaterThan(0.05);
    expect(fit.places.length).toBeLessThan(60);
  });

  test("of more places than are looked at first, all lie as near as is said", () => {
    const places = half(traced(900)).places.map(
      ([x, y], i): Place => [x, i === 1703 ? y + 0.6 : y],
    );
    expect(fitted(places, 0.25, 400).error).toBeGreaterThan(0.25);
    expect(fitted(places, 0.7, 400).error).toBeGreaterThan(0.5);
  });

  test("stops at the most places and owns to the error", () => {
    const fit = fitted(half(traced(200)).places, 1e-6, 20);
    expect(fit.places.length).toBeLessThanOrEqual(20);
    expect(fit.error).toBeGreaterThan(1e-6);
  });
});

describe("a drawing becomes half an outline", () => {
  const right = traced(60);
  const straight: Place[] = [...right, [body.length, 0]];
  const whole: Place[] = [...straight, ...right.toReversed().map(([x, y]): Place => [x, -y])];

  test("from a half, drawn either way or on the other hand", () => {
    for (const drawn of [
      right,
      straight,
      straight.toReversed(),
      right.map(([x, y]): Place => [x, -y]),
    ]) {
      const { places, apart } = half(drawn);
      expect(apart).toBe(0);
      expect(places[0]).toEqual([0, 0]);
      expect(places.at(-1)?.[0]).toBe(body.length);
      expect(places.at(-1)?.[1]).toBeCloseTo(body.neckEndWidth / 2, 9);
      places.slice(1).forEach(([x], i) => {
        expect(x).toBeGreaterThan(places[i]?.[0] ?? 0);
      });
    }
  });

  test("from a whole, both of its halves, each on its side", () => {
    expect(isClosed(whole)).toBe(true);
    expect(half(whole).apart).toBeLessThan(1e-9);
    const lopsided = whole.map(([x, y]): Place => [x, y < 0 ? y * 1.01 : y]);
    for (const drawn of [lopsided, lopsided.toReversed()]) {
      const { bass, treble, apart } = halves(drawn);
      expect(apart).toBeGreaterThan(1);
      expect(apart).toBeLessThan(2);
      const [wide, wider] = [bass, treble].map((one) => Math.max(...(one ?? []).map(([, y]) => y)));
      expect(wide).toBeCloseTo(body.lowerBoutWidth / 2, 3);
      expect(wider).toBeCloseTo((body.lowerBoutWidth / 2) * 1.01, 3);
    }
    const other = lopsided.map(([x, y]): Place => [x, -y]);
    expect(halves(other).bass).toEqual(halves(lopsided).treble);
  });

  test("from a half on the treble side, that half alone", () => {
    const { bass, treble } = halves(right.map(([x, y]): Place => [x, -y]));
    expect(bass).toBeNull();
    expect(treble).toEqual(halves(right).bass);
  });

  test("with a cutaway, the edge as drawn round its horn", () => {
    const horned = new TracedOutline(roundedCutaway.body.tracingTreble ?? []);
    const edge = Array.from({ length: 800 }, (_, i) =>
      horned.placeAtArc((horned.totalArc() * i) / 799),
    );
    for (const drawn of [edge, edge.toReversed()]) {
      const { places } = half(drawn, 500);
      const fit = fitted(places, 0.25, 400);
      expect(fit.error).toBeLessThanOrEqual(0.25);
      const again = new TracedOutline(fit.places);
      expect(again.foldX).toBeCloseTo(horned.foldX, 1);
      expect(Math.abs(again.totalArc() - horned.totalArc())).toBeLessThan(0.5);
    }
  });

  test("wherever it lies on the drawing", () => {
    const turn = ([x, y]: Place): Place => [100 + x * 0.6 - y * 0.8, -50 + x * 0.8 + y * 0.6];
    const ends = { tail: turn([0, 0]), neck: turn([body.length, 0]) };
    framed(right.map(turn), ends).forEach(([x, y], i) => {
      expect(x).toBeCloseTo(right[i]?.[0] ?? 0, 9);
      expect(y).toBeCloseTo(right[i]?.[1] ?? 0, 9);
    });
  });

  test("a flat tail is kept", () => {
    const flat: Place[] = [[0, 0], [0, 30], ...right.filter(([x, y]) => x > 3 && y > 30)];
    const outline = new TracedOutline(fitted(half(flat).places, 0.25, 400).places);
    expect(outline.halfWidth(0.01)).toBeGreaterThan(25);
  });

  test("is refused when it runs back toward the tail", () => {
    const back = right.map(([x, y]): Place => (x > 240 && x < 260 ? [x - 20, y] : [x, y]));
    const fault = halfOrFault(back);
    expect(fault).toMatchObject({ why: "turns back" });
    if ("by" in fault) expect(fault.by).toBeGreaterThan(5);
  });

  test("is refused when it folds over itself", () => {
    const i = right.findIndex(([x]) => x > 250);
    const [x, y] = right[i] ?? [0, 0];
    const loop: Place[] = [
      [x + 15, y + 12],
      [x + 2, y + 14],
      [x + 8, y - 12],
    ];
    const folded = [...right.slice(0, i), ...loop, ...right.slice(i + 2)];
    expect(halfOrFault(folded)).toMatchObject({ why: "folds" });
  });

  test("is refused when it misses an end, or crosses the centreline, or is no line", () => {
    expect(halfOrFault(right.map(([x, y]): Place => [x, y + 9]))).toMatchObject({
      why: "misses the tail",
    });
    expect(halfOrFault(right, body.length + 4)).toMatchObject({
      why: "misses the neck end",
      by: 4,
    });
    const dipped = right.map(([x, y]): Place => [x, x > 200 && x < 210 ? -30 : y]);
    expect(halfOrFault(dipped)).toMatchObject({ why: "crosses the centreline" });
    expect(halfOrFault([[0, 0]])).toEqual({ why: "too few" });
    expect(halfOrFault([])).toEqual({ why: "too few" });
  });
});
