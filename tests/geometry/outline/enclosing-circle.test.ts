import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { edgeOf } from "../../../src/geometry/outline/edge.ts";
import { enclosingCircle } from "../../../src/geometry/outline/enclosing-circle.ts";
import { BoutOutline, type Outline } from "../../../src/geometry/outline/outline.ts";
import { anyBouts, plainBouts } from "../bezier-body.ts";

fc.configureGlobal({ seed: 20261125 });

const cut = fc
  .record({ body: anyBouts, share: fc.integer({ min: 20, max: 1000 }) })
  .map(({ body, share }) => ({ outline: new BoutOutline(body), to: (body.length * share) / 1000 }));

type Point = readonly [number, number];

/** Many points of each piece of the edge, closer together where it is steep, at its ends. */
function edgePoints(outline: Outline, to: number, perPiece: number): Point[] {
  const ends = [...outline.knots.filter((knot) => knot < to), to];
  return ends.slice(1).flatMap((end, piece) => {
    const from = ends[piece] ?? 0;
    return Array.from({ length: perPiece + 1 }, (_, i): Point => {
      const x = from + ((end - from) * (1 - Math.cos((Math.PI * i) / perPiece))) / 2;
      return [x, outline.halfWidth(x)];
    });
  });
}

function farthest(points: readonly Point[], centreX: number): number {
  let most = 0;
  for (const [x, y] of points) most = Math.max(most, (x - centreX) ** 2 + y * y);
  return Math.sqrt(most);
}

/** The least of `farthest` over the centreline, which is convex, by ever smaller thirds. */
function byThirds(points: readonly Point[], to: number): number {
  let [low, high] = [0, to];
  for (let i = 0; i < 60; i++) {
    const [left, right] = [low + (high - low) / 3, high - (high - low) / 3];
    if (farthest(points, left) < farthest(points, right)) high = right;
    else low = left;
  }
  return farthest(points, (low + high) / 2);
}

describe("the smallest circle round the domed part", () => {
  it("is the one found by brute force over hundreds of points of every piece", () => {
    fc.assert(
      fc.property(cut, ({ outline, to }) => {
        const { radius } = enclosingCircle(outline, edgeOf(outline, to));
        const brute = byThirds(edgePoints(outline, to, 300), to);
        // Points miss the farthest place by at most their spacing squared over the radius.
        expect(radius).toBeGreaterThan(brute - 1e-7);
        expect(radius - brute).toBeLessThan(2e-3 + 1e-4 * radius);
      }),
      { numRuns: 40 },
    );
  });

  it("holds every point, and no smaller one of another centre does", () => {
    fc.assert(
      fc.property(cut, ({ outline, to }) => {
        const { centreX, radius } = enclosingCircle(outline, edgeOf(outline, to));
        const points = edgePoints(outline, to, 300);
        expect(farthest(points, centreX)).toBeLessThan(radius + 1e-7);
        expect(centreX).toBeGreaterThanOrEqual(0);
        expect(centreX).toBeLessThanOrEqual(to);
      }),
      { numRuns: 100 },
    );
  });

  it("is at least half as wide as the part is long, and as the part is wide", () => {
    const outline = new BoutOutline(plainBouts);
    const { radius } = enclosingCircle(outline, edgeOf(outline, 392));
    expect(radius).toBeGreaterThan(392 / 2);
    expect(radius).toBeGreaterThan(plainBouts.lowerBoutWidth / 2);
  });

  it("is the circle itself for a body drawn as one, but for the Bezier's own hair", () => {
    const round = {
      ...plainBouts,
      length: 400,
      lowerBoutAt: 199.5,
      waistAt: 200.5,
      upperBoutAt: 201.5,
      lowerBoutWidth: 399,
      waistWidth: 399,
      upperBoutWidth: 399,
      neckEndWidth: 0,
    };
    const outline = new BoutOutline(round);
    const { centreX, radius } = enclosingCircle(outline, edgeOf(outline, 400));
    expect(centreX).toBeCloseTo(200, 0);
    expect(radius).toBeCloseTo(200, 0);
  });
});
