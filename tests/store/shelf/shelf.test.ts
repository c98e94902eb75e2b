import { describe, expect, test } from "vitest";
import { presets } from "../../../src/instrument/presets.ts";
import { newDocument } from "../../../src/store/document/state.ts";
import { type Entry, newEntry, type StoredEntry } from "../../../src/store/shelf/shelf-entry.ts";
import { openShelf } from "../../support/tab.ts";

const entries: readonly Entry[] = presets.map((preset) => newEntry(newDocument(preset), 1));
const additions = entries.map((entry) => ({ entry, replaces: null }));
function first(): Entry {
  const [entry] = entries;
  if (entry === undefined) throw new Error("no preset");
  return entry;
}
const { id } = first();

describe("the shelf", () => {
  test("gives back what was saved, one revision on", async () => {
    const { shelf } = await openShelf();
    await shelf.save(first());
    expect(await shelf.open(id)).toEqual({ ...first(), revision: 1 });
    expect(await shelf.document(id)).toEqual(first().document);
    const { name } = first().document.instrument;
    expect(await shelf.cards()).toEqual([
      { id, name, savedAt: 1, finished: false, revision: 1, inFile: null },
    ]);
  });

  test("does not write over what another tab saved since, whatever the clock says", async () => {
    const { shelf } = await openShelf();
    await shelf.save({ ...first(), savedAt: 5000 });
    const theirs = await shelf.save({ ...first(), revision: 1, savedAt: 2 });
    const ours = await shelf.save({ ...first(), revision: 1, savedAt: 9000 });
    expect(theirs.saved).toBe(true);
    expect(ours).toMatchObject({ saved: false, theirs: { revision: 2, savedAt: 2 } });
    expect(await shelf.open(id)).toMatchObject({ savedAt: 2 });
  });

  test("sets a record aside that cannot be read, and keeps it as it was", async () => {
    const { shelf, database } = await openShelf();
    await shelf.add(additions);
    const broken = { id, version: 2, work: "gone" };
    await database.put("entries", broken as unknown as StoredEntry);
    expect(await shelf.open(id)).toBeUndefined();
    expect(await shelf.unreadable()).toEqual([{ id, json: broken }]);
    expect(await shelf.cards()).toHaveLength(entries.length - 1);
    expect(await shelf.document(entries[1]?.id ?? "")).toEqual(entries[1]?.document);
  });

  test("sets a second broken record of one id aside beside the first, and saves over neither", async () => {
    const { shelf, database } = await openShelf();
    const broken = (work: string) => ({ id, version: 2, work }) as unknown as StoredEntry;
    await database.put("entries", broken("one"));
    await shelf.open(id);
    await database.put("entries", broken("two"));
    expect((await shelf.save(first())).saved).toBe(true);
    const aside = (await shelf.unreadable()).map(({ json }) => json);
    expect(aside).toHaveLength(2);
    expect(aside).toEqual(expect.arrayContaining([broken("one"), broken("two")]));
    expect(await shelf.open(id)).toMatchObject({ revision: 1 });
  });

  test("takes off and puts back whole", async () => {
    const { shelf } = await openShelf();
    await shelf.add(additions);
    await shelf.remove(id);
    expect(await shelf.cards()).toHaveLength(entries.length - 1);
    await shelf.add([{ entry: first(), replaces: null }]);
    expect(await shelf.open(id)).toEqual(first());
  });

  test("takes in beside what stands there, or over the very revision it is told to", async () => {
    const { shelf } = await openShelf();
    const other = newEntry(
      { ...first().document, lastGood: { ...first().document.lastGood, name: "B" } },
      3,
    );
    await shelf.save(first());
    const [beside] = await shelf.add([{ entry: other, replaces: null }]);
    expect(beside?.id).not.toBe(id);
    expect(beside?.document.instrument.id).toBe(beside?.id);
    const [over] = await shelf.add([{ entry: other, replaces: 1 }]);
    expect(over).toMatchObject({ id, revision: 2, history: { past: [first().document] } });
    const [late] = await shelf.add([{ entry: other, replaces: 1 }]);
    expect(late?.id).not.toBe(id);
    expect(await shelf.cards()).toHaveLength(3);
  });
});
