import { describe, expect, it } from "vitest";
import type { StepId } from "../../../src/instrument/as-built/steps.ts";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import type { Instrument } from "../../../src/instrument/instrument.ts";
import {
  combineRemedies,
  correctionOf,
  takeBackCorrection,
  takeCorrection,
} from "../../../src/profile/bench/correction.ts";
import { changedBy } from "../../../src/profile/bench/made-instrument.ts";
import { type Goal, goals, type Outlook } from "../../../src/profile/bench/outlook.ts";
import { type Remedy, type RemedyId, remediesOf } from "../../../src/profile/bench/remedy.ts";
import { fingerboardEndX, fretPlaneZ, fretX } from "../../../src/profile/neck.ts";
import { profileOf } from "../../../src/profile/profile.ts";
import { outlookFrom, recordOf } from "../../support/bench-record.ts";
import { randomInstruments } from "../../support/random-instrument.ts";

/** How near the core must come, mm. */
const near = 1e-6;

const gapOff = (instrument: Instrument, by: number): number => {
  const result = profileOf(instrument);
  if (!result.ok) throw new Error(JSON.stringify(result.refusal));
  return result.profile.flatGap + by;
};

const possible = (outlook: Outlook, record: ReturnType<typeof recordOf>, goal: Goal): Remedy[] =>
  correctionOf(outlook, record, goal).remedies.flatMap((one) => (one.ok ? [one.remedy] : []));

const stages: readonly (readonly StepId[])[] = [[], ["flat"], ["flat", "gap"]];

describe("each remedy, applied back to the core, gives the wanted outcome", () => {
  const instruments = [defaultInstrument, ...randomInstruments(12, 21)];
  const seen = new Map<RemedyId, number>();

  it.each([-0.6, -0.25, 0.25, 0.6])(
    "when the gap came out %d mm off",
    { timeout: 60_000 },
    (off) => {
      for (const instrument of instruments)
        for (const steps of stages)
          for (const goal of goals) {
            const record = recordOf({ gapBefore: gapOff(instrument, off) }, steps);
            // Before anything is sanded there is no gap to measure: the shim came out otherwise then.
            const early = recordOf({ shim: shimOff(instrument, off) });
            const now = steps.length === 0 ? early : record;
            const outlook = outlookFrom(instrument, now);
            const wanted = outlook.plan[goal];
            for (const { id, changes, raise } of possible(outlook, now, goal)) {
              const after = profileOf(changedBy(outlook.instrument, changes));
              if (!after.ok) throw new Error(`${id}: ${JSON.stringify(after.refusal)}`);
              expect(Math.abs(after.profile[goal] - wanted), `${id}, ${goal}`).toBeLessThan(near);
              expect(raise).toBeCloseTo(wanted - outlook.heights[goal], 12);
              seen.set(id, (seen.get(id) ?? 0) + 1);
            }
          }
    },
  );

  it("has tried every remedy there is, many times", () => {
    for (const id of remediesOf("break")) expect(seen.get(id) ?? 0, id).toBeGreaterThan(20);
  });
});

function shimOff(instrument: Instrument, by: number): number {
  const result = profileOf(instrument);
  if (!result.ok) throw new Error(JSON.stringify(result.refusal));
  return (result.profile.shim ?? Number.NaN) + 2 * by;
}

describe("a correction taken", () => {
  const record = recordOf(
    {
      shim: 8.4,
      gapAfter: gapOff(defaultInstrument, -0.4),
      bridgeThickness: 8.9,
      bridgeClearance: 0.1,
    },
    ["flat", "gap"],
  );
  const outlook = outlookFrom(defaultInstrument, record);
  const goal = "saddleExposure";

  it("brings the outlook to the plan, what was measured to stand off it included", () => {
    for (const { id, changes } of possible(outlook, record, goal)) {
      const taken = takeCorrection(record, outlook, id, changes, "2026-06-01");
      const after = outlookFrom(defaultInstrument, taken);
      expect(Math.abs(after.heights[goal] - outlook.plan[goal]), id).toBeLessThan(near);
    }
  });

  it("sets aside the measurements it puts out of date, and gives them back when undone", () => {
    const bridge = possible(outlook, record, goal).find(({ id }) => id === "bridge");
    if (bridge === undefined) throw new Error("no bridge");
    const taken = takeCorrection(record, outlook, bridge.id, bridge.changes, "2026-06-01");
    expect(Object.keys(taken.readings)).toEqual(["shim", "gapAfter"]);
    expect(takeBackCorrection(taken)).toEqual(record);
  });

  it("carries a shim that measures otherwise than it acts over to the next shim", () => {
    const offered = recordOf({ shim: 8.4, gapBefore: gapOff(defaultInstrument, -0.4) }, ["flat"]);
    const before = outlookFrom(defaultInstrument, offered);
    expect(before.offsets.shim).toBeGreaterThan(0.5);
    const again = possible(before, offered, goal).find(({ id }) => id === "flat-about-break");
    if (again === undefined) throw new Error("no re-sanding");
    const taken = takeCorrection(offered, before, again.id, again.changes, "2026-06-01");
    const toUse = (again.changes[0]?.value ?? Number.NaN) + before.offsets.shim;
    const used = { ...taken, readings: recordOf({ shim: toUse }).readings };
    expect(
      Math.abs(outlookFrom(defaultInstrument, used).heights[goal] - before.plan[goal]),
    ).toBeLessThan(near);
  });
});

