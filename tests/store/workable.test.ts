import { describe, expect, test } from "vitest";
import type { FieldPath } from "../../src/instrument/field.ts";
import { writeField } from "../../src/instrument/field-path.ts";
import { fieldAt } from "../../src/instrument/fields.ts";
import { typeField } from "../../src/store/edits.ts";
import { planOf } from "../../src/store/plan.ts";
import { firstState } from "../../src/store/state.ts";
import { workableRange } from "../../src/store/workable.ts";

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
    const works = (value: number): boolean => planOf(writeField(instrument, path, value)).ok;
    expect(range.map(works)).toEqual([true, true]);
    if (range[0] > min) expect(works(range[0] - past)).toBe(false);
    if (range[1] < max) expect(works(range[1] + past)).toBe(false);
  });

  test("is unknown where another field is at fault too", () => {
    const refused = typeField(firstState, "dome.flatLength", "480");
    expect(workableRange(refused, "bridge.thickness")).toBeNull();
  });
});
