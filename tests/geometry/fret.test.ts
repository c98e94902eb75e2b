import fc from "fast-check";
import { expect, it } from "vitest";
import { fretToBridge } from "../../src/geometry/fret.ts";
import { even } from "./even.ts";

fc.configureGlobal({ seed: 20261125 });

it("twelve frets halve what is left to the bridge, and each takes the same share", () => {
  fc.assert(
    fc.property(even(100, 1500), fc.integer({ min: 0, max: 24 }), (scale, fret) => {
      const left = fretToBridge(scale, fret);
      expect(fretToBridge(scale, 0)).toBe(scale);
      expect(fretToBridge(scale, fret + 12)).toBeCloseTo(left / 2, 10);
      expect((left / fretToBridge(scale, fret + 1)) ** 12).toBeCloseTo(2, 12);
    }),
  );
});
