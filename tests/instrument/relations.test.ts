import { describe, expect, it } from "vitest";
import { readInstrument } from "../../src/instrument/read-instrument.ts";

function problemsOf(json: unknown) {
  const result = readInstrument(json);
  return result.ok ? [] : result.problems;
}

const paths = (json: unknown) => problemsOf(json).map(({ path }) => path);

describe("numbers that depend on one another", () => {
  it("wants the outline's places in order, and says what range is left to each", () => {
    expect(problemsOf({ body: { waistAt: 120 } })).toEqual([
      {
        path: "body.lowerBoutAt",
        message: "body.lowerBoutAt must be between the tail and waistAt: 1 to 119 mm; it is 125.",
        range: [1, 119],
      },
      {
        path: "body.waistAt",
        message:
          "body.waistAt must be between lowerBoutAt and upperBoutAt: 126 to 394 mm; it is 120.",
        range: [126, 394],
      },
    ]);
    expect(paths({ body: { length: 395 } })).toEqual(["body.upperBoutAt"]);
  });

  it("takes either end of the range it gives", () => {
    for (const waistAt of [126, 394]) expect(paths({ body: { waistAt } })).toEqual([]);
  });

  it("gives no range where none is left", () => {
    const [, waist] = problemsOf({ body: { lowerBoutAt: 350, waistAt: 300, upperBoutAt: 340 } });
    expect(waist?.path).toBe("body.waistAt");
    expect(waist).not.toHaveProperty("range");
  });

  it("wants the low end of a window first", () => {
    expect(problemsOf({ windows: { pitch: [2, 1] } })).toEqual([
      {
        path: "windows.pitch.1",
        message: "windows.pitch.1 must be no less than the low end, 2; it is 1.",
        range: [2, 45],
      },
    ]);
    expect(paths({ windows: { pitch: [1.5, 1.5] } })).toEqual([]);
    expect(
      paths({ windows: { pitch: [1], stringHeight: [1, 2, 3], breakAngle: 4 } }).sort(),
    ).toEqual(["windows.breakAngle", "windows.pitch", "windows.stringHeight"]);
  });

  it("holds a target to the range of its kind", () => {
    expect(paths({ target: { kind: "shim", value: 60 } })).toEqual([]);
    expect(problemsOf({ target: { kind: "pitch", value: 60 } })[0]?.range).toEqual([-45, 45]);
    expect(paths({ target: { kind: "height" } })).toEqual(["target.kind"]);
  });
});
