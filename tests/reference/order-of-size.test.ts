import { describe, expect, it } from "vitest";
import { presets } from "../../src/instrument/presets.ts";
import { aimedAt } from "../support/random-instrument.ts";
import { instrumentFrom, solved } from "../support/solved.ts";

/*
 * Common practice, no source: an orchestra-size body of about 490 mm, a 28 ft dish, the break about 100 mm from the neck end,
 * 645 mm scale, 14 frets to the body, 6 mm fingerboard, 9 mm bridge. A shim of some 7 to 8 mm gives a pitch a little over 1 degree,
 * the fret plane within about 1 mm of the bridge top, and strings near half an inch, 11 to 14 mm, over the top at the saddle.
 */
describe("an orchestra-size body on a 28 ft dish", () => {
  it.each([7, 7.5, 8])("comes out as builders expect on a shim of %d mm", (shim) => {
    const profile = solved(
      instrumentFrom({
        body: { length: 490 },
        dome: { dishRadius: 28 * 304.8, braceRadius: 28 * 304.8, flatLength: 100 },
        neck: { scale: 645, joinFret: 14, fingerboardThickness: 6 },
        bridge: { thickness: 9 },
        target: { kind: "shim", value: shim },
      }),
    );
    expect(profile.pitch).toBeGreaterThan(1);
    expect(profile.pitch).toBeLessThan(1.5);
    expect(Math.abs(profile.bridgeClearance)).toBeLessThan(1);
    expect(profile.stringHeight).toBeGreaterThan(11);
    expect(profile.stringHeight).toBeLessThan(14);
  });
});

describe("one shim of 7.5 mm", () => {
  // Common practice, no source: the same shim stays usable from three-quarter size to jumbo.
  it.each(presets.map((preset) => [preset.name, preset] as const))("serves a %s", (_, preset) => {
    const profile = solved(aimedAt(preset, "shim", 7.5));
    expect(profile.pitch).toBeGreaterThan(1);
    expect(profile.pitch).toBeLessThan(1.5);
    expect(Math.abs(profile.bridgeClearance)).toBeLessThan(1);
  });
});
