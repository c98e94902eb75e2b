import { describe, expect, it } from "vitest";
import type { FinishedInstrument } from "../../../src/instrument/as-built/as-built.ts";
import { demoShelf } from "../../../src/instrument/as-built/demo-shelf.ts";
import { readAsBuilt } from "../../../src/instrument/as-built/read-as-built.ts";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import type { Instrument } from "../../../src/instrument/instrument.ts";
import { sayPhrase } from "../../../src/instrument/phrase.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { readInstrument } from "../../../src/instrument/read-instrument.ts";
import { correctionOf, takeCorrection } from "../../../src/profile/bench/correction.ts";
import { expectedOf } from "../../../src/profile/bench/expected.ts";
import {
  aimAllowingFor,
  deviationOf,
  learntFrom,
  learntKinds,
  learntSaid,
} from "../../../src/profile/bench/learning.ts";
import { profileOf } from "../../../src/profile/profile.ts";
import { outlookFrom, recordOf } from "../../support/bench-record.ts";
import { aimedAt, randomInstruments } from "../../support/random-instrument.ts";

const profile = (instrument: typeof defaultInstrument) => {
  const result = profileOf(instrument);
  if (!result.ok) throw new Error(JSON.stringify(result.refusal));
  return result.profile;
};

describe("how far what was measured fell from what was predicted", () => {
  const forward = profile(aimedAt(defaultInstrument, "shim", 8)).flatGap;
  const record = recordOf({
    shim: 8,
    gapBefore: forward + 5,
    gapAfter: forward - 0.2,
    bridgeClearance: 0.4,
    weekRelief: 0,
    weekClearance: 0.1,
  });

  it("holds the glued gap against the shim as used, not as planned, and not against itself", () => {
    expect(deviationOf(defaultInstrument, record, "gap")).toBeCloseTo(-0.2, 9);
  });

  it("holds the settling against the fret plane before it", () => {
    expect(deviationOf(defaultInstrument, record, "week")).toBeCloseTo(-0.3, 9);
    expect(deviationOf(defaultInstrument, record, "year")).toBeNull();
  });

  it("holds the strings against all that was measured under them, and asks for the glued gap", () => {
    const { heights } = outlookFrom(defaultInstrument, record);
    const strung = recordOf({
      gapAfter: forward - 0.2,
      bridgeClearance: 0.4,
      stringHeight: heights.stringHeight + 0.07,
    });
    expect(deviationOf(defaultInstrument, strung, "stringHeight")).toBeCloseTo(0.07, 9);
    expect(
      deviationOf(defaultInstrument, recordOf({ stringHeight: 12 }), "stringHeight"),
    ).toBeNull();
  });

  it("teaches the same whatever settling the plan counted on", () => {
    const strung = recordOf({ gapAfter: forward - 0.2, bridgeClearance: 0.4, stringHeight: 11.2 });
    const counting = (settling: number): Instrument => ({
      ...defaultInstrument,
      strings: { ...defaultInstrument.strings, settling },
    });
    const taught = deviationOf(counting(0), strung, "stringHeight");
    for (const settling of [-0.4, 0.3, 1.2])
      expect(deviationOf(counting(settling), strung, "stringHeight")).toBeCloseTo(
        taught ?? Number.NaN,
        9,
      );
  });

  it("remembers a measure that a correction later put out of date", () => {
    const strung = recordOf({ gapAfter: forward, stringHeight: 11 });
    const before = deviationOf(defaultInstrument, strung, "stringHeight");
    const outlook = outlookFrom(defaultInstrument, strung);
    const saddle = correctionOf(outlook, strung, "stringHeight").remedies.find(
      (one) => one.ok && one.remedy.id === "saddle",
    );
    if (!saddle?.ok) throw new Error("no saddle");
    const taken = takeCorrection(strung, outlook, "saddle", saddle.remedy.changes, "2026-06-01");
    expect(taken.readings.stringHeight).toBeUndefined();
    expect(deviationOf(defaultInstrument, taken, "stringHeight")).toBeCloseTo(
      before ?? Number.NaN,
      9,
    );
  });
});