describe("the wood each remedy names", () => {
  /** How far the fret plane has moved at x once a remedy is made. */
  const moved = (outlook: Outlook, { changes }: Remedy, x: number): number =>
    fretPlaneZ(changedBy(outlook.instrument, changes), x) - fretPlaneZ(outlook.instrument, x);

  it.each([-0.4, 0.4])("is where the fret plane turned by it lies, gap %d mm off", (off) => {
    for (const instrument of [defaultInstrument, ...randomInstruments(6, 61)]) {
      const record = recordOf({ gapAfter: gapOff(instrument, off) }, ["gap"]);
      const outlook = outlookFrom(instrument, record);
      const [nut, end, join] = [
        fretX(instrument, 0),
        fingerboardEndX(instrument),
        instrument.body.length,
      ];
      const found = new Map(
        possible(outlook, record, "bridgeClearance").map((remedy) => [remedy.id, remedy]),
      );
      const taper = found.get("fingerboard-taper");
      if (taper !== undefined) {
        const [kept, planed] = off < 0 ? [end, nut] : [nut, end];
        expect(moved(outlook, taper, kept)).toBeCloseTo(0, 9);
        expect(moved(outlook, taper, planed)).toBeCloseTo(-taper.amount, 9);
      }
      const wedge = found.get("wedge");
      if (wedge !== undefined) {
        expect(moved(outlook, wedge, join)).toBeCloseTo(0, 9);
        expect(moved(outlook, wedge, end)).toBeCloseTo(wedge.amount, 9);
      }
      const shoulder = found.get("heel-shoulder");
      if (shoulder !== undefined) {
        const planed = shoulder.also[0]?.find((part) => typeof part !== "string");
        const off = typeof planed === "object" ? planed.value : Number.NaN;
        expect(moved(outlook, shoulder, end)).toBeCloseTo(-off, 9);
      }
      expect(off < 0 ? wedge : shoulder).toBeDefined();
    }
  });

  it("is the strings' own heights set aside whenever anything under them is changed", () => {
    const strung = recordOf({ saddleExposure: 3, stringHeight: 11.6 }, ["gap"]);
    const outlook = outlookFrom(defaultInstrument, strung);
    for (const { id, changes } of possible(outlook, strung, "saddleExposure")) {
      const taken = takeCorrection(strung, outlook, id, changes, "2026-06-01");
      expect(Object.keys(taken.readings), id).toEqual([]);
      const after = outlookFrom(defaultInstrument, taken).heights.saddleExposure;
      expect(Math.abs(after - outlook.plan.saddleExposure), id).toBeLessThan(near);
    }
  });
});

describe("remedies together", () => {
  const record = recordOf({ gapAfter: gapOff(defaultInstrument, -1) }, ["flat", "gap"]);
  const outlook = outlookFrom(defaultInstrument, record);

  it("take each its share in order, and together the core's wanted outcome", () => {
    const shares = [
      { id: "bridge", most: 0.4 },
      { id: "fingerboard-thickness", most: 0.3 },
      { id: "heel-tip", most: 0.2 },
      { id: "fingerboard-taper", most: 5 },
    ] as const;
    const mix = combineRemedies(outlook, record, "saddleExposure", shares);
    expect(mix.parts.map(({ raise }) => raise.toFixed(6))).toEqual([
      "0.400000",
      "0.300000",
      "0.200000",
      "0.100000",
    ]);
    expect(Math.abs(mix.rest)).toBeLessThan(1e-12);
    const after = profileOf(changedBy(outlook.instrument, mix.changes));
    if (!after.ok) throw new Error(JSON.stringify(after.refusal));
    const off = after.profile.saddleExposure - outlook.plan.saddleExposure;
    expect(Math.abs(off)).toBeLessThan(near);
  });

  it("tell what they leave, and which of them could not be used", () => {
    const mix = combineRemedies(outlook, record, "saddleExposure", [
      { id: "flat-about-break", most: 1 },
      { id: "bridge", most: 0.4 },
    ]);
    expect(mix.rest).toBeCloseTo(0.6, 9);
    expect(mix.barred.map((one) => (one.ok ? "" : one.id))).toEqual(["flat-about-break"]);
  });
});

describe("what is no longer possible", () => {
  const barredAt = (steps: readonly StepId[], off: number): readonly string[] => {
    const record = recordOf({ gapBefore: gapOff(defaultInstrument, off) }, steps);
    const { remedies } = correctionOf(
      outlookFrom(defaultInstrument, record),
      record,
      "saddleExposure",
    );
    expect(remedies).toHaveLength(remediesOf("break").length);
    return remedies.flatMap((one) => {
      if (one.ok) return [];
      expect(one.bar.length).toBeGreaterThan(0);
      return [one.id];
    });
  };

  it("stays listed with its reason, stage by stage", () => {
    expect(barredAt(["flat"], -0.4)).toEqual(["shim", "flat-about-neck-end", "heel-shoulder"]);
    expect(barredAt(["flat"], 0.4)).toEqual(["shim", "flat-about-break", "wedge", "heel-tip"]);
    expect(barredAt(["gap"], -0.4)).toContain("flat-about-break");
    expect(barredAt(["gap", "fingerboard"], -0.4)).toContain("fingerboard-thickness");
    expect(barredAt(["gap", "fingerboard", "bridge"], 0.4)).toContain("bridge");
    expect(barredAt(["strings"], -0.4)).toEqual(
      remediesOf("break").filter((id) => id !== "saddle"),
    );
  });

  it("is possible again when a step is reopened", () => {
    expect(barredAt(["gap"], -0.4)).not.toContain("fingerboard-thickness");
  });

  it("offers nothing when nothing is left", () => {
    const record = recordOf({ gapBefore: gapOff(defaultInstrument, 0) });
    const none = correctionOf(outlookFrom(defaultInstrument, record), record, "saddleExposure");
    expect(none.remedies).toEqual([]);
  });
});
