import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parseField } from "../../../src/instrument/field-text.ts";
import { writeField } from "../../../src/instrument/field-value.ts";
import type { FieldPath } from "../../../src/instrument/fields.ts";
import { fieldAt } from "../../../src/instrument/fields.ts";
import { sayQuantity } from "../../../src/instrument/phrase.ts";
import { setField, typeField } from "../../../src/store/document/edits.ts";
import { hasPlan, solvedPlan } from "../../../src/store/document/plan.ts";
import { firstState } from "../../../src/store/document/state.ts";
import { offeredValue, workableRange } from "../../../src/store/document/workable-range.ts";
import { anyInstrument } from "../../profile/any-instrument.ts";
import { documents } from "../../support/documents.ts";

const paths: readonly FieldPath[] = [
  "body.length",
  "body.waistAt",
  "dome.flatLength",
  "dome.dishRadius",
  "shim.contact",
  "neck.scale",
  "neck.joinFret",
  "target.value",
];

describe("the workable range of a field", () => {
  test.each(paths)("%s: its ends have a plan, and just past them there is none", (path) => {
    const { instrument } = firstState;
    const range = workableRange(firstState, path);
    if (range === null) throw new Error("no range");
    const { min, max, quantity } = fieldAt(path, instrument.target.kind);
    const past = quantity === "count" ? 1 : 1e-3;
    const works = (value: number): boolean => solvedPlan(writeField(instrument, path, value)).ok;
    expect(range.map(works)).toEqual([true, true]);
    if (range[0] > min) expect(works(range[0] - past)).toBe(false);
    if (range[1] < max) expect(works(range[1] + past)).toBe(false);
  });

  test("is unknown where another field is at fault too", () => {
    const refused = typeField(firstState, "dome.flatLength", "480");
    expect(workableRange(refused, "bridge.thickness")).toBeNull();
  });
});

test("whether there is a plan is told without working it out, and told the same", () => {
  let without = 0;
  fc.assert(
    fc.property(documents, ({ instrument, past }) => {
      for (const one of [instrument, ...past.map((work) => work.instrument)]) {
        expect(hasPlan(one)).toBe(solvedPlan(one).ok);
        if (!hasPlan(one)) without += 1;
      }
    }),
    { numRuns: 100 },
  );
  expect(without).toBeGreaterThan(10);
}, 60_000);

test("a back too round to reach the neck end is no plan", () => {
  const instrument = writeField(firstState.instrument, "body.backRadius", 200);
  expect(solvedPlan(instrument).ok).toBe(false);
  expect(hasPlan(instrument)).toBe(false);
});

test("what is offered works when it is typed as it is shown, in every unit", () => {
  let [offers, narrow] = [0, 0];
  for (const instrument of fc.sample(anyInstrument, { numRuns: 600, seed: 20261126 })) {
    const plan = solvedPlan(instrument);
    if (plan.ok) continue;
    for (const units of ["mm", "in", "in-fraction"] as const) {
      const value = offeredValue(instrument, plan.refusal, units);
      if (value === null) continue;
      offers += 1;
      const { field } = plan.refusal;
      const stated = fieldAt(field, instrument.target.kind);
      expect(hasPlan(writeField(instrument, field, value))).toBe(true);
      // A radius is said in feet too, in brackets.
      const [said = ""] = sayQuantity({ value, as: stated.quantity }, units).split(" (");
      const typed = parseField(said, stated, units);
      if (!typed.ok || typed.value === null) throw new Error("not read back");
      if (!hasPlan(writeField(instrument, field, typed.value))) narrow += 1;
    }
  }
  process.stdout.write(`${offers} offers, ${narrow} of them narrower than what is shown\n`);
  expect(offers).toBeGreaterThan(200);
  expect(narrow).toBeLessThan(offers / 25);
});

test("a range that begins at a round limit is said to begin there", () => {
  const before = setField(firstState, "windows.pitch.0", 1);
  const state = setField(before, "windows.pitch.1", 0.5);
  expect(workableRange(state, "windows.pitch.1")).toEqual([1, 45]);
});
