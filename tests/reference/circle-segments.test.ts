import { describe, expect, it } from "vitest";
import { sagitta } from "../../src/geometry/circle.ts";

/*
 * Height of a circle segment, h = r − √(r² − c²/4): CRC Concise Encyclopedia of Mathematics, "Segment".
 */

describe("height of a segment", () => {
  it.each([
    // "Circular Sections", the help page of Mathe-ASS (help.matheass.eu/en/CircularSections.html).
    // The second radius as printed is good to 5e-8, which alone moves the height by 4e-9.
    { radius: 12.1875, chord: 21, height: 6, printedTo: 1e-9 },
    { radius: 1.2732395, chord: 0.97449536, height: 0.096919589, printedTo: 6e-9 },
    // An arc-height calculator's worked examples (bit1024.com/tool/Arc-Height-Sagitta-Calculator).
    { radius: 10, chord: 12, height: 2, printedTo: 1e-9 },
    { radius: 15, chord: 20, height: 3.82, printedTo: 0.005 },
  ])("radius $radius, chord $chord: $height", ({ radius, chord, height, printedTo }) => {
    expect(Math.abs(sagitta(1 / radius, chord / 2) - height)).toBeLessThan(printedTo);
  });

  // The unit-radius table of engineers' handbooks: the layout from memory, the digits exact.
  it.each([
    [10, 0.00381],
    [30, 0.03407],
    [60, 0.13397],
    [90, 0.29289],
  ])("radius 1, an angle of %d degrees: %d", (angle, height) => {
    const halfChord = Math.sin((angle * Math.PI) / 360);
    expect(Math.abs(sagitta(1, halfChord) - height)).toBeLessThan(5e-6);
  });
});
