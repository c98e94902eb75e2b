import { describe, expect, it } from "vitest";
import { sagitta } from "../../src/geometry/circle.ts";
import { domeLeaning, domeZ } from "../../src/geometry/dome.ts";
import { parseLength } from "../../src/instrument/length.ts";

/*
 * Depth of a dish over a 24 in chord, mm, for the radii dishes are sold in. Exact: anyone can redo it
 * from h = r − √(r² − c²/4) with 1 ft = 304.8 mm.
 */
const depths = [
  ["12 ft", 12.722],
  ["15 ft", 10.171],
  ["20 ft", 7.625],
  ["25 ft", 6.098],
  ["28 ft", 5.445],
  ["30 ft", 5.081],
  ["50 ft", 3.048],
] as const;

const printedTo = 0.0005;

function millimetres(text: string): number {
  const parsed = parseLength(text, "mm");
  if (!parsed.ok) throw new Error(parsed.why);
  return parsed.mm;
}

describe.each(depths)("a %s dish", (radius, depth) => {
  const curvature = 1 / millimetres(radius);
  const halfChord = millimetres("24 in") / 2;

  it(`is ${depth} mm deep over 24 in`, () => {
    expect(Math.abs(sagitta(curvature, halfChord) - depth)).toBeLessThan(printedTo);
  });

  it("stands as high in the middle of a level dome between points 24 in apart", () => {
    const dome = domeLeaning(curvature, 0, halfChord, 0);
    if (dome === null) throw new Error("no dome");
    expect(Math.abs(domeZ(dome, 0, 0) - depth)).toBeLessThan(printedTo);
  });
});
