import { describe, expect, it } from "vitest";
import { presets } from "../../src/instrument/presets.ts";
import { aimedAt } from "../support/random-instrument.ts";
import { solved } from "../support/solved.ts";

/*
 * A builder's pivoting sanding jig (theamateurluthier.com/projects/htmlpages/ps11.html; our reading of it): a plate as
 * thick as fingerboard and fret, against a pivot board as thick as the bridge, lays the fret plane on the bridge's top.
 * The flat carried to the bridge then passes (bridge − fingerboard − fret) over the top there.
 */
describe.each(presets.map((preset) => [preset.name, preset] as const))("%s", (_, preset) => {
  const { neck, bridge } = preset;
  const pivotOverPlate = bridge.thickness - neck.fingerboardThickness - neck.fretHeight;

  it("has that gap at the bridge when the fret plane lies on the bridge", () => {
    const profile = solved(aimedAt(preset, "bridgeClearance", 0));
    expect(Math.abs(profile.flatGap - pivotOverPlate)).toBeLessThan(1e-9);
  });

  it("has the fret plane over the bridge with more shim, and under it with less", () => {
    const { shim } = solved(aimedAt(preset, "bridgeClearance", 0));
    const thicker = solved(aimedAt(preset, "shim", shim + 0.5));
    const thinner = solved(aimedAt(preset, "shim", shim - 0.5));
    expect(thicker.flatGap).toBeGreaterThan(pivotOverPlate);
    expect(thicker.bridgeClearance).toBeGreaterThan(0.1);
    expect(thinner.flatGap).toBeLessThan(pivotOverPlate);
    expect(thinner.bridgeClearance).toBeLessThan(-0.1);
  });
});
