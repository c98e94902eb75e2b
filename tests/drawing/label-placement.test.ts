import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Box, boxesMeet, boxHolds, lineMeets } from "../../src/drawing/box.ts";
import type { Point } from "../../src/drawing/frame.ts";
import {
  type LabelCandidate,
  LabelPlacement,
  outlineCost,
  thinLineCost,
} from "../../src/drawing/label-placement.ts";
import { textBox } from "../../src/drawing/lettering.ts";

const sheet: Box = { left: 0, top: 0, right: 300, bottom: 200 };

const candidate = (
  x: number,
  y: number,
  text: string,
  more: Partial<LabelCandidate> = {},
): LabelCandidate => ({
  text: { kind: "text", role: "value", x, y, anchor: "start", size: 12, text },
  strokes: [],
  leader: [],
  lane: null,
  cost: 0,
  shapes: () => [],
  ...more,
});

const candidates = fc.array(
  fc
    .record({
      x: fc.integer({ min: -20, max: 300 }),
      y: fc.integer({ min: -5, max: 205 }),
      text: fc.constantFrom("8", "shim 8.4 mm", "gap under straightedge −1.25 mm"),
      to: fc.tuple(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 200 })),
    })
    .map(({ x, y, text, to }) => candidate(x, y, text, { strokes: [[[x, y + 6], to]] })),
  { minLength: 1, maxLength: 6 },
);

describe("LabelPlacement", () => {
  test("never lets two texts meet, nor a line cross a text, whatever is offered", () => {
    fc.assert(
      fc.property(fc.array(candidates, { maxLength: 30 }), (offers) => {
        const labels = new LabelPlacement(sheet);
        const taken = offers.map((offer) => labels.choose(offer)).filter((w) => w !== null);
        const boxes = taken.map(({ text }) => textBox(text));
        boxes.forEach((box, i) => {
          expect(boxHolds(sheet, box)).toBe(true);
          for (const other of boxes.slice(i + 1)) expect(boxesMeet(box, other)).toBe(false);
          for (const { strokes } of taken)
            for (const [a, b] of strokes)
              if (a !== undefined && b !== undefined) expect(lineMeets(box, a, b)).toBe(false);
        });
      }),
    );
  });

  test("takes the cheapest candidate that fits, and none when none does", () => {
    const labels = new LabelPlacement(sheet);
    const first = candidate(10, 50, "first");
    expect(labels.choose([first])).toBe(first);
    const dear = candidate(10, 90, "second", { cost: 1 });
    expect(labels.choose([candidate(12, 52, "second"), dear])).toBe(dear);
    expect(labels.choose([candidate(12, 52, "third"), candidate(295, 90, "third")])).toBeNull();
  });

  test("would sooner pay for another candidate than write on an outline", () => {
    const across: readonly Point[] = [
      [0, 45],
      [300, 45],
    ];
    const onLine = candidate(10, 50, "value");
    const clear = candidate(10, 90, "value", { cost: thinLineCost + 1 });
    const labels = new LabelPlacement(sheet);
    labels.avoid(across, outlineCost);
    expect(labels.choose([onLine, clear])).toBe(clear);
    const thin = new LabelPlacement(sheet);
    thin.avoid(across, thinLineCost);
    expect(thin.choose([onLine, clear])).toBe(onLine);
  });

  test("keeps dimension lines out of one another's lanes", () => {
    const lane = { left: 100, top: 20, right: 110, bottom: 80 };
    const labels = new LabelPlacement(sheet);
    expect(labels.choose([candidate(10, 50, "a", { lane })])).not.toBeNull();
    expect(
      labels.choose([candidate(10, 90, "b", { lane: { ...lane, top: 79, bottom: 90 } })]),
    ).toBeNull();
    expect(
      labels.choose([candidate(10, 90, "b", { lane: { ...lane, top: 80, bottom: 90 } })]),
    ).not.toBeNull();
  });
});
