import { expect, test } from "vitest";
import { fileForm } from "../../../src/instrument/file-form.ts";
import { firstState } from "../../../src/store/document/state.ts";
import { documentIn } from "../../../src/store/document/undo.ts";
import { fileEntryOf } from "../../../src/store/files/shelf-file.ts";

test("the order of keys says nothing: a last good instrument that is the same is left out", () => {
  const { instrument } = firstState;
  const turned = Object.fromEntries(Object.entries(instrument).reverse());
  const lastGood = { ...instrument, ...turned };
  const reversed = { ...turned, ...instrument };
  expect(Object.keys(reversed)).not.toEqual(Object.keys(lastGood));
  const entry = fileEntryOf({ ...documentIn(firstState), instrument: reversed, lastGood });
  expect(entry).toEqual({ instrument: fileForm(instrument) });
  expect(entry).not.toHaveProperty("lastGood");
});

test("a file whose variant uses what version 1 did not have says version 2, and one without says 1", () => {
  const document = documentIn(firstState);
  const variant = { id: "a", name: "Thick", changes: { "seat.topThickness": 3.5 } };
  const comparison = { ...document.comparison, variants: [variant] };
  expect(fileEntryOf({ ...document, comparison }).instrument.version).toBe(2);
  const usual = { ...variant, changes: { "bridge.thickness": 9 } };
  const plain = fileEntryOf({ ...document, comparison: { ...comparison, variants: [usual] } });
  expect(plain.instrument.version).toBe(1);
});
