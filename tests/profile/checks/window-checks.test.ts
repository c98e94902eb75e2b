import { describe, expect, it } from "vitest";
import type { Instrument, WindowKind } from "../../../src/instrument/instrument.ts";
import { windowKinds } from "../../../src/instrument/outcome-fields.ts";
import { sayPhrase } from "../../../src/instrument/phrase.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { readInstrument } from "../../../src/instrument/read-instrument.ts";
import type { Check } from "../../../src/profile/outcome.ts";
import { standing } from "../../../src/profile/standing.ts";
import { solved, withShim } from "../../support/solved.ts";

const shim = 8.4;

function read(json: object): Instrument {
  const reading = readInstrument({ target: { kind: "shim", value: shim }, ...json });
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.instrument;
}

const outcome = (kind: WindowKind): number => solved(read({}))[kind];

function raised(instrument: Instrument, kind: WindowKind): Check | undefined {
  return solved(instrument).checks.find(({ id }) => id === `window-${kind}`);
}

/** The default instrument, with the window of one outcome laid so much above or below what it is. */
const windowAbove = (kind: WindowKind, by: number): Instrument =>
  read({ windows: { [kind]: [outcome(kind) + by, outcome(kind) + by + 3] } });
const windowBelow = (kind: WindowKind, by: number): Instrument =>
  read({ windows: { [kind]: [outcome(kind) - by - 3, outcome(kind) - by] } });

describe.each(windowKinds)("the window of %s", (kind) => {
  it("is spoken of when the outcome lies a hair under it, and not when it lies on its end", () => {
    expect(raised(windowAbove(kind, 1e-6), kind)).toMatchObject({
      grade: "warn",
      field: `windows.${kind}.0`,
    });
    expect(raised(windowAbove(kind, 0), kind)).toBeUndefined();
  });

  it("is spoken of when the outcome lies a hair over it, and not when it lies on its end", () => {
    expect(raised(windowBelow(kind, 1e-6), kind)).toMatchObject({
      grade: "warn",
      field: `windows.${kind}.1`,
    });
    expect(raised(windowBelow(kind, 0), kind)).toBeUndefined();
  });

  it("is said to be missed by as much as it is", () => {
    const text = sayPhrase(raised(windowAbove(kind, 0.25), kind)?.means ?? [], "mm");
    expect(text).toMatch(/is 0\.25( mm|°).* under its window/);
    const over = sayPhrase(raised(windowBelow(kind, 0.25), kind)?.means ?? [], "mm");
    expect(over).toMatch(/is 0\.25( mm|°).* over its window/);
  });
});

describe("what a missed window means", () => {
  const meaning = (kind: WindowKind, target: object, window: readonly [number, number]): string =>
    sayPhrase(raised(read({ target, windows: { [kind]: window } }), kind)?.means ?? [], "mm");

  it("is that the frets point into the bridge only where they do", () => {
    const clearance = (value: number, low: number): string =>
      meaning("bridgeClearance", { kind: "bridgeClearance", value }, [low, 1.6]);
    expect(clearance(-0.04, 0)).toMatch(/^The fret plane over the bridge, −0\.04 mm.*point into/);
    expect(clearance(0.04, 0)).toBe("");
    expect(clearance(0.04, 0.4)).toMatch(/is 0\.36 mm under its window: the saddle is left little/);
  });

  it("says that nothing is left of a saddle below the bridge's top", () => {
    const exposure = (value: number): string =>
      meaning("saddleExposure", { kind: "saddleExposure", value }, [2.5, 5]);
    expect(exposure(-0.2)).toMatch(/nothing of it would stand over the bridge/);
    expect(exposure(0.2)).toMatch(/little is left to lower the action with/);
  });

  it("has no miss of 0", () => {
    const text = meaning("stringHeight", { kind: "stringHeight", value: 10.9999 }, [11, 14]);
    expect(text).toMatch(/is just under its window/);
  });
});

/** Every change a fix may name, by a word of its own; the shim is the one given, so nothing else moves. */
const changes: readonly (readonly [RegExp, (instrument: Instrument, by: number) => Instrument])[] =
  [
    [/thicker shim/i, (given, by) => withShim(given, shim + by)],
    [/thinner shim/i, (given, by) => withShim(given, shim - by)],
    [/thicker fingerboard/, (given, by) => board(given, by)],
    [/thinner fingerboard/, (given, by) => board(given, -by)],
    [/thicker bridge/, (given, by) => bridge(given, { thickness: given.bridge.thickness + by })],
    [/thinner bridge/, (given, by) => bridge(given, { thickness: given.bridge.thickness - by })],
    [/Pins nearer/, (given, by) => bridge(given, { pinDistance: given.bridge.pinDistance - by })],
    [/Pins farther/, (given, by) => bridge(given, { pinDistance: given.bridge.pinDistance + by })],
    [/deeper ramps/, (given, by) => bridge(given, { pinRamp: given.bridge.pinRamp + by })],
    [/shallower ramps/, (given, by) => bridge(given, { pinRamp: given.bridge.pinRamp - by })],
    [/taller saddle/, (given, by) => board(given, by)],
    [/lower saddle/, (given, by) => board(given, -by)],
  ];

const bridge = (given: Instrument, fields: Partial<Instrument["bridge"]>): Instrument => ({
  ...given,
  bridge: { ...given.bridge, ...fields },
});
const board = ({ neck, ...given }: Instrument, by: number): Instrument => ({
  ...given,
  neck: { ...neck, fingerboardThickness: neck.fingerboardThickness + by },
});

describe.each(windowKinds)("every fix of %s", (kind) => {
  it.each(["under", "over"] as const)(
    "%s its window goes the right way, and far enough clears it",
    (side) => {
      const given = side === "under" ? windowAbove(kind, 0.05) : windowBelow(kind, 0.05);
      const fix = sayPhrase(raised(given, kind)?.fix ?? [], "mm");
      const named = changes.filter(([word]) => word.test(fix));
      // One change for each part of the sentence.
      expect(named).toHaveLength(fix.split(/, or | or |, /).length);
      for (const [word, apply] of named) {
        const cleared = [0.1, 0.2, 0.5, 1].some(
          (by) => raised(apply(given, by), kind) === undefined,
        );
        expect(cleared, `${fix}: ${word}`).toBe(true);
      }
    },
  );
});

describe.each(presets)("the preset $name", (instrument) => {
  it("stands well within all its windows, with nothing to fix", () => {
    const profile = solved(instrument);
    for (const kind of windowKinds)
      expect(standing(profile[kind], instrument.windows[kind]), kind).toBe("within");
    expect(profile.checks).toEqual([]);
  });
});

describe("how a value stands to its window", () => {
  it("is out beyond an end, near in the tenth beside it, and in between", () => {
    const window = [10, 20] as const;
    const stands = [9.999, 10, 10.999, 11, 15, 19, 19.001, 20, 20.001].map((value) =>
      standing(value, window),
    );
    expect(stands).toEqual([
      "outside",
      "close",
      "close",
      "within",
      "within",
      "within",
      "close",
      "close",
      "outside",
    ]);
  });

  it("is within where it just clears an end at 0, and out below it", () => {
    const stands = [-0.01, 0, 0.04, 0.15, 1.5].map((value) => standing(value, [0, 1.6]));
    expect(stands).toEqual(["outside", "within", "within", "within", "close"]);
  });

  it("is in on a window of no width, and only there", () => {
    expect([2.9, 3, 3.1].map((value) => standing(value, [3, 3]))).toEqual([
      "outside",
      "within",
      "outside",
    ]);
  });
});
