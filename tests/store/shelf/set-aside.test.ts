import { expect, test } from "vitest";
import { firstState } from "../../../src/store/document/state.ts";
import { documentIn } from "../../../src/store/document/undo.ts";
import { addVariant } from "../../../src/store/document/variant-edits.ts";
import type { StoredEntry } from "../../../src/store/shelf/shelf-entry.ts";
import { entryForm, newEntry } from "../../../src/store/shelf/shelf-entry.ts";
import { openShelf } from "../../support/tab.ts";

const document = documentIn(addVariant(firstState, "a"));
const { id } = document.instrument;

/** An entry as it is stored, with one place of it spoiled. */
function storedWith(spoil: (work: never) => void): StoredEntry {
  const stored = JSON.parse(JSON.stringify(entryForm(newEntry(document, 1))));
  spoil(stored.work as never);
  return stored;
}

const spoiled: readonly (readonly [string, string, (work: never) => void])[] = [
  [
    "a tolerance beyond its field's range",
    "tolerances.dome.dishRadius",
    (work: { instrument: typeof document.instrument; lastGood: typeof document.instrument }) => {
      for (const one of [work.instrument, work.lastGood])
        Object.assign(one.tolerances, { "dome.dishRadius": 99999999999 });
    },
  ],
  [
    "a measurement's day",
    "readings.gapAfter.date",
    (work: { asBuilt: { readings: object } }) => {
      const gapAfter = { value: 1.25, date: "20266-11-25", note: "" };
      work.asBuilt.readings = { gapAfter };
    },
  ],
  [
    "a name too long",
    "name",
    (work: { instrument: object; lastGood: object }) => {
      for (const one of [work.instrument, work.lastGood])
        Object.assign(one, { name: "x".repeat(205) });
    },
  ],
  [
    "a variant",
    "variants.1",
    (work: { comparison: { variants: unknown[] } }) => {
      work.comparison.variants = [...work.comparison.variants, 7];
    },
  ],
];

test.each(spoiled)("%s alone is left out, named and kept as it was", async (_, path, spoil) => {
  const { shelf, database } = await openShelf();
  const stored = storedWith(spoil);
  await database.put("entries", stored);
  const entry = await shelf.open(id);
  expect(entry?.document.instrument.body).toEqual(document.instrument.body);
  expect(entry?.document.comparison.variants).toEqual(document.comparison.variants);
  const [aside, ...more] = await shelf.unreadable();
  expect(more).toEqual([]);
  expect(aside).toMatchObject({ id, json: stored });
  expect(aside?.parts?.map((part) => part.path)).toEqual([path]);
  expect(aside?.parts?.[0]?.reason).not.toBe("");
  expect(await shelf.open(id)).toEqual(entry);
  expect(await shelf.unreadable()).toHaveLength(1);
  await shelf.forgetUnreadable(id);
  expect(await shelf.unreadable()).toEqual([]);
});
