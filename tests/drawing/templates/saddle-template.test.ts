import { describe, expect, test } from "vitest";
import { saddleTemplate } from "../../../src/drawing/templates/saddle-template.ts";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import type { Instrument } from "../../../src/instrument/instrument.ts";
import { aimed, planned } from "../../support/solved.ts";

const base = defaultInstrument;
const kinds: readonly (readonly [string, Instrument])[] = [
  ["evenly spread", base],
  ["in pairs", { ...base, strings: { ...base.strings, count: 12, pairGap: 2.2 } }],
  [
    "fanned and slanted",
    {
      ...base,
      neck: { ...base.neck, fan: 30 },
      bridge: { ...base.bridge, slant: 4 },
      strings: { ...base.strings, settling: 0.5 },
    },
  ],
  ["one alone", { ...base, strings: { ...base.strings, count: 1 } }],
];

describe("the saddle's template", () => {
  test.each(kinds)("has its crown at each string's own height: %s", (_, instrument) => {
    const { givens, profile } = planned(instrument);
    const template = saddleTemplate(givens, profile);
    const outline = template?.lines.find(({ role }) => role === "saddle")?.places ?? [];
    const ticks = template?.lines.filter(({ role }) => role === "string") ?? [];
    expect(ticks).toHaveLength(instrument.strings.count);
    ticks.forEach(({ places: [, top] }, i) => {
      const exposure = profile.stringExposure[i] ?? Number.NaN;
      expect(top?.[1]).toBeCloseTo(exposure, 9);
      expect(outline.some(([x, y]) => Math.hypot(x - (top?.[0] ?? 0), y - exposure) < 1e-9)).toBe(
        true,
      );
      const said = `${exposure.toFixed(2)} mm (${(exposure / 25.4).toFixed(3)} in)`;
      expect(template?.labels.some(({ text }) => text.includes(said))).toBe(true);
    });
    // From the outer bass string to the outer treble, as far as they are apart along the saddle.
    const { fan, fanFret } = instrument.neck;
    const run = fan * 2 ** (-fanFret / 12) + instrument.bridge.slant;
    const apart =
      instrument.strings.count === 1 ? 0 : Math.hypot(instrument.strings.spreadSaddle, run);
    expect(ticks.at(-1)?.places[0]?.[0]).toBeCloseTo(apart, 9);
  });

  test("bulges between the outer strings as the fingerboard's curve does", () => {
    const { givens, profile } = planned(base);
    const outline = saddleTemplate(givens, profile)?.lines[0]?.places ?? [];
    const highest = Math.max(...outline.map(([, y]) => y));
    expect(highest).toBeGreaterThan(Math.max(...profile.stringExposure) - 1e-9);
    for (const [x, y] of outline) expect(Number.isFinite(x) && y >= 0).toBe(true);
  });

  test("is none where a string stands no higher than the bridge", () => {
    const { givens, profile } = planned(aimed(base, "saddleExposure", 0.2));
    expect(Math.min(...profile.stringExposure)).toBeLessThanOrEqual(0);
    expect(saddleTemplate(givens, profile)).toBeNull();
  });
});
