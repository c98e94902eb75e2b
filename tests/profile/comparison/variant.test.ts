import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import { fields } from "../../../src/instrument/fields.ts";
import { presets } from "../../../src/instrument/presets.ts";
import {
  changesBetween,
  promote,
  type Variant,
  variantInstrument,
} from "../../../src/profile/comparison/variant.ts";

const base = defaultInstrument;

const rounder: Variant = {
  id: "a",
  name: "20 ft",
  changes: { "dome.dishRadius": 6096, "dome.braceRadius": 6096 },
};
const flat: Variant = { id: "b", name: "No dome", changes: { "dome.dishRadius": null } };
const seated: Variant = {
  id: "d",
  name: "Seat",
  changes: {},
  target: { kind: "spacer", value: 2.5 },
  method: "seat",
};
const aimed: Variant = {
  id: "c",
  name: "Aimed",
  changes: {},
  target: { kind: "pitch", value: 1.5 },
};

describe("a variant", () => {
  it("changes what it names and nothing else", () => {
    const made = variantInstrument(base, rounder);
    expect(made).toEqual({
      ...base,
      name: "20 ft",
      dome: { ...base.dome, dishRadius: 6096, braceRadius: 6096 },
    });
    expect(variantInstrument(base, flat).dome.dishRadius).toBeNull();
    expect(variantInstrument(base, aimed).target).toEqual({ kind: "pitch", value: 1.5 });
  });

  it("is found again from the two instruments", () => {
    for (const variant of [rounder, flat, aimed, seated]) {
      const found = changesBetween(base, variantInstrument(base, variant));
      const { id, name } = variant;
      expect({ id, name, ...found }).toEqual(variant);
    }
  });

  it("takes any preset to any other", () => {
    for (const from of presets)
      for (const to of presets) {
        const between = changesBetween(from, to);
        const made = variantInstrument(from, { id: "x", name: to.name, ...between });
        const { id, notes, version } = from;
        expect(made).toEqual({ ...to, id, notes, version });
      }
  });
});

describe("promoting a variant", () => {
  it("keeps every instrument in the table what it was", () => {
    const path = fc.constantFrom(
      ...(["dome.flatLength", "bridge.thickness", "neck.scale", "shim.contact"] as const),
    );
    const changes = fc.dictionary(path, fc.integer({ min: 1, max: 700 }), { maxKeys: 3 });
    const methods = fc.constantFrom({}, { method: "seat" } as const);
    const variants = fc
      .array(fc.tuple(changes, methods), { minLength: 1, maxLength: 8 })
      .map((all) =>
        all.map(
          ([made, method], i): Variant => ({
            id: `v${i}`,
            name: `V${i}`,
            changes: made,
            ...method,
          }),
        ),
      );
    fc.assert(
      fc.property(variants, fc.nat(), (list, pick) => {
        const chosen = list[pick % list.length] as Variant;
        const promoted = promote(base, list, chosen.id);
        if (promoted === null) throw new Error("not promoted");
        expect({ ...promoted.base, name: chosen.name }).toEqual(variantInstrument(base, chosen));
        list.forEach((variant, i) => {
          const now = promoted.variants[i] as Variant;
          const before = variant.id === chosen.id ? base : variantInstrument(base, variant);
          expect(variantInstrument(promoted.base, now)).toEqual({ ...before, name: now.name });
        });
      }),
      { numRuns: 100 },
    );
  });

  it("keeps the base's own name, and does nothing for a variant it does not know", () => {
    expect(promote(base, [rounder], "a")?.base.name).toBe(base.name);
    expect(promote(base, [rounder], "z")).toBeNull();
  });
});

it("no variant carries a window by accident", () => {
  expect(Object.keys(fields).filter((path) => path.startsWith("windows."))).toHaveLength(10);
  expect(changesBetween(base, base).changes).toEqual({});
});
