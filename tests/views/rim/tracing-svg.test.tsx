import { describe, expect, test } from "vitest";
import { readTracingSvg } from "../../../src/views/rim/tracing-svg.ts";

function read(text: string) {
  const reading = readTracingSvg(text);
  if (!reading.ok) throw new Error("not read");
  return reading;
}

const svg = (inner: string, attributes = ""): string =>
  `<?xml version="1.0"?><!-- <path d="M0 0L900 0L900 900"/> -->
  <svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${inner}</svg>`;

describe("an SVG drawing", () => {
  test("gives its places, absolute or relative, straight or closed", () => {
    expect(read("M1 2 L3 4 H10 V8 Z").places).toEqual([
      [1, 2],
      [3, 4],
      [10, 4],
      [10, 8],
      [1, 2],
    ]);
    expect(read("m1,2 2,2 h7 v4").places).toEqual([
      [1, 2],
      [3, 4],
      [10, 4],
      [10, 8],
    ]);
  });

  // A quarter circle of radius 100 lies within 0.03 of its cubic (kappa 0.5523); arcs are turned into such.
  test("bends its curves", () => {
    for (const d of ["M100 0C100 55.23 55.23 100 0 100", "M100 0A100 100 0 0 1 0 100"]) {
      const { places } = read(d);
      expect(places.length).toBeGreaterThan(8);
      for (const [x, y] of places) expect(Math.abs(Math.hypot(x, y) - 100)).toBeLessThan(0.04);
    }
    // A parabola by its own equation: from (0, 0) under (50, 100) to (100, 0), y = 2x(1 − x/100).
    for (const [x, y] of read("M0 0Q50 100 100 0").places)
      expect(y).toBeCloseTo(2 * x * (1 - x / 100), 9);
  });

  test("is laid by every transform round it, innermost first", () => {
    const { places } = read(
      svg(
        '<g transform="translate(10 20)"><g><path transform="scale(2)" d="M1 1L2 1L2 5"/></g></g>',
      ),
    );
    expect(places).toEqual([
      [12, 22],
      [14, 22],
      [14, 30],
    ]);
  });

  test("says its unit where it can", () => {
    const line = '<polyline points="0,0 10,0 10,30"/>';
    expect(read(svg(line, 'width="200mm" viewBox="0 0 100 100"')).unit).toBe(2);
    expect(read(svg(line, "width='10in' viewBox='0 0 254 100'")).unit).toBeCloseTo(1, 12);
    expect(read(svg(line, 'width="200" viewBox="0 0 100 100"')).unit).toBeNull();
    expect(read(svg(line)).unit).toBeNull();
    expect(read(line.replace("<polyline points=", "M0 0L1 1L2 1").slice(0, 13)).unit).toBeNull();
  });

  test("gives its longest line, and counts them; what is only defined is not drawn", () => {
    const drawing = read(
      svg(
        '<defs><path d="M0 0L500 0L500 500"/></defs><path d="M0 0L1 0L1 1M0 0L9 0L9 9"/><polygon points="0 0 3 0 3 3"/>',
      ),
    );
    expect(drawing.lines).toBe(3);
    expect(drawing.places).toEqual([
      [0, 0],
      [9, 0],
      [9, 9],
    ]);
  });

  test.each([
    "<html></html>",
    "<svg",
    "<",
    "<?xml?>",
    "<svg><path d='nonsense'/></svg>",
    "M",
    "",
    "M0 0",
  ])("%s is no drawing", (text) => {
    expect(readTracingSvg(text).ok).toBe(false);
  });

  // A reader that goes over what is left again at each sign would not end within the test's own limit.
  test.each(["<a ", '<a b="', "<!--", "<", "<a b='c' ", "M1 1 ", "<![CDATA["])(
    "%j a hundred thousand times over is read to its end and is no drawing",
    (part) => {
      expect(readTracingSvg(part.repeat(100_000)).ok).toBe(false);
    },
  );
});
