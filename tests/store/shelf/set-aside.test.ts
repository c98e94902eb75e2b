import { describe, expect, test } from "vitest";
import { firstState } from "../../../src/store/document/state.ts";
import { documentIn } from "../../../src/store/document/undo.ts";
import { addVariant } from "../../../src/store/document/variant-edits.ts";
import type { TextStorage } from "../../../src/store/shelf/browser-storage.ts";
import { unreadableFile } from "../../../src/store/shelf/export.ts";
import type { StoredEntry } from "../../../src/store/shelf/shelf-entry.ts";
import { entryForm, newEntry } from "../../../src/store/shelf/shelf-entry.ts";
import { tabKey, writeTabCopy } from "../../../src/store/shelf/tab-copy.ts";
import { tabCopyDamage } from "../../../src/store/shelf/tab-copy-damage.ts";
import { importPlanOf, memoryStorage, openShelf } from "../../support/tab.ts";

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

test("a step of undo that cannot be read is left out and named, and so is a part of one", async () => {
  const { shelf, database } = await openShelf();
  const stored = JSON.parse(JSON.stringify(entryForm(newEntry(document, 1))));
  const step = structuredClone(stored.work);
  step.instrument.tolerances = { "body.length": -1 };
  stored.history = { past: [7, stored.work, step], future: [] };
  await database.put("entries", stored);
  const entry = await shelf.open(id);
  expect(entry?.history.past).toHaveLength(2);
  expect(entry?.history.past[0]).toEqual(document);
  const [aside] = await shelf.unreadable();
  expect(aside?.parts?.map((part) => part.path)).toEqual([
    "history.past.0",
    "history.past.2.tolerances.body.length",
  ]);
});

test("what was left out is had back by putting the saved file right and importing it", async () => {
  const { shelf, database } = await openShelf();
  const stored = storedWith((work: { instrument: object; lastGood: object }) => {
    for (const one of [work.instrument, work.lastGood])
      Object.assign(one, { tolerances: { "dome.dishRadius": 99999999999 } });
  });
  await database.put("entries", stored);
  await shelf.open(id);
  const [aside] = await shelf.unreadable();
  if (aside === undefined) throw new Error("nothing set aside");
  const text = JSON.stringify(unreadableFile(aside));
  const imported = async (file: string) => importPlanOf(shelf, new Blob([file]));
  const asFound = await imported(text);
  expect(asFound.bad.map(({ path }) => path)).toContain(
    "instruments[0].instrument.tolerances.dome.dishRadius",
  );
  const { clashes, bad } = await imported(text.replaceAll("99999999999", "5"));
  expect(bad).toEqual([]);
  expect(clashes[0]?.document.instrument).toEqual({
    ...document.instrument,
    tolerances: { "dome.dishRadius": 5 },
  });
  expect(clashes[0]?.document.comparison).toEqual(document.comparison);
});

describe("the tab's own copy", () => {
  const copyWith = (spoil: (copy: { [key: string]: never }) => void): TextStorage => {
    const storage = memoryStorage();
    writeTabCopy(storage, addVariant(firstState, "a"));
    const copy = JSON.parse(storage.getItem(tabKey) ?? "null");
    spoil(copy);
    return memoryStorage({ [tabKey]: JSON.stringify(copy) });
  };

  test("has nothing to tell of while it is whole, or not there", () => {
    expect(tabCopyDamage(copyWith(() => {}))).toBeNull();
    expect(tabCopyDamage(memoryStorage())).toBeNull();
  });

  test("names what of it cannot be read, and is shown with the shelf's own", async () => {
    const storage = copyWith((copy) =>
      Object.assign(copy, { comparison: { variants: [7] }, history: { past: [7], future: [] } }),
    );
    const damage = tabCopyDamage(storage);
    if (damage === null) throw new Error("nothing found");
    expect(damage.parts?.map(({ path }) => path)).toEqual(["variants.0", "history.past.0"]);
    const { shelf } = await openShelf();
    await shelf.addUnreadable(damage);
    await shelf.addUnreadable(damage);
    expect(await shelf.unreadable()).toEqual([damage]);
  });

  test("is not named again where the shelf's entry has the same damage", async () => {
    const { shelf, database } = await openShelf();
    const comparison = { ...document.comparison, variants: [7] };
    const stored = JSON.parse(JSON.stringify(entryForm(newEntry(document, 1))));
    await database.put("entries", { ...stored, work: { ...stored.work, comparison } });
    await shelf.open(id);
    const damage = tabCopyDamage(copyWith((copy) => Object.assign(copy, { comparison })));
    if (damage === null) throw new Error("nothing found");
    await shelf.addUnreadable(damage);
    expect(await shelf.unreadable()).toHaveLength(1);
  });

  test.each(["{", '{"version":2}', "7"])(
    "is kept as it was where nothing of it can be read: %s",
    (text) => {
      const damage = tabCopyDamage(memoryStorage({ [tabKey]: text }));
      expect(damage?.id).toBe("tab");
      expect(damage?.parts).toBeUndefined();
      expect(damage?.json).toEqual(text === "{" ? "{" : expect.anything());
    },
  );
});

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
