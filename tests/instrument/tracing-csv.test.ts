import { describe, expect, test } from "vitest";
import { readTracingCsv } from "../../src/instrument/tracing-csv.ts";

const placesOf = (text: string) => {
  const read = readTracingCsv(text);
  return read.ok ? read.places : null;
};

describe("a list of places", () => {
  const wanted = [
    [0, 0],
    [1.5, -20],
    [30, 41.25],
  ];

  test.each([
    ["commas", "0,0\n1.5,-20\n30,41.25"],
    ["spaces after commas, and a line more", "0, 0\r\n1.5, -20\r\n\r\n30, 41.25\r\n"],
    ["spaces", "0 0\n1.5   -20\n 30 41.25"],
    ["semicolons and decimal commas", "0;0\n1,5;-20\n30;41,25"],
    ["tabs", "0\t0\n1,5\t-20\n30\t41.25"],
    [
      "a heading, remarks and a third column",
      "x,y,z\n# traced on a Sunday\n0,0,9\n1.5,-20,9\n30,41.25,9",
    ],
    ["powers of ten", "0,0\n15e-1,-2E1\n30,4125e-2"],
  ])("with %s", (_, text) => {
    expect(placesOf(text)).toEqual(wanted);
  });

  test.each(["0,0\n1,two", "0,0\n1", "0,0\n0x10,5", "0,0\nInfinity,5", "0,0\nNaN,NaN", "1e999,3"])(
    "%j is refused by its line",
    (text) => {
      const read = readTracingCsv(text);
      expect(!read.ok && read.why.join("")).toMatch(/Line/);
    },
  );

  test("of too many lines is refused", () => {
    expect(placesOf("1,2\n".repeat(20_002))).toBeNull();
  });

  test("of nothing is no places", () => {
    expect(placesOf("")).toEqual([]);
    expect(placesOf("only words\nand more")).toEqual([]);
  });
});

test("takes the commas in two values apart by a space as decimal marks", () => {
  expect(readTracingCsv("8,31 129,46\n9,5 130")).toEqual({
    ok: true,
    places: [
      [8.31, 129.46],
      [9.5, 130],
    ],
  });
  expect(readTracingCsv("8, 31\n9,32")).toEqual({
    ok: true,
    places: [
      [8, 31],
      [9, 32],
    ],
  });
});

test("refuses places no drawing has, and lines no outline has", () => {
  for (const line of ["1e308,5", "5,1e999", `${"1".repeat(50_000)}x`, `1${" ".repeat(50_000)},x`])
    expect(readTracingCsv(line).ok, line.slice(0, 20)).toBe(false);
});
