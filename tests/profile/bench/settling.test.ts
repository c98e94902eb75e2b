import { describe, expect, it } from "vitest";
import type { FinishedInstrument } from "../../../src/instrument/as-built/as-built.ts";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import type { Instrument } from "../../../src/instrument/instrument.ts";
import { learntFrom } from "../../../src/profile/bench/learning.ts";
import { settlingLearnt, settlingOf } from "../../../src/profile/bench/settling.ts";
import { outlookFrom, recordOf } from "../../support/bench-record.ts";

const counting = (settling: number): Instrument => ({
  ...defaultInstrument,
  strings: { ...defaultInstrument.strings, settling },
});

/** Instruments of one plan, each strung so much lower than its geometry without any settling. */
const strung = (falls: readonly number[], settling = 0): FinishedInstrument[] =>
  falls.map((fall) => {
    const made = { gapAfter: 1.3, bridgeClearance: 0.4 };
    const { heights } = outlookFrom(counting(0), recordOf(made));
    const asBuilt = recordOf({ ...made, stringHeight: heights.stringHeight - fall });
    return { instrument: counting(settling), asBuilt, invented: false };
  });

/** Instruments whose fret plane came down so far in a week, and in a year. */
const rested = (weeks: readonly number[], years: readonly number[]): FinishedInstrument[] =>
  weeks.map((week, i) => ({
    instrument: counting(0),
    asBuilt: recordOf({
      bridgeClearance: 0.6,
      weekRelief: 0,
      weekClearance: 0.6 - week,
      ...(years[i] === undefined ? {} : { yearRelief: 0, yearClearance: 0.6 - years[i] }),
    }),
    invented: false,
  }));

describe("the settling that a record teaches", () => {
  it("is the mean fall to a hundredth, down as a plus", () => {
    expect(settlingOf(learntFrom(strung([0.3, 0.31, 0.32]), "stringHeight"))).toBe(0.31);
    expect(settlingOf(learntFrom(rested([0.2, 0.21, 0.2], []), "week"))).toBe(0.2);
  });

  it("is the same once the plans count on it, so that it is not taken twice", () => {
    const falls = [0.3, 0.31, 0.32];
    expect(settlingOf(learntFrom(strung(falls, 0.31), "stringHeight"))).toBe(0.31);
  });

  it("is less than none where the strings came to stand higher", () => {
    expect(settlingOf(learntFrom(strung([-0.2, -0.21, -0.22]), "stringHeight"))).toBe(-0.21);
  });

  it("is none of too few, none where it may be nothing, and none of what is not strung", () => {
    expect(settlingOf(learntFrom(strung([0.3, 0.3]), "stringHeight"))).toBeNull();
    expect(settlingOf(learntFrom(strung([0.3, -0.3, 0.1]), "stringHeight"))).toBeNull();
    expect(settlingOf(learntFrom(strung([0.3, 0.31, 0.32]), "gap"))).toBeNull();
  });

  it("is none beyond what the field takes", () => {
    const past = strung([-5.1, -5.11, -5.12]);
    expect(learntFrom(past, "stringHeight").interval).not.toBeNull();
    expect(settlingOf(learntFrom(past, "stringHeight"))).toBeNull();
  });
});

describe("what is offered beside the field", () => {
  it("is the longest under tension that tells, and nothing of none", () => {
    const weeks = [0.2, 0.21, 0.2];
    expect(settlingLearnt([])).toBeNull();
    expect(settlingLearnt(rested(weeks, [0.3, 0.31]))?.kind).toBe("week");
    expect(settlingLearnt(rested(weeks, [0.3, 0.31, 0.32]))?.kind).toBe("year");
    expect(settlingLearnt(strung([0.3, 0.31, 0.32]))?.kind).toBe("stringHeight");
  });
});
