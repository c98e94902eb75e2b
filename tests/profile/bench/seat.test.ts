import { describe, expect, test } from "vitest";
import {
  type MeasurementKey,
  measurementsAt,
} from "../../../src/instrument/as-built/measurement-fields.ts";
import { stepsOf } from "../../../src/instrument/as-built/steps.ts";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import { sayPhrase } from "../../../src/instrument/phrase.ts";
import { correctionOf } from "../../../src/profile/bench/correction.ts";
import { expectedOf } from "../../../src/profile/bench/expected.ts";
import { madeAfter } from "../../../src/profile/bench/made-instrument.ts";
import { orderOfWork } from "../../../src/profile/bench/order-of-work.ts";
import { stageOf } from "../../../src/profile/bench/remedy.ts";
import { anotherSpacer } from "../../../src/profile/bench/remedy-seat.ts";
import { profileOf } from "../../../src/profile/profile.ts";
import { outlookFrom, recordOf } from "../../support/bench-record.ts";
import { randomInstruments } from "../../support/random-instrument.ts";
import { aimed, onSeat, solvedSeat } from "../../support/solved.ts";

const seated = onSeat(defaultInstrument);
const plan = solvedSeat(seated);

describe("the work on a seat", () => {
  test("has the method's own steps, each with what to do", () => {
    const works = orderOfWork(seated, plan);
    expect(works.map(({ id }) => id)).toEqual(stepsOf("seat"));
    for (const { instructions } of works) expect(instructions.length).toBeGreaterThan(0);
    const said = works
      .flatMap(({ instructions }) => instructions.map((one) => sayPhrase(one, "mm")))
      .join(" ");
    expect(said).toMatch(/a spacer 1\.72? mm thick/);
    expect(said).not.toMatch(/shim|break/);
  });

  test("asks for every side depth once the whole rim is dished", () => {
    const asked = stepsOf("seat").flatMap((step) => measurementsAt(step, "seat"));
    expect(measurementsAt("check", "seat")).toEqual([
      "depthTail",
      "depthLowerBout",
      "depthWaist",
      "depthUpperBout",
      "depthNeckEnd",
    ]);
    expect(new Set(asked).size).toBe(asked.length);
  });

  test("expects of spacer, plate and gap what the plan says", () => {
    const expected = (key: MeasurementKey) => expectedOf(seated, recordOf({}), key)?.value;
    expect(expected("spacer")).toBeCloseTo(plan.seat.spacer, 9);
    expect(expected("plateLeft")).toBeCloseTo(2.8 - plan.seat.endCut, 9);
    expect(expected("gapAfter")).toBeCloseTo(plan.flatGap, 9);
  });

  test("takes the spacer used in place of the planned one, and the gap in place of both", () => {
    const thicker = plan.seat.spacer + 0.3;
    const { heights } = outlookFrom(seated, recordOf({ spacer: thicker }));
    expect(heights.saddleExposure).toBeCloseTo(plan.saddleExposure + 0.3, 9);
    const measured = outlookFrom(seated, recordOf({ spacer: thicker, gapAfter: 1.5 }));
    expect(measured.heights.flatGap).toBeCloseTo(1.5, 12);
  });
});

