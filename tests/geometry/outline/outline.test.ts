import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BoutOutline, type Bouts } from "../../../src/geometry/outline/outline.ts";
import {
  anyBouts,
  type Controls,
  controlsOf,
  guitarBouts,
  halfWidthByBisection,
  onCurve,
  placeOn,
  plainBouts,
} from "../bezier-body.ts";

fc.configureGlobal({ seed: 20261125 });

const share = fc.integer({ min: 0, max: 4000 }).map((n) => n / 4000);

/** A body and a place along it. */
const place = fc.record({ body: anyBouts, share }).map(({ body, share: along }) => ({
  body,
  x: body.length * along,
}));

function speedAt(controls: Controls, s: number): number {
  return Math.hypot(...onCurve(controls, s).velocity);
}

/** Adaptive Simpson over the parameter; the tolerance is absolute, mm. */
function lengthByQuadrature(controls: Controls, from: number, to: number): number {
  const f = (s: number): number => speedAt(controls, s);
  const simpson = (a: number, b: number, fa: number, fm: number, fb: number): number =>
    ((b - a) / 6) * (fa + 4 * fm + fb);
  const refine = (
    a: number,
    b: number,
    fa: number,
    fm: number,
    fb: number,
    whole: number,
    depth: number,
  ): number => {
    const m = (a + b) / 2;
    const [fl, fr] = [f((a + m) / 2), f((m + b) / 2)];
    const [left, right] = [simpson(a, m, fa, fl, fm), simpson(m, b, fm, fr, fb)];
    const off = left + right - whole;
    if (depth === 0 || Math.abs(off) < 1e-12) return left + right + off / 15;
    return refine(a, m, fa, fl, fm, left, depth - 1) + refine(m, b, fm, fr, fb, right, depth - 1);
  };
  const [fa, fm, fb] = [f(from), f((from + to) / 2), f(to)];
  return refine(from, to, fa, fm, fb, simpson(from, to, fa, fm, fb), 40);
}

/** Edge from the tail seam to x. */
function arcByQuadrature(body: Bouts, x: number): number {
  const { s, piece } = placeOn(body, x);
  return controlsOf(body).reduce((sum, controls, i) => {
    if (i > piece) return sum;
    const [from, to] = i < piece ? [0, 1] : i === 3 ? [s, 1] : [0, s];
    return sum + lengthByQuadrature(controls, from, to);
  }, 0);
}

function polylineLength(body: Bouts, cuts: number): number {
  return controlsOf(body).reduce((sum, controls) => {
    let [x, y] = onCurve(controls, 0).at;
    let length = 0;
    for (let i = 1; i <= cuts; i++) {
      const [nextX, nextY] = onCurve(controls, i / cuts).at;
      length += Math.hypot(nextX - x, nextY - y);
      [x, y] = [nextX, nextY];
    }
    return sum + length;
  }, 0);
}

describe("half width at x", () => {
  it("is that of the four Beziers drawn by de Casteljau and solved by bisection, to 1e-9 mm", () => {
    fc.assert(
      fc.property(place, ({ body, x }) => {
        const off = new BoutOutline(body).halfWidth(x) - halfWidthByBisection(body, x);
        expect(Math.abs(off)).toBeLessThan(1e-9);
      }),
      { numRuns: 600 },
    );
  });

  it("passes through tail, bouts, waist and neck end as stated", () => {
    fc.assert(
      fc.property(anyBouts, (body) => {
        const outline = new BoutOutline(body);
        expect(outline.halfWidth(0)).toBe(0);
        const stated = [
          [body.lowerBoutAt, body.lowerBoutWidth],
          [body.waistAt, body.waistWidth],
          [body.upperBoutAt, body.upperBoutWidth],
          [body.length, body.neckEndWidth],
        ] as const;
        for (const [x, width] of stated) expect(outline.halfWidth(x)).toBeCloseTo(width / 2, 9);
      }),
    );
  });

  it("is nowhere more than the widest, and the widest is reached", () => {
    fc.assert(
      fc.property(place, ({ body, x }) => {
        const outline = new BoutOutline(body);
        expect(outline.halfWidth(x)).toBeLessThanOrEqual(outline.widest * (1 + 1e-15));
        expect(Math.max(...outline.knots.map((knot) => outline.halfWidth(knot)))).toBeCloseTo(
          outline.widest,
          9,
        );
      }),
    );
  });

  it("meets itself where pieces join: a hair either side differs by a hair", () => {
    const outline = new BoutOutline(plainBouts);
    for (const knot of outline.knots.slice(1, -1)) {
      const [before, after] = [outline.halfWidth(knot - 1e-6), outline.halfWidth(knot + 1e-6)];
      expect(Math.abs(before - after)).toBeLessThan(1e-9);
    }
  });
});

