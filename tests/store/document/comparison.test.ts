import { describe, expect, it } from "vitest";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import { mostVariants, variantInstrument } from "../../../src/profile/comparison/variant.ts";
import { profileOf } from "../../../src/profile/profile.ts";
import { firstComparison } from "../../../src/store/document/comparison.ts";
import { switchMethod } from "../../../src/store/document/edits.ts";
import { firstState } from "../../../src/store/document/state.ts";
import { setTolerances } from "../../../src/store/document/tolerance-edits.ts";
import {
  addVariant,
  aimVariant,
  changeVariant,
  makeBase,
  nameVariant,
  removeVariant,
  restoreVariant,
  switchVariantMethod,
} from "../../../src/store/document/variant-edits.ts";
import { readComparison } from "../../../src/store/files/comparison-form.ts";
import { readTabCopy } from "../../../src/store/shelf/read-tab-copy.ts";
import { writeTabCopy } from "../../../src/store/shelf/tab-copy.ts";
import { memoryStorage } from "../../support/tab.ts";

const base = defaultInstrument;
const two = addVariant(addVariant(firstState, "a"), "b");

describe("variants in a comparison", () => {
  it("are named apart, up to eight", () => {
    expect(two.comparison.variants.map(({ name }) => name)).toEqual(["Variant A", "Variant B"]);
    const freed = addVariant(removeVariant(two, "a"), "c");
    expect(freed.comparison.variants.map(({ name }) => name)).toEqual(["Variant B", "Variant A"]);
    const many = Array.from({ length: 12 }, (_, i) => String(i)).reduce(addVariant, firstState);
    expect(many.comparison.variants).toHaveLength(mostVariants);
  });

  it("keep what differs from the base, and nothing that does not", () => {
    const changed = changeVariant(two, "a", "bridge.thickness", 9.5);
    expect(changed.comparison.variants[0]?.changes).toEqual({ "bridge.thickness": 9.5 });
    const back = changeVariant(changed, "a", "bridge.thickness", base.bridge.thickness);
    expect(back.comparison.variants[0]?.changes).toEqual({});
    expect(back.comparison.variants[1]).toBe(two.comparison.variants[1]);
  });

  it("aim for something of their own, or for what the base does", () => {
    const aimed = aimVariant(two, "b", { kind: "pitch", value: 1.5 });
    expect(aimed.comparison.variants[1]?.target).toEqual({ kind: "pitch", value: 1.5 });
    expect(aimVariant(aimed, "b", null).comparison.variants[1]).not.toHaveProperty("target");
  });

  it("may be flattened the other way, asked for the same saddle, until the base goes that way", () => {
    const shim = aimVariant(two, "a", { kind: "shim", value: 9 });
    const seat = switchVariantMethod(shim, "a", "seat");
    const [variant, other] = seat.comparison.variants;
    if (variant === undefined) throw new Error("no variant");
    expect(variant.method).toBe("seat");
    expect(other).not.toHaveProperty("method");
    expect(variant.target?.kind).toBe("saddleExposure");
    const made = profileOf(variantInstrument(base, variant));
    const before = profileOf({ ...base, target: { kind: "shim", value: 9 } });
    if (!made.ok || !before.ok) throw new Error("no plan");
    expect(made.profile.seat).not.toBeNull();
    expect(made.profile.saddleExposure).toBeCloseTo(before.profile.saddleExposure, 9);
    const [joined] = switchMethod(seat, "seat").comparison.variants;
    expect(joined).not.toHaveProperty("method");
    expect(joined?.target).toEqual(variant.target);
    expect(switchVariantMethod(seat, "a", "break").comparison.variants[0]).not.toHaveProperty(
      "method",
    );
  });

  it("made the base, bring their way with them, and leave every other what it was", () => {
    const seat = switchVariantMethod(two, "a", "seat");
    const promoted = makeBase(seat, "a");
    expect(promoted.instrument.dome.method).toBe("seat");
    expect(promoted.instrument.version).toBe(2);
    expect(promoted.comparison.variants.map(({ method }) => method)).toEqual(["break", "break"]);
    const back = makeBase(promoted, "a");
    expect(back.instrument).toEqual(base);
    expect(back.comparison.variants).toEqual(seat.comparison.variants);
  });

  it("are put back where they stood", () => {
    const [a] = two.comparison.variants;
    if (a === undefined) throw new Error("no variant");
    expect(restoreVariant(removeVariant(two, "a"), a, 0).comparison).toEqual(two.comparison);
    expect(nameVariant(two, "a", "Rounder").comparison.variants[0]?.name).toBe("Rounder");
  });
});

describe("what is kept", () => {
  it("comes back as it was", () => {
    const storage = memoryStorage();
    const flat = changeVariant(two, "a", "dome.dishRadius", null);
    const shorter = changeVariant(flat, "b", "neck.scale", 630);
    const seat = switchVariantMethod(shorter, "a", "seat");
    const state = aimVariant(seat, "b", { kind: "shim", value: 9 });
    writeTabCopy(storage, state);
    expect(readTabCopy(storage).comparison).toEqual(state.comparison);
  });

  it.each([null, 7, "x", [], { variants: 3 }, { variants: [{ id: 1 }] }, { sweep: "far" }])(
    "is the first comparison where %j was kept",
    (json) => {
      expect(readComparison(json).value).toEqual(firstComparison);
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
    expect(read.value.variants).toEqual([{ id: "a", name: "A", changes: { "neck.scale": 630 } }]);
    expect(read.value.sure).toEqual(firstComparison.sure);
  });
});

it("tolerances are taken by the instrument and by the plan that is shown", () => {
  const after = setTolerances(firstState, { "bridge.thickness": 0.3 });
  expect(after.instrument.tolerances).toEqual({ "bridge.thickness": 0.3 });
  expect(after.lastGood).toBe(after.instrument);
});
