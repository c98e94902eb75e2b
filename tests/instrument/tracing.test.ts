import { describe, expect, test } from "vitest";
import { readInstrument } from "../../src/instrument/read-instrument.ts";
import { tracingFaultPhrase, tracingLimits } from "../../src/instrument/tracing.ts";

const pear = [
  [0, 0],
  [20, 110],
  [120, 180],
  [300, 120],
  [400, 60],
] as const;

const withTracing = (tracing: unknown, length = 400) =>
  readInstrument({ body: { length, tracing } });

const messageFor = (tracing: unknown, length = 400): string => {
  const read = withTracing(tracing, length);
  return read.ok ? "" : (read.problems[0]?.message ?? "");
};

describe("a tracing in a file", () => {
  test("is kept as it is", () => {
    const read = withTracing(pear);
    expect(read.ok && read.instrument.body.tracing).toEqual(pear);
    if (!read.ok) return;
    const again = readInstrument(JSON.parse(JSON.stringify(read.instrument)));
    expect(again.ok && again.instrument).toEqual(read.instrument);
  });

  test("is absent by default, not undefined", () => {
    const read = readInstrument({});
    expect(read.ok && "tracing" in read.instrument.body).toBe(false);
  });

  test("needs no bouts that follow one another", () => {
    const read = readInstrument({ body: { length: 400, upperBoutAt: 450, tracing: pear } });
    expect(read.ok).toBe(true);
  });

  test("must be as long as the body", () => {
    const read = withTracing(pear, 401);
    expect(!read.ok && read.problems[0]).toMatchObject({ path: "body.length", range: [400, 400] });
  });

  test.each([
    ["no list", 5, "list of places"],
    ["null", null, "list of places"],
    ["places of one number", [[0], [1], [2]], "list of places"],
    [
      "places of words",
      [
        ["0", "0"],
        ["1", "1"],
        ["2", "2"],
      ],
      "list of places",
    ],
    [
      "too few",
      [
        [0, 0],
        [400, 60],
      ],
      "3 to 400 places",
    ],
    [
      "too many",
      Array.from({ length: tracingLimits.most + 1 }, (_, i) => [i, i === 0 ? 0 : 50]),
      "3 to 400 places",
    ],
    [
      "a start off the tail",
      [
        [1, 0],
        [100, 100],
        [400, 60],
      ],
      "start at the tail",
    ],
    [
      "a start off the centreline",
      [
        [0, 4],
        [100, 100],
        [400, 60],
      ],
      "start at the tail",
    ],
    [
      "an end far off",
      [
        [0, 0],
        [100, 100],
        [4000, 60],
      ],
      "places that end",
    ],
    [
      "a step back",
      [
        [0, 0],
        [100, 100],
        [90, 120],
        [400, 60],
      ],
      "place 3 does not",
    ],
    [
      "two at one place",
      [
        [0, 0],
        [100, 100],
        [100, 120],
        [400, 60],
      ],
      "place 3 does not",
    ],
    [
      "no width inside",
      [
        [0, 0],
        [100, 0],
        [400, 60],
      ],
      "half widths",
    ],
    [
      "a width below nothing",
      [
        [0, 0],
        [100, -5],
        [400, 60],
      ],
      "half widths",
    ],
    [
      "too wide",
      [
        [0, 0],
        [100, 5000],
        [400, 60],
      ],
      "half widths",
    ],
  ])("%s is refused in plain words", (_, tracing, words) => {
    expect(messageFor(tracing)).toContain("body.tracing must be");
    expect(messageFor(tracing)).toContain(words);
  });

  test("no hostile value is let in", () => {
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY, 1e308, {}, "x".repeat(1e5)]) {
      expect(
        withTracing([
          [0, 0],
          [100, value],
          [400, 60],
        ]).ok,
      ).toBe(false);
      expect(
        withTracing([
          [0, 0],
          [value, 100],
          [400, 60],
        ]).ok,
      ).toBe(false);
    }
  });
});

test("each fault of a drawing is told in a sentence", () => {
  const faults = [
    { why: "too few" },
    { why: "turns back", x: 100, by: 4 },
    { why: "folds", x: 100 },
    { why: "crosses the centreline", x: 100 },
    { why: "misses the tail", by: 5 },
    { why: "misses the neck end", by: 5 },
    { why: "halves differ", x: 100, by: 9 },
  ] as const;
  const said = faults.map((fault) =>
    tracingFaultPhrase(fault)
      .filter((part) => typeof part === "string")
      .join("#"),
  );
  expect(new Set(said).size).toBe(faults.length);
  for (const sentence of said) expect(sentence).toMatch(/\.$/);
});
