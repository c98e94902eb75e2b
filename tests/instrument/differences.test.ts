import { describe, expect, it } from "vitest";
import { cutawayPresets } from "../../src/instrument/cutaway-presets.ts";
import { differencesFrom } from "../../src/instrument/differences.ts";
import { readField, writeField } from "../../src/instrument/field-value.ts";
import { fieldPaths } from "../../src/instrument/fields.ts";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { presets } from "../../src/instrument/presets.ts";

const [model, other] = presets as [Instrument, Instrument];

describe("differencesFrom", () => {
  it("names every field that is another number, and no other", () => {
    for (const path of fieldPaths) {
      const changed = writeField(model, path, (readField(model, path) ?? 0) + 1);
      expect(differencesFrom(model, changed)).toEqual({ fields: [path], others: [] });
    }
  });

  it("is silent on an instrument's own name, notes, id and tolerances", () => {
    const own = { ...model, id: "x", name: "Mine", notes: "y", tolerances: {} };
    expect(differencesFrom(model, own)).toEqual({ fields: [], others: [] });
  });

  it("tells another aim, way or outline for what it is, and compares no millimetres with degrees", () => {
    const aimed: Instrument = { ...model, target: { kind: "pitch", value: 1.4 } };
    expect(differencesFrom(model, aimed)).toEqual({ fields: [], others: ["what is aimed for"] });
    const seat: Instrument = { ...model, dome: { ...model.dome, method: "seat" } };
    expect(differencesFrom(model, seat).others).toEqual(["where the flat is sanded"]);
    const [cut] = cutawayPresets;
    if (cut === undefined) throw new Error("no cutaway");
    expect(differencesFrom(model, cut).others).toContain("the outline traced");
    const { tracing, tracingTreble } = cut.body;
    const same = { ...cut, body: { ...cut.body, tracing, tracingTreble } } as Instrument;
    expect(differencesFrom(cut, structuredClone(same))).toEqual({ fields: [], others: [] });
  });

  it("is none either way round only where both are alike", () => {
    expect(differencesFrom(model, other).fields).toEqual(differencesFrom(other, model).fields);
    expect(differencesFrom(model, other).fields.length).toBeGreaterThan(3);
  });
});
