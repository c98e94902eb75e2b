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

  test("may run back toward the tail round a cutaway's horn, and makes the file one of version 2", () => {
    const horned = [...pear.slice(0, 4), [380, 110], [340, 90], [400, 60]];
    const read = withTracing(horned);
    expect(read.ok && [read.instrument.body.tracing, read.instrument.version]).toEqual([horned, 2]);
    const plain = withTracing(pear);
    expect(plain.ok && plain.instrument.version).toBe(1);
  });

  test("of the treble half alone must be as long as the body, and of both as long as one another", () => {
    const both = (tracing: unknown, tracingTreble: unknown, length = 400) =>
      readInstrument({ body: { length, tracing, tracingTreble } });
    const longer = [...pear.slice(0, 4), [401, 60]];
    const read = both(pear, pear);
    expect(read.ok && [read.instrument.body.tracingTreble, read.instrument.version]).toEqual([
      pear,
      2,
    ]);
    const alone = readInstrument({ body: { length: 401, tracingTreble: pear } });
    expect(!alone.ok && alone.problems[0]).toMatchObject({
      path: "body.length",
      range: [400, 400],
    });
    const uneven = both(pear, longer);
    expect(!uneven.ok && uneven.problems[0]?.path).toBe("body.tracingTreble");
    const bad = both(pear, 5);
    expect(!bad.ok && bad.problems[0]?.message).toContain("body.tracingTreble must be a list");
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
      "a line that crosses itself",
      [
        [0, 0],
        [110, 100],
        [110, 120],
        [90, 110],
        [400, 60],
      ],
      "does not cross itself; it does so near 90 mm",
    ],
    [
      "two at one place",
      [
        [0, 0],
        [100, 100],
        [100, 100],
        [400, 60],
      ],
      "place 3 is nearer",
    ],
    [
      "a horn past the neck end",
      [
        [0, 0],
        [100, 100],
        [410, 120],
        [300, 80],
        [400, 60],
      ],
      "short of the neck end, 400 mm",
    ],
    [
      "a line back past the tail",
      [
        [0, 0],
        [100, 100],
        [-1, 120],
        [400, 60],
      ],
      "neckward of the tail",
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
  ] as const;
  const said = faults.map((fault) =>
    tracingFaultPhrase(fault)
      .filter((part) => typeof part === "string")
      .join("#"),
  );
  expect(new Set(said).size).toBe(faults.length);
  for (const sentence of said) expect(sentence).toMatch(/\.$/);
});
