import { describe, expect, test } from "vitest";
import { boxesMeet } from "../../../src/drawing/box.ts";
import { textBox } from "../../../src/drawing/lettering.ts";
import type { Scene, TextShape } from "../../../src/drawing/scene.ts";
import { saddleProfile } from "../../../src/drawing/strings/saddle-profile.ts";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import type { Instrument } from "../../../src/instrument/instrument.ts";
import { saddleCrown } from "../../../src/profile/saddle-crown.ts";
import { planned } from "../../support/solved.ts";

const base = defaultInstrument;
const kinds: readonly (readonly [string, Instrument])[] = [
  ["six", base],
  ["twelve in pairs", { ...base, strings: { ...base.strings, count: 12, pairGap: 2.4 } }],
  [
    "fanned and slanted, settling",
    {
      ...base,
      neck: { ...base.neck, fan: 30 },
      bridge: { ...base.bridge, slant: 4 },
      strings: { ...base.strings, settling: 0.5 },
    },
  ],
  ["one alone", { ...base, strings: { ...base.strings, count: 1 } }],
];

function drawn(instrument: Instrument, width: number): Scene {
  const { givens, profile } = planned(instrument);
  const scene = saddleProfile(saddleCrown(givens, profile), {
    width,
    words: { height: (mm) => `${mm.toFixed(2)} mm`, figure: (mm) => mm.toFixed(2) },
    window: instrument.windows.saddleExposure,
    leftHanded: instrument.body.leftHanded === true,
  });
  if (scene === null) throw new Error("nothing drawn");
  return scene;
}

const texts = ({ shapes }: Scene, role?: string): TextShape[] =>
  shapes.flatMap((shape) =>
    shape.kind === "text" && (role === undefined || shape.role === role) ? [shape] : [],
  );

const pathOf = ({ shapes }: Scene, role: string): string[] =>
  shapes.flatMap((shape) => (shape.kind === "path" && shape.role === role ? [shape.d] : []));

const placesIn = (d: string): number[][] =>
  [...d.matchAll(/(-?[\d.]+),(-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);

describe.each([360, 600])("the saddle's profile, %i px wide", (width) => {
  test.each(kinds)("says each string's own height, over its place: %s", (_, instrument) => {
    const { profile } = planned(instrument);
    const scene = drawn(instrument, width);
    const heights = texts(scene, "string height");
    expect(heights.map(({ text }) => text)).toEqual(
      profile.stringExposure.map((mm) => mm.toFixed(2)),
    );
    const ticks = pathOf(scene, "string").map((d) => placesIn(d)[0]?.[0]);
    expect(ticks).toHaveLength(instrument.strings.count);
    heights.forEach(({ x }, i) => {
      expect(x).toBeCloseTo(ticks[i] ?? Number.NaN, 1);
    });
    for (const mm of profile.stringExposure) expect(scene.title).toContain(`${mm.toFixed(2)} mm`);
  });

  test.each(kinds)("writes nothing over anything else, nor past its edge: %s", (_, instrument) => {
    const scene = drawn(instrument, width);
    const boxes = texts(scene).map(textBox);
    boxes.forEach((box, i) => {
      expect(box.left).toBeGreaterThanOrEqual(0);
      expect(box.right).toBeLessThanOrEqual(scene.width);
      expect(box.top).toBeGreaterThanOrEqual(0);
      expect(box.bottom).toBeLessThanOrEqual(scene.height);
      for (const other of boxes.slice(i + 1)) expect(boxesMeet(box, other)).toBe(false);
    });
  });

  test.each(kinds)(
    "draws the crown through the heights, larger by what it says: %s",
    (_, instrument) => {
      const { profile } = planned(instrument);
      const scene = drawn(instrument, width);
      const times = Number(
        texts(scene, "legend")
          .find(({ text }) => /×/.test(text))
          ?.text.match(/\d+$/)?.[0] ?? 1,
      );
      const crown = placesIn(pathOf(scene, "crown")[0] ?? "");
      const level = crown[0]?.[1] ?? Number.NaN;
      const across = saddleCrown(planned(instrument).givens, profile).strings.at(-1)?.[0] ?? 0;
      const ticks = pathOf(scene, "string").map((d) => placesIn(d)[0]?.[0] ?? Number.NaN);
      const along = across === 0 ? null : ((ticks.at(-1) ?? 0) - (ticks[0] ?? 0)) / across;
      profile.stringExposure.forEach((mm, i) => {
        const [, y] = crown.find(([x]) => Math.abs((x ?? 0) - (ticks[i] ?? 0)) < 0.02) ?? [];
        if (along !== null) expect(level - (y ?? Number.NaN)).toBeCloseTo(mm * along * times, 0);
      });
    },
  );
});

test("of a left-handed instrument it is seen from the neck, bass on the left", () => {
  expect(drawn(base, 600).title).toMatch(/^The saddle seen from the tail/);
  const left = { ...base, body: { ...base.body, leftHanded: true as const } };
  expect(drawn(left, 600).title).toMatch(/^The saddle seen from the neck/);
});

test("strings that lie under the bridge's top are drawn under it", () => {
  const low = {
    ...base,
    bridge: { ...base.bridge, thickness: 12 },
    target: { kind: "shim", value: 8 } as const,
  };
  const { profile } = planned(low);
  expect(Math.min(...profile.stringExposure)).toBeLessThan(0);
  const scene = drawn(low, 600);
  expect(texts(scene, "string height").some(({ text }) => text.startsWith("-"))).toBe(true);
  expect(scene.height).toBeGreaterThan(drawn(base, 600).height - 200);
});