it("holds the glued gap against the shim as used even after a correction was taken for it", () => {
  const { flatGap } = profile(aimedAt(defaultInstrument, "shim", 8));
  const glued = recordOf({ shim: 8, gapAfter: flatGap - 0.2 }, ["gap"]);
  const outlook = outlookFrom(defaultInstrument, glued);
  let tried = 0;
  for (const one of correctionOf(outlook, glued, "saddleExposure").remedies) {
    if (!one.ok) continue;
    tried++;
    const taken = takeCorrection(glued, outlook, one.remedy.id, one.remedy.changes, "2026-06-01");
    expect(deviationOf(defaultInstrument, taken, "gap"), one.remedy.id).toBeCloseTo(-0.2, 9);
  }
  expect(tried).toBeGreaterThan(3);
});

const finished = (...deviations: number[]): FinishedInstrument[] =>
  deviations.map((deviation, i) => ({
    instrument: { ...defaultInstrument, name: `No. ${i + 1}` },
    asBuilt: recordOf({ gapAfter: profile(defaultInstrument).flatGap + deviation }),
    invented: false,
  }));

describe("what is learnt", () => {
  it("is nothing yet with fewer than three, and says so", () => {
    const two = learntFrom(finished(-0.1, -0.2), "gap");
    expect(two.interval).toBeNull();
    expect(two.samples).toHaveLength(2);
    expect(sayPhrase(learntSaid(two), "mm")).toBe(
      "It cannot know yet: 2 instruments of the 3 it takes at least.",
    );
  });

  it("is mean, spread and interval with three", () => {
    // Mean −0.2, spread 0.1, t(0.975, 2) = 4.3027, half width 0.2484.
    const three = learntFrom(finished(-0.1, -0.2, -0.3), "gap");
    expect(three.interval?.mean).toBeCloseTo(-0.2, 9);
    expect(three.interval?.spread).toBeCloseTo(0.1, 9);
    expect(three.interval?.high).toBeCloseTo(0.0484, 4);
    expect(sayPhrase(learntSaid(three), "mm")).toContain("it cannot be told from none");
  });

  it("shows an outlier and counts it all the same", () => {
    const five = learntFrom(finished(-0.1, -0.12, -0.09, -0.11, -0.9), "gap");
    expect(five.samples.map(({ outlier }) => outlier)).toEqual([false, false, false, false, true]);
    expect(five.interval?.mean).toBeCloseTo(-0.264, 9);
  });
});

/**
 * What a straightedge along the frets reads over the bridge of an instrument exactly as planned: of all
 * lines through two fret tops the one with no fret above it, the tops laid on the bow point by point.
 */
function readOverBridge(instrument: Instrument, relief: number): number {
  const { neck, bridge, body } = instrument;
  const fret = (n: number) =>
    body.length + neck.scale * (2 ** (-n / 12) - 2 ** (-neck.joinFret / 12));
  const half = (fret(1) - body.length) / 2;
  const tops = Array.from({ length: neck.lastFret }, (_, i) => {
    const x = fret(i + 1);
    // A parabola that touches the fret plane at the join: its chord to fret 1 is half² · a clear of it midway.
    const z = (relief / half ** 2) * Math.max(0, x - body.length) ** 2;
    return [x, z] as const;
  });
  const saddle = body.length - neck.scale * 2 ** (-neck.joinFret / 12) - bridge.compensation;
  const lines = tops.flatMap((a) =>
    tops
      .filter((b) => b[0] < a[0] - 1)
      .map((b) => (x: number) => b[1] + ((a[1] - b[1]) * (x - b[0])) / (a[0] - b[0])),
  );
  const resting = lines.filter((line) => tops.every(([x, z]) => z <= line(x) + 1e-9));
  expect(resting.length).toBeGreaterThan(0);
  return profile(instrument).bridgeClearance + Math.min(...resting.map((line) => line(saddle)));
}

