import { describe, expect, test } from "vitest";
import { sayPhrase } from "../../src/instrument/phrase.ts";
import { readingTracingSvg, readTracingSvg } from "../../src/instrument/tracing-svg.ts";

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

const refusedFor = (text: string): string => {
  const reading = readTracingSvg(text);
  return reading.ok ? "nothing" : sayPhrase(reading.why, "mm");
};

describe("what no outline holds is refused in a sentence", () => {
  test.each(["M0 0Q1e308 1e308 490 30", "M0 0Q1e200 1e200 490 30", "M0 0C1e7 0 0 9 490 30"])(
    "%s",
    (text) => {
      expect(refusedFor(text)).toMatch(/too far off/);
    },
  );

  test("and leaves the lines beside it to be read", () => {
    const { places, lines } = read("M0 0Q1e308 1e308 490 30M0 0L1 0L1 5");
    expect(places.length).toBe(3);
    expect(lines).toBe(1);
  });

  test("280 000 arcs, 30 000 paths of six pieces, a line of 20 000 curves, 500 groups", () => {
    const many = /more than 100000 lines and curves/;
    expect(refusedFor(`M0 0${"a1 1 0 0 1 2 0".repeat(280_000)}`)).toMatch(/too long/);
    expect(refusedFor(svg('<path d="M0 0h1v1h-1v9h3v2"/>'.repeat(30_000)))).toMatch(many);
    expect(refusedFor(`M0 0${"c1 0 2 9 4 4".repeat(20_000)}`)).toMatch(/more than 20000 places/);
    expect(refusedFor(svg("<g>".repeat(500)))).toMatch(/more than 100 groups/);
    expect(refusedFor(svg('<path d="M0 0L5 5L9 0">'.repeat(500)))).toMatch(/more than 100 groups/);
  });
});

test("is read path by path, so that it can be left off between", () => {
  const reading = readingTracingSvg(svg('<path d="M0 0L5 5L9 0"/>'.repeat(30)));
  const shares = [...reading];
  expect(shares).toHaveLength(30);
  expect(shares).toEqual([...shares].sort((a, b) => a - b));
  expect(shares.at(-1)).toBeLessThanOrEqual(1);
});

test("30 000 paths that hold no more than an outline might are read, each once", () => {
  const text = svg(`${'<path d="M0 0L5 5L9 0"/>'.repeat(30_000)}<path d="M0 0L5 5L9 -1"/>`);
  expect([...readingTracingSvg(text)]).toHaveLength(30_001);
  expect(read(text)).toMatchObject({
    lines: 30_001,
    places: [
      [0, 0],
      [5, 5],
      [9, -1],
    ],
  });
});
