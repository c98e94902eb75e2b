import { describe, expect, test } from "vitest";
import { type StillPicture, whyPictureOf } from "../../../src/drawing/why/why-picture.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { raisedBy } from "../../../src/profile/comparison/part-worth.ts";
import { givensOf } from "../../../src/profile/givens.ts";
import { letteringFaults, pathsOf, textsOf } from "../../support/read-scene.ts";
import { onSeat, solved, solvedSeat } from "../../support/solved.ts";

const words = {
  length: (mm: number) => `${mm.toFixed(1)} mm`,
  shim: (mm: number) => `${mm.toFixed(2)} mm`,
  height: (mm: number) => `${mm.toFixed(2)} mm`,
  angle: (degrees: number) => `${degrees.toFixed(2)}°`,
  unit: "mm",
} as const;

const pictures: readonly StillPicture[] = [
  ...([
    "level",
    "mark",
    "dish",
    "top",
    "board",
    "angle",
    "straightedge",
    "bridge",
    "saddle",
  ] as const),
];

const ways = presets.flatMap((preset) => {
  const seated = onSeat({ ...preset, target: { kind: "stringHeight", value: 12.5 } });
  return [
    { name: `${preset.name} on a shim`, instrument: preset, profile: solved(preset) },
    { name: `${preset.name} on a spacer`, instrument: seated, profile: solvedSeat(seated) },
  ];
});

describe.each(ways)("the pictures of $name", ({ instrument, profile }) => {
  const set = givensOf(instrument);
  if (!set.ok) throw new Error("no givens");
  const picture = (which: StillPicture) => whyPictureOf(which, set.givens, profile, words);
  const pathOf = (which: StillPicture, role: string) =>
    placesOf(pathsOf(picture(which)).find((path) => path.role === role)?.d ?? "");

  test("keep within their frame, each with what it is about written under it", () => {
    for (const which of pictures) {
      const scene = picture(which);
      expect(letteringFaults(scene), which).toEqual([]);
      expect(textsOf(scene).length, which).toBeGreaterThan(0);
      expect(scene.title).not.toContain("NaN");
      for (const { d, role } of pathsOf(scene))
        for (const [x, y] of placesOf(d)) {
          expect(x, `${which} ${role}`).toBeGreaterThanOrEqual(0);
          expect(x, `${which} ${role}`).toBeLessThanOrEqual(scene.width);
          expect(y, `${which} ${role}`).toBeGreaterThanOrEqual(0);
          expect(y, `${which} ${role}`).toBeLessThanOrEqual(scene.height);
        }
    }
  });

  test("say the core's own numbers", () => {
    const part = profile.seat === null ? profile.shim : profile.seat.spacer;
    expect(picture("board").title).toContain(` ${part.toFixed(2)} mm`);
    expect(picture("angle").title).toContain(`pitch ${profile.pitch.toFixed(2)}°`);
    expect(picture("straightedge").title).toContain(`${profile.flatGap.toFixed(2)} mm`);
    expect(picture("bridge").title).toContain(`${profile.bridgeClearance.toFixed(2)} mm`);
    expect(picture("saddle").title).toContain(`${profile.saddleExposure.toFixed(2)} mm`);
  });

  test("draw heights to the stretch they state", () => {
    const stretch = (which: StillPicture): number => {
      const stated = textsOf(picture(which)).find(({ role }) => role === "scale")?.text ?? "";
      return stated === "True scale" ? 1 : Number(stated.replace(/^\D*/, ""));
    };
    const [from, to] = pathOf("straightedge", "gap");
    const up = (344 / instrument.body.length) * stretch("straightedge");
    expect((to?.[1] ?? 0) - (from?.[1] ?? 0)).toBeCloseTo(profile.flatGap * up, 1);
    const raised = raisedBy(instrument, profile, 1) ?? 0;
    const [crown] = pathOf("saddle", "string");
    const [higher] = pathOf("saddle", "string with more");
    expect((crown?.[1] ?? 0) - (higher?.[1] ?? 0)).toBeCloseTo(
      raised * (344 / instrument.body.length) * stretch("saddle"),
      1,
    );
  });

  test("draw the part that sets the angle, and the plate's cut where there is one", () => {
    const roles = (which: StillPicture) => pathsOf(picture(which)).map(({ role }) => role);
    const seat = profile.seat !== null;
    expect(roles("board")).toEqual(
      expect.arrayContaining(seat ? ["spacer", "bar"] : ["shim", "board"]),
    );
    expect(roles("angle").includes("seat cut")).toBe(seat);
    expect(roles("saddle")).toEqual(expect.arrayContaining(["bridge", "saddle", "string"]));
  });

  test("lay the rim top down in the dish, and on the board", () => {
    const down = (which: StillPicture, over: string, under: string) =>
      Math.max(...pathOf(which, over).map(([, y]) => y)) <=
      Math.max(...pathOf(which, under).map(([, y]) => y));
    expect(down("dish", "rim edge", "dish")).toBe(true);
    if (profile.seat === null) expect(down("board", "rim edge", "board")).toBe(true);
  });
});

/** The places of a path that is made of straight pieces. */
const placesOf = (d: string): readonly (readonly [number, number])[] =>
  [...d.matchAll(/(-?[\d.]+),(-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const);
