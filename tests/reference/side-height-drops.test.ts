import { describe, expect, it } from "vitest";
import { sagitta } from "../../src/geometry/circle.ts";
import { type Dome, domeLeaning, domeZ } from "../../src/geometry/dome.ts";

/*
 * How far a domed back has fallen at the side, h = r − √(r² − x²) from its crest. Method seen on a builder's page on
 * side heights for domed backs (richardarnoldguitars.com/side-height-for-domed-backs.html); the figures are exact.
 */
const printedTo = 0.0005;

/** A level dome with its crest at the origin. */
function crested(radius: number): Dome {
  const dome = domeLeaning(1 / radius, 0, 0, 0);
  if (dome === null) throw new Error("no dome");
  return dome;
}

describe("side height drop", () => {
  it("is 4.102 mm at 250 mm from the crest of a 25 ft dome", () => {
    expect(Math.abs(-domeZ(crested(7620), 250, 0) - 4.102)).toBeLessThan(printedTo);
    expect(Math.abs(-domeZ(crested(7620), 0, 250) - 4.102)).toBeLessThan(printedTo);
  });

  it("is 11.223 mm at 200 along and 250 across on a 15 ft dome, not the 11.217 of the two drops added", () => {
    expect(Math.abs(-domeZ(crested(4572), 200, 250) - 11.223)).toBeLessThan(printedTo);
    const added = sagitta(1 / 4572, 200) + sagitta(1 / 4572, 250);
    expect(Math.abs(added - 11.217)).toBeLessThan(printedTo);
  });
});
