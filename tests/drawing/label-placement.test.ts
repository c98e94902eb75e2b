import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Box, boxesMeet, boxHolds, lineMeets } from "../../src/drawing/box.ts";
import type { Point } from "../../src/drawing/frame.ts";
import { heavy, light, Placer, type Way } from "../../src/drawing/label-placement.ts";
import { textBox } from "../../src/drawing/lettering.ts";

const sheet: Box = { left: 0, top: 0, right: 300, bottom: 200 };

const way = (x: number, y: number, text: string, more: Partial<Way> = {}): Way => ({
  text: { kind: "text", role: "value", x, y, anchor: "start", size: 12, text },
  strokes: [],
  shelf: [],
  lane: null,
  cost: 0,
  shapes: () => [],
  ...more,
});

const ways = fc.array(
  fc
    .record({
      x: fc.integer({ min: -20, max: 300 }),
      y: fc.integer({ min: -5, max: 205 }),
      text: fc.constantFrom("8", "shim 8.4 mm", "gap under straightedge −1.25 mm"),
      to: fc.tuple(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 200 })),
    })
    .map(({ x, y, text, to }) => way(x, y, text, { strokes: [[[x, y + 6], to]] })),
  { minLength: 1, maxLength: 6 },
);

describe("Placer", () => {
  test("never lets two texts meet, nor a line cross a text, whatever is offered", () => {
    fc.assert(
      fc.property(fc.array(ways, { maxLength: 30 }), (offers) => {
        const placer = new Placer(sheet);
        const taken = offers.map((offer) => placer.choose(offer)).filter((w) => w !== null);
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

  test("takes the cheapest way that fits, and none when none does", () => {
    const placer = new Placer(sheet);
    const first = way(10, 50, "first");
    expect(placer.choose([first])).toBe(first);
    const dear = way(10, 90, "second", { cost: 1 });
    expect(placer.choose([way(12, 52, "second"), dear])).toBe(dear);
    expect(placer.choose([way(12, 52, "third"), way(295, 90, "third")])).toBeNull();
  });

  test("would sooner pay for another way than write on an outline", () => {
    const across: readonly Point[] = [
      [0, 45],
      [300, 45],
    ];
    const onLine = way(10, 50, "value");
    const clear = way(10, 90, "value", { cost: light + 1 });
    const placer = new Placer(sheet);
    placer.avoid(across, heavy);
    expect(placer.choose([onLine, clear])).toBe(clear);
    const thin = new Placer(sheet);
    thin.avoid(across, light);
    expect(thin.choose([onLine, clear])).toBe(onLine);
  });

  test("keeps dimension lines out of one another's lanes", () => {
    const lane = { left: 100, top: 20, right: 110, bottom: 80 };
    const placer = new Placer(sheet);
    expect(placer.choose([way(10, 50, "a", { lane })])).not.toBeNull();
    expect(
      placer.choose([way(10, 90, "b", { lane: { ...lane, top: 79, bottom: 90 } })]),
    ).toBeNull();
    expect(
      placer.choose([way(10, 90, "b", { lane: { ...lane, top: 80, bottom: 90 } })]),
    ).not.toBeNull();
  });
});
