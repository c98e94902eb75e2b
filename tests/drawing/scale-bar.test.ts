import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { roundLength, scaleRow } from "../../src/drawing/scale-bar.ts";
import { pathsOf, readPoints, textsOf } from "../support/read-scene.ts";

describe("roundLength", () => {
  test("is the longest round length there is room for", () => {
    expect(roundLength(1.3, 110, "mm")).toEqual({ mm: 50, text: "50 mm" });
    expect(roundLength(1.3, 130, "mm").text).toBe("100 mm");
    expect(roundLength(1.3, 130, "inch")).toEqual({ mm: 50.8, text: "2 in" });
    expect(roundLength(6.5, 20, "inch").text).toBe("1/16 in");
  });

  test("never takes more room than there is while a shorter one exists", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 20, noNaN: true }),
        fc.double({ min: 10, max: 200, noNaN: true }),
        fc.constantFrom("mm" as const, "inch" as const),
        (scale, room, unit) => {
          expect(roundLength(scale, room, unit).mm * scale).toBeLessThan(room + 1e-9);
        },
      ),
    );
  });
});

describe("scaleRow", () => {
  const rowFor = (room: number) => ({
    ...{ width: 0, height: 0, title: "" },
    shapes: [scaleRow({ along: 1.3, up: 6.5, stretch: 5, unit: "mm" }, 8, 100, room, 13)],
  });

  test("states the stretch and names both bars", () => {
    expect(textsOf(rowFor(740)).map(({ text }) => text)).toEqual([
      "Heights ×5",
      "50 mm along",
      "2 mm up",
    ]);
    expect(textsOf(rowFor(220)).map(({ text }) => text)).toEqual(["×5", "20 mm", "2 mm"]);
  });

  test("draws the bars as long as they say", () => {
    const [level, , , upright] = pathsOf(rowFor(740), "scale bar").map(({ d }) => readPoints(d));
    expect((level?.[1]?.[0] ?? 0) - (level?.[0]?.[0] ?? 0)).toBeCloseTo(50 * 1.3, 1);
    expect((upright?.[1]?.[1] ?? 0) - (upright?.[0]?.[1] ?? 0)).toBeCloseTo(2 * 6.5, 1);
  });
});
