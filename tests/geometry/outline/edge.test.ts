import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { along, edgeOf } from "../../../src/geometry/outline/edge.ts";
import { BoutOutline } from "../../../src/geometry/outline/outline.ts";
import { anyBouts } from "../bezier-body.ts";

fc.configureGlobal({ seed: 20261125 });

const cut = fc
  .record({ body: anyBouts, share: fc.integer({ min: 1, max: 1000 }) })
  .map(({ body, share }) => ({ outline: new BoutOutline(body), to: (body.length * share) / 1000 }));

describe("places along the edge", () => {
  it("rise from the tail end to the place asked for, both included", () => {
    fc.assert(
      fc.property(cut, ({ outline, to }) => {
        const { xs } = edgeOf(outline, to);
        expect(xs[0]).toBe(0);
        expect(xs.at(-1)).toBeCloseTo(to, 9);
        xs.forEach((x, i) => {
          if (i > 0) expect(x).toBeGreaterThan(xs[i - 1] ?? Number.NaN);
        });
      }),
    );
  });

  it("take in every place on the way where smooth pieces meet", () => {
    fc.assert(
      fc.property(cut, ({ outline, to }) => {
        const { xs } = edgeOf(outline, to);
        for (const knot of outline.knots.filter((place) => place < to))
          expect(Math.min(...xs.map((x) => Math.abs(x - knot)))).toBeLessThan(1e-9);
      }),
    );
  });

  it("carry the outline's half widths, and what is asked along them", () => {
    fc.assert(
      fc.property(cut, ({ outline, to }) => {
        const edge = edgeOf(outline, to);
        expect(edge.halfWidths).toEqual(edge.xs.map((x) => outline.halfWidth(x)));
        expect(along(edge, (x, y) => x + 2 * y)).toEqual(
          edge.xs.map((x) => x + 2 * outline.halfWidth(x)),
        );
      }),
    );
  });

  it("leave no gap longer than a seventh of their piece", () => {
    fc.assert(
      fc.property(cut, ({ outline, to }) => {
        const { xs } = edgeOf(outline, to);
        const ends = [...outline.knots.filter((knot) => knot < to), to];
        const longest = Math.max(...ends.slice(1).map((end, i) => end - (ends[i] ?? 0)));
        xs.forEach((x, i) => {
          if (i > 0) expect(x - (xs[i - 1] ?? Number.NaN)).toBeLessThan(longest / 7);
        });
      }),
    );
  });
});