describe("rigid guitars with relief, that have not moved at all", () => {
  const rigid = (relief: number, written: boolean): readonly FinishedInstrument[] =>
    presets.slice(0, 5).map((instrument) => {
      const reads = readOverBridge(instrument, relief);
      const beside = written ? { weekRelief: relief, yearRelief: relief } : {};
      const { bridgeClearance } = profile(instrument);
      const values = { bridgeClearance, weekClearance: reads, yearClearance: reads, ...beside };
      return { instrument, asBuilt: recordOf(values), invented: true };
    });

  it.each(["week", "year"] as const)("are learnt to settle by nothing in a %s", (kind) => {
    for (const relief of [0, 0.08, 0.15, 0.4]) {
      const { samples, interval } = learntFrom(rigid(relief, true), kind);
      expect(samples).toHaveLength(5);
      for (const { deviation } of samples) expect(Math.abs(deviation)).toBeLessThan(0.01);
      expect(Math.abs(interval?.mean ?? Number.NaN)).toBeLessThan(0.01);
    }
    // The straightedge does read low: it is not the relief that is nothing.
    const [first] = rigid(0.15, true);
    const { bridgeClearance, weekClearance } = first?.asBuilt.readings ?? {};
    const low = (bridgeClearance?.value ?? 0) - (weekClearance?.value ?? 0);
    expect(low).toBeGreaterThan(0.3);
  });

  it("are expected to read what they read, once the relief is written down", () => {
    let held = 0;
    for (const { instrument, asBuilt } of rigid(0.15, true))
      for (const key of ["weekClearance", "yearClearance"] as const) {
        const expected = expectedOf(instrument, asBuilt, key);
        expect(expected?.value).toBeCloseTo(asBuilt.readings[key]?.value ?? Number.NaN, 6);
        held++;
      }
    expect(held).toBe(10);
  });

  it("teach nothing while no relief is written down, and that is said", () => {
    const without = rigid(0.15, false);
    const learnt = learntFrom(without, "week");
    expect(learnt.samples).toEqual([]);
    expect(learnt.interval).toBeNull();
    expect(sayPhrase(learntSaid(learnt), "mm")).toContain(
      "5 more are left out: the straightedge was measured without the relief.",
    );
    const [first] = without;
    if (first === undefined) throw new Error("no instrument");
    expect(expectedOf(first.instrument, first.asBuilt, "weekClearance")).toBeNull();
  });
});

describe("the aim that allows for it", () => {
  it("brings the saddle out as wanted when the deviation comes again, whatever the target", () => {
    let allowed = 0;
    for (const instrument of randomInstruments(8, 51))
      for (const kind of ["pitch", "shim", "saddleExposure", "stringHeight"] as const) {
        const plan = profile(instrument);
        const asked = aimedAt(instrument, kind, plan[kind] ?? Number.NaN);
        const aim = aimAllowingFor(asked, plan, -0.3);
        if (aim === null) continue;
        allowed++;
        expect(aim.kind).toBe(kind);
        const next = profile({ ...asked, target: aim });
        expect(next.saddleExposure - 0.3).toBeCloseTo(plan.saddleExposure, 6);
      }
    expect(allowed).toBeGreaterThan(20);
  });

  it("is none where no shim reaches it", () => {
    expect(aimAllowingFor(defaultInstrument, profile(defaultInstrument), -150)).toBeNull();
  });
});

describe("the invented shelf", () => {
  it("says of every instrument that it is invented, in its name and its notes", () => {
    expect(demoShelf.length).toBeGreaterThanOrEqual(4);
    for (const { instrument, invented } of demoShelf) {
      expect(invented).toBe(true);
      expect(instrument.name).toMatch(/^Invented/);
      expect(instrument.notes).toMatch(/Invented/);
    }
  });

  it("goes through the doors, and is enough to learn every kind from", () => {
    for (const { instrument, asBuilt } of demoShelf) {
      expect(readAsBuilt(JSON.parse(JSON.stringify(asBuilt)))).toEqual({ ok: true, asBuilt });
      expect(readInstrument(JSON.parse(JSON.stringify(instrument))).ok).toBe(true);
    }
    for (const kind of learntKinds)
      expect(learntFrom(demoShelf, kind).interval, kind).not.toBeNull();
    expect(learntFrom(demoShelf, "gap").samples.filter(({ outlier }) => outlier)).toHaveLength(1);
  });
});
