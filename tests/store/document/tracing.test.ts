import { expect, test } from "vitest";
import { typeField } from "../../../src/store/document/edits.ts";
import { traceOutline } from "../../../src/store/document/outline-edits.ts";
import { shownPlan, solvedPlan } from "../../../src/store/document/plan.ts";
import { firstState } from "../../../src/store/document/state.ts";
import { readTabCopy } from "../../../src/store/shelf/read-tab-copy.ts";
import { writeTabCopy } from "../../../src/store/shelf/tab-copy.ts";
import { pear } from "../../support/pear.ts";
import { memoryStorage } from "../../support/tab.ts";

test("a tracing makes the body as long as it is, and leaves the stated widths for when it comes off", () => {
  const typed = typeField(typeField(firstState, "body.length", "490"), "body.waistWidth", "241");
  const traced = traceOutline(typed, { bass: pear, treble: null });
  expect(traced.instrument.body).toMatchObject({ length: 500, tracing: pear, waistWidth: 241 });
  expect(traced.texts["body.length"]).toBeUndefined();
  expect(traced.texts["body.waistWidth"]?.text).toBe("241");
  expect(solvedPlan(traced.instrument).ok).toBe(true);
  const off = traceOutline(traced, { bass: null, treble: null });
  expect("tracing" in off.instrument.body).toBe(false);
  expect(off.instrument.body.waistWidth).toBe(241);
});

test("another length than the traced one is refused in words, and the last plan stays drawn", () => {
  const longer = typeField(
    traceOutline(firstState, { bass: pear, treble: null }),
    "body.length",
    "510",
  );
  const plan = solvedPlan(longer.instrument);
  expect(plan.ok).toBe(false);
  if (plan.ok) return;
  expect(plan.refusal).toMatchObject({ field: "body.length", nearest: 500 });
  expect(plan.refusal.why.join("")).toContain("traced outline");
  expect(shownPlan(longer)?.instrument.body.length).toBe(500);
});

test("a tracing that does not go together with the rest is kept over a reload", () => {
  const longer = typeField(
    traceOutline(firstState, { bass: pear, treble: null }),
    "body.length",
    "510",
  );
  const storage = memoryStorage();
  writeTabCopy(storage, longer);
  expect(readTabCopy(storage).instrument).toEqual(longer.instrument);
});