describe("slope", () => {
  it("is the difference quotient of half width inside every piece", () => {
    const inside = fc.record({
      body: anyBouts,
      piece: fc.integer({ min: 0, max: 3 }),
      share: fc.integer({ min: 20, max: 980 }).map((n) => n / 1000),
    });
    fc.assert(
      fc.property(inside, ({ body, piece, share: along }) => {
        const outline = new BoutOutline(body);
        const [from = 0, to = 0] = outline.knots.slice(piece, piece + 2);
        const [x, h] = [from + (to - from) * along, (to - from) * 1e-5];
        const quotient = (outline.halfWidth(x + h) - outline.halfWidth(x - h)) / (2 * h);
        const scale = outline.widest / (to - from);
        expect(Math.abs(outline.slope(x) - quotient)).toBeLessThan(1e-5 * scale);
      }),
      { numRuns: 300 },
    );
  });

  it("is nought at bouts and waist, and endless at the tail", () => {
    const outline = new BoutOutline(plainBouts);
    for (const knot of outline.knots.slice(1, -1))
      expect(Math.abs(outline.slope(knot))).toBeLessThan(1e-9);
    expect(outline.slope(0)).toBe(Number.POSITIVE_INFINITY);
  });
});

describe("arc length", () => {
  it("is adaptive quadrature of the Beziers' own speed, to 1e-9 mm", () => {
    fc.assert(
      fc.property(guitarBouts, share, (body, along) => {
        const x = body.length * along;
        const off = new BoutOutline(body).arcLength(x) - arcByQuadrature(body, x);
        expect(Math.abs(off)).toBeLessThan(1e-9);
      }),
      { numRuns: 80 },
    );
  });

  it("keeps within 0.002 mm for any body at all, though it be long as a neck and thin as a string", () => {
    fc.assert(
      fc.property(place, ({ body, x }) => {
        const off = new BoutOutline(body).arcLength(x) - arcByQuadrature(body, x);
        expect(Math.abs(off)).toBeLessThan(2e-3);
      }),
      { numRuns: 80 },
    );
  });

  it("is what ever finer polylines approach from below, four times nearer at each halving", () => {
    const total = new BoutOutline(plainBouts).totalArc();
    const short = [500, 1000, 2000].map((cuts) => total - polylineLength(plainBouts, cuts));
    expect(Math.min(...short)).toBeGreaterThan(0);
    expect((short[0] ?? 0) / (short[1] ?? 1)).toBeCloseTo(4, 2);
    expect((short[1] ?? 0) / (short[2] ?? 1)).toBeCloseTo(4, 2);
    expect(total - polylineLength(plainBouts, 40000)).toBeLessThan(1e-6);
  });

  it("starts at nothing, rises, and ends at the whole", () => {
    fc.assert(
      fc.property(anyBouts, share, share, (body, p, q) => {
        const outline = new BoutOutline(body);
        const [near, far] = [Math.min(p, q), Math.max(p, q)].map((s) => s * body.length);
        expect(outline.arcLength(0)).toBe(0);
        expect(outline.arcLength(near ?? 0)).toBeLessThanOrEqual(outline.arcLength(far ?? 0));
        expect(outline.arcLength(body.length)).toBeCloseTo(outline.totalArc(), 9);
      }),
      { numRuns: 60 },
    );
  });

  it("is undone by x at arc: the edge measured to that x is the edge asked for, to 1e-9 mm", () => {
    fc.assert(
      fc.property(anyBouts, share, (body, part) => {
        const outline = new BoutOutline(body);
        const arc = outline.totalArc() * part;
        const x = outline.placeAtArc(arc)[0];
        expect(x).toBeGreaterThanOrEqual(0);
        expect(x).toBeLessThanOrEqual(body.length);
        // Where the edge runs square to the centreline, a last digit of x is much of the edge.
        const steep = Math.min(Math.abs(outline.slope(x)), 1e6);
        expect(Math.abs(outline.arcLength(x) - arc)).toBeLessThan(1e-9 + 1e-12 * steep);
      }),
      { numRuns: 400 },
    );
  });

  it("gives back x from its arc, to 1e-9 mm", () => {
    fc.assert(
      fc.property(place, ({ body, x }) => {
        const outline = new BoutOutline(body);
        expect(Math.abs(outline.placeAtArc(outline.arcLength(x))[0] - x)).toBeLessThan(1e-9);
      }),
      { numRuns: 400 },
    );
  });
});
