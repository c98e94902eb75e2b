import { describe, expect, it } from "vitest";
import { fretToBridge } from "../../src/geometry/fret.ts";
import { instrumentFrom, solved } from "../support/solved.ts";

describe("frets of a 25 in scale", () => {
  // Fret to bridge, mm, from a page named "Fret spacing" (stuphi.co.uk/wordpress/?page_id=18); 12 and 14 are exact arithmetic.
  it.each([
    [0, 635],
    [1, 599.36],
    [2, 565.721],
    [3, 533.969],
    [4, 504],
    [5, 475.712],
    [6, 449.013],
    [7, 423.812],
    [8, 400.025],
    [9, 377.573],
    [10, 356.382],
    [12, 317.5],
    [14, 282.86],
  ])("fret %d stands %d mm from the bridge", (fret, distance) => {
    expect(Math.abs(fretToBridge(635, fret) - distance)).toBeLessThan(0.0005);
  });

  it("puts the saddle line of a 14-fret body there, and compensation beyond it", () => {
    const { saddleX } = solved(
      instrumentFrom({
        body: { length: 490 },
        neck: { scale: 635, joinFret: 14 },
        bridge: { compensation: 3 },
        target: { kind: "shim", value: 8 },
      }),
    );
    expect(Math.abs(490 - saddleX - 3 - 282.86)).toBeLessThan(0.0005);
  });
});

describe("equal temperament", () => {
  it("steps by the twelfth root of two, 1.0594630944 (exact)", () => {
    for (let fret = 0; fret < 24; fret++) {
      const step = fretToBridge(635, fret) / fretToBridge(635, fret + 1);
      expect(Math.abs(step - 1.0594630944)).toBeLessThan(5e-11);
    }
  });

  it("has the fret constant 17.817 (M. Koch, Building Electric Guitars), exactly 17.8171537…", () => {
    const constant = 635 / (635 - fretToBridge(635, 1));
    expect(Math.abs(constant - 17.817)).toBeLessThan(0.0005);
    expect(Math.abs(constant - 17.8171537)).toBeLessThan(5e-8);
  });
});
