import { describe, expect, it } from "vitest";
import { defaultInstrument } from "../../../src/instrument/schema.ts";
import { mostVariants } from "../../../src/profile/comparison/variant.ts";
import { makeCompareStore } from "../../../src/store/document/compare-keep.ts";
import {
  addVariant,
  aimVariant,
  changeVariant,
  firstComparison,
  nameVariant,
  removeVariant,
  restoreVariant,
} from "../../../src/store/document/comparison.ts";
import { setTolerances } from "../../../src/store/document/edits.ts";
import { firstState } from "../../../src/store/document/state.ts";
import { makeStore } from "../../../src/store/document/store.ts";
import { readComparison } from "../../../src/store/files/comparison-form.ts";
import { keep, recall } from "../../../src/store/shelf/keep.ts";
import { memoryKeeper } from "../desk.ts";

const base = defaultInstrument;
const two = addVariant(addVariant(firstComparison, "a"), "b");

describe("variants in a comparison", () => {
  it("are named apart, up to eight", () => {
    expect(two.variants.map(({ name }) => name)).toEqual(["Variant A", "Variant B"]);
    const freed = addVariant(removeVariant(two, "a"), "c");
    expect(freed.variants.map(({ name }) => name)).toEqual(["Variant B", "Variant A"]);
    const many = Array.from({ length: 12 }, (_, i) => String(i)).reduce(
      addVariant,
      firstComparison,
    );
    expect(many.variants).toHaveLength(mostVariants);
  });

  it("keep what differs from the base, and nothing that does not", () => {
    const changed = changeVariant(two, base, "a", "bridge.thickness", 9.5);
    expect(changed.variants[0]?.changes).toEqual({ "bridge.thickness": 9.5 });
    const back = changeVariant(changed, base, "a", "bridge.thickness", base.bridge.thickness);
    expect(back.variants[0]?.changes).toEqual({});
    expect(back.variants[1]).toBe(two.variants[1]);
  });

  it("aim for something of their own, or for what the base does", () => {
    const aimed = aimVariant(two, "b", { kind: "pitch", value: 1.5 });
    expect(aimed.variants[1]?.target).toEqual({ kind: "pitch", value: 1.5 });
    expect(aimVariant(aimed, "b", null).variants[1]).not.toHaveProperty("target");
  });

  it("are put back where they stood", () => {
    const [a] = two.variants;
    if (a === undefined) throw new Error("no variant");
    expect(restoreVariant(removeVariant(two, "a"), a, 0)).toEqual(two);
    expect(nameVariant(two, "a", "Rounder").variants[0]?.name).toBe("Rounder");
  });
});

describe("what is kept", () => {
  it("comes back as it was", () => {
    const keeper = memoryKeeper();
    const page = makeStore();
    const comparison = aimVariant(
      changeVariant(
        changeVariant(two, base, "a", "dome.dishRadius", null),
        base,
        "b",
        "neck.scale",
        630,
      ),
      "b",
      { kind: "shim", value: 9 },
    );
    const { id } = base;
    makeCompareStore(page).setState(() => ({ [id]: comparison }));
    keep(keeper, page.getState());
    expect(makeCompareStore(makeStore(recall(keeper))).getState()).toEqual({ [id]: comparison });
  });

  it.each([null, 7, "x", [], { variants: 3 }, { variants: [{ id: 1 }] }, { sweep: "far" }])(
    "is the first comparison where %j was kept",
    (json) => {
      expect(readComparison(json)).toEqual(firstComparison);
    },
  );

  it("leaves out what no field can hold", () => {
    const read = readComparison({
      variants: [
        {
          id: "a",
          name: "A",
          changes: {
            "dome.dishRadius": -5,
            "neck.joinFret": 13.5,
            "bridge.thickness": null,
            "shim.contact": "wide",
            "no.such": 1,
            "neck.scale": 630,
          },
          target: { kind: "tilt", value: 1 },
        },
      ],
      sure: { draws: 7, seed: 1.5, shape: "odd" },
    });
    expect(read.variants).toEqual([{ id: "a", name: "A", changes: { "neck.scale": 630 } }]);
    expect(read.sure).toEqual(firstComparison.sure);
  });
});

it("tolerances are taken by the instrument and by the plan that is shown", () => {
  const after = setTolerances(firstState, { "bridge.thickness": 0.3 });
  expect(after.instrument.tolerances).toEqual({ "bridge.thickness": 0.3 });
  expect(after.lastGood).toBe(after.instrument);
});