describe("a correction on a seat", () => {
  const instruments = [defaultInstrument, ...randomInstruments(30, 5)].map((one) =>
    aimed(onSeat(one), "stringHeight", 12.5),
  );

  test("raises and lowers by just what is asked, before the seat is sanded and after", () => {
    let made = 0;
    for (const instrument of instruments) {
      const result = profileOf(instrument);
      if (!result.ok || result.profile.seat === null) continue;
      for (const off of [-0.4, 0.3]) {
        const spacer = result.profile.seat.spacer + off;
        if (spacer < 0) continue;
        for (const steps of [[], ["seat"]] as const) {
          const record = recordOf({ spacer }, steps);
          const outlook = outlookFrom(instrument, record);
          const { remedies, left } = correctionOf(outlook, record, "stringHeight");
          for (const one of remedies) {
            if (!one.ok || (one.remedy.id !== "spacer" && one.remedy.id !== "seat-again")) continue;
            made++;
            expect(one.remedy.id).toBe(steps.length === 0 ? "spacer" : "seat-again");
            const after = madeAfter(outlook, one.remedy.changes);
            if (!after.ok) throw new Error(sayPhrase(after.objection.why, "mm"));
            const rise = after.made.heights.stringHeight - outlook.heights.stringHeight;
            expect(rise).toBeCloseTo(left, 8);
            expect(one.remedy.amount).not.toBe(0);
          }
        }
      }
    }
    expect(made).toBeGreaterThan(20);
  });

  test("takes nothing off at the end it is turned about, and off the other by the lever", () => {
    const record = recordOf({ spacer: plan.seat.spacer + 0.4 }, ["seat"]);
    const outlook = outlookFrom(seated, record);
    const { remedies } = correctionOf(outlook, record, "saddleExposure");
    const again = remedies.find((one) => one.ok && one.remedy.id === "seat-again");
    if (again?.ok !== true) throw new Error("not offered");
    // Lowered by 0.4 mm over the 291 mm from the neck end: 92 mm along that is 0.13 mm.
    const { amount, changes } = again.remedy;
    expect(amount).toBeCloseTo((0.4 * (492 - plan.fingerboardEndX)) / (492 - plan.saddleX), 6);
    expect(changes.map(({ path }) => path)).toEqual(["seat.leastCut", "target.value"]);
    expect(changes[1]?.value).toBeCloseTo(plan.seat.spacer, 6);
  });

  test("says how thin the plate is left, as the corrected plan has it", () => {
    const record = recordOf({ spacer: plan.seat.spacer - 0.5 }, ["seat"]);
    const outlook = outlookFrom(seated, record);
    const { remedies } = correctionOf(outlook, record, "saddleExposure");
    const again = remedies.find((one) => one.ok && one.remedy.id === "seat-again");
    if (again?.ok !== true) throw new Error("not offered");
    const after = madeAfter(outlook, again.remedy.changes);
    if (!after.ok) throw new Error("not made");
    const { seat } = solvedSeat(after.made.instrument);
    const said = again.remedy.also.map((one) => sayPhrase(one, "mm")).join(" ");
    const [, thinnest] = / ([\d.]+) mm where it is thinnest/.exec(said) ?? [];
    expect(Number(thinnest)).toBeCloseTo(seat.thicknessLeft, 1);
    expect(seat.mostCut).toBeGreaterThan(Math.max(seat.endCut, seat.neckEndCut));
  });

  test("offers no spacer that gives no plan or leaves no plate", () => {
    const record = recordOf({});
    const context = {
      made: outlookFrom(seated, record),
      goal: "stringHeight",
      stage: stageOf(record),
    } as const;
    const barredBy = (raise: number): string => {
      const result = anotherSpacer(context, raise);
      return result.ok ? "" : sayPhrase(result.bar, "mm");
    };
    expect(barredBy(0.5)).toBe("");
    expect(barredBy(-plan.seat.spacer - 0.1)).toMatch(/thin enough/);
    expect(barredBy(12)).toMatch(/more of the plate/);
    expect(barredBy(60)).toMatch(/out of its reach/);
  });

  test("is barred once the fingerboard is on, and where the plate does not allow it", () => {
    const barredAt = (record: ReturnType<typeof recordOf>, instrument = seated) =>
      correctionOf(outlookFrom(instrument, record), record, "saddleExposure").remedies.flatMap(
        (one) => (one.ok ? [] : [one.id]),
      );
    const off = { spacer: plan.seat.spacer + 0.4 };
    expect(barredAt(recordOf(off, ["seat", "fingerboard"]))).toContain("seat-again");
    expect(barredAt(recordOf(off, ["seat"]))).not.toContain("seat-again");
    const thin = { ...seated, seat: { ...seated.seat, topThickness: 0.3 } };
    expect(barredAt(recordOf(off, ["seat"]), thin)).toContain("seat-again");
    expect(barredAt(recordOf(off)).join()).not.toMatch(/flat-about|shim/);
  });
});
