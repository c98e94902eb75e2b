import { describe, expect, test } from "vitest";
import { whyPictureOf, whyPictures } from "../../../src/drawing/why/why-picture.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { givensOf } from "../../../src/profile/givens.ts";
import { letteringFaults, pathsOf, textsOf } from "../../support/read-scene.ts";
import { onSeat, solved, solvedSeat } from "../../support/solved.ts";

const words = {
  length: (mm: number) => `${mm.toFixed(1)} mm`,
  shim: (mm: number) => `${mm.toFixed(2)} mm`,
  height: (mm: number) => `${mm.toFixed(2)} mm`,
  angle: (degrees: number) => `${degrees.toFixed(2)}°`,
};

const ways = presets.flatMap((preset) => [
  { name: `${preset.name} on a shim`, instrument: preset, profile: solved(preset) },
  {
    name: `${preset.name} on a spacer`,
    instrument: onSeat({ ...preset, target: { kind: "stringHeight", value: 12.5 } }),
    profile: solvedSeat(onSeat({ ...preset, target: { kind: "stringHeight", value: 12.5 } })),
  },
]);

describe.each(ways)("the pictures of $name", ({ instrument, profile }) => {
  const set = givensOf(instrument);
  if (!set.ok) throw new Error("no givens");
  const picture = (which: (typeof whyPictures)[number]) =>
    whyPictureOf(which, set.givens, profile, words);

  test("keep within their frame, each with what it is about written under it", () => {
    for (const which of whyPictures) {
      const scene = picture(which);
      expect(letteringFaults(scene)).toEqual([]);
      expect(textsOf(scene).length).toBeGreaterThan(0);
      for (const { d } of pathsOf(scene))
        for (const number of d.match(/-?[\d.]+/g) ?? [])
          expect(Number(number)).toBeLessThanOrEqual(scene.width);
      expect(scene.title).not.toContain("NaN");
    }
  });

  test("say the core's own numbers", () => {
    const part = profile.seat === null ? profile.shim : profile.seat.spacer;
    expect(picture("part").title).toContain(` ${part.toFixed(2)} mm, pitch`);
    expect(picture("part").title).toContain(`pitch ${profile.pitch.toFixed(2)}°`);
    expect(picture("bridge").title).toContain(`${profile.bridgeClearance.toFixed(2)} mm`);
    expect(picture("saddle").title).toContain(`${profile.saddleExposure.toFixed(2)} mm`);
  });

  test("draw the part that sets the angle, and the plate's cut where there is one", () => {
    const roles = (which: (typeof whyPictures)[number]) =>
      pathsOf(picture(which)).map(({ role }) => role);
    expect(roles("part")).toContain(profile.seat === null ? "shim" : "spacer");
    expect(roles("flat").includes("seat cut")).toBe(profile.seat !== null);
    expect(roles("saddle")).toEqual(expect.arrayContaining(["bridge", "saddle", "string"]));
  });
});
