import "fake-indexeddb/auto";
import { afterEach, describe, expect, test } from "vitest";
import { presets } from "../../src/instrument/presets.ts";
import { Shelf } from "../../src/store/shelf.ts";
import { duplicate, importFile } from "../../src/store/shelf-act.ts";
import { openShelfDatabase, type ShelfDatabase } from "../../src/store/shelf-database.ts";
import { type Entry, newEntry } from "../../src/store/shelf-entry.ts";
import { readShelfFile, shelfFileOf } from "../../src/store/shelf-file.ts";

const opened: ShelfDatabase[] = [];
let count = 0;

async function openShelf(): Promise<{ shelf: Shelf; database: ShelfDatabase }> {
  const news = { superseded: () => {}, blocked: () => {} };
  const database = await openShelfDatabase(news, `shelf-${count++}`);
  opened.push(database);
  return { shelf: new Shelf(database), database };
}

afterEach(() => {
  for (const database of opened.splice(0)) database.close();
});

const entries: readonly Entry[] = presets.map((preset) => newEntry(preset, 1));
function first(): Entry {
  const [entry] = entries;
  if (entry === undefined) throw new Error("no preset");
  return entry;
}

describe("the shelf", () => {
  test("gives back what was saved, one revision on", async () => {
    const { shelf } = await openShelf();
    await shelf.save(first());
    expect(await shelf.open(first().id)).toEqual({ ...first(), revision: 1 });
    expect(await shelf.cards()).toEqual([
      { id: first().id, name: first().work.instrument.name, savedAt: 1, finished: false },
    ]);
  });

  test("does not write over what another tab saved since", async () => {
    const { shelf } = await openShelf();
    await shelf.save(first());
    const theirs = await shelf.save({ ...first(), revision: 1, savedAt: 2 });
    const ours = await shelf.save({ ...first(), revision: 1, savedAt: 3 });
    expect(theirs.saved).toBe(true);
    expect(ours).toMatchObject({ saved: false, theirs: { revision: 2, savedAt: 2 } });
    expect(await shelf.open(first().id)).toMatchObject({ savedAt: 2 });
  });

  test("sets a record aside that cannot be read, and keeps it as it was", async () => {
    const { shelf, database } = await openShelf();
    await shelf.put(entries);
    const broken = { id: first().id, version: 1, work: "gone" };
    await database.put("entries", broken as unknown as Entry);
    expect(await shelf.open(first().id)).toBeUndefined();
    expect(await shelf.aside()).toEqual([{ id: first().id, json: broken }]);
    expect(await shelf.entries()).toHaveLength(entries.length - 1);
    expect(await shelf.cards()).toHaveLength(entries.length - 1);
  });

  test("takes off and puts back whole", async () => {
    const { shelf } = await openShelf();
    await shelf.put(entries);
    await shelf.remove(first().id);
    expect(await shelf.cards()).toHaveLength(entries.length - 1);
    await shelf.put([first()]);
    expect(await shelf.open(first().id)).toEqual(first());
  });

  test("copies under an id and a name of their own", async () => {
    const { shelf } = await openShelf();
    await shelf.put([first()]);
    const copy = await duplicate(shelf, first().id, 5);
    expect(copy?.id).not.toBe(first().id);
    expect(copy?.work.instrument).toEqual({
      ...first().work.instrument,
      id: copy?.id,
      name: `${first().work.instrument.name}, copy`,
    });
  });
});

describe("a shelf's file", () => {
  const text = JSON.stringify(shelfFileOf(entries));

  test("brings back on an empty shelf what went out", async () => {
    const { shelf } = await openShelf();
    const done = await importFile(shelf, text, 7);
    expect(done).toEqual({ taken: entries.length, kept: 0, same: 0, bad: [], refused: null });
    const back = shelfFileOf(await shelf.entries());
    expect(new Set(back.instruments.map((one) => JSON.stringify(one)))).toEqual(
      new Set(shelfFileOf(entries).instruments.map((one) => JSON.stringify(one))),
    );
  });

  test("taken in twice changes nothing", async () => {
    const { shelf } = await openShelf();
    await importFile(shelf, text, 7);
    expect(await importFile(shelf, text, 8)).toMatchObject({ taken: 0, same: entries.length });
    expect(await shelf.cards()).toHaveLength(entries.length);
  });

  test("stands beside a different instrument of the same id, which stays as it was", async () => {
    const { shelf } = await openShelf();
    await shelf.put([first()]);
    const other = { ...first().work.instrument, name: "Another" };
    const done = await importFile(shelf, JSON.stringify(other), 9);
    expect(done).toMatchObject({ taken: 1, kept: 1 });
    expect(await shelf.open(first().id)).toEqual(first());
    expect((await shelf.cards()).map(({ name }) => name).sort()).toEqual(
      ["Another", first().work.instrument.name].sort(),
    );
  });

  test("with bad entries among good ones brings in the good, and says what is wrong where", () => {
    const good = { instrument: { name: "Good" } };
    const bad = { instrument: { body: { length: -3 } } };
    const file = { format: "rimwright-shelf", version: 1, instruments: [bad, good, 7] };
    const reading = readShelfFile(JSON.stringify(file));
    expect(reading.ok && reading.read.map(({ instrument }) => instrument.name)).toEqual(["Good"]);
    expect(reading.ok && reading.bad.map(({ path }) => path)).toContain(
      "instruments[0].instrument.body.length",
    );
    expect(reading.ok && reading.bad.some(({ path }) => path.startsWith("instruments[2]"))).toBe(
      true,
    );
  });

  test.each([
    ["not JSON", "{", /not JSON/],
    ["a list", "[]", /neither/],
    ["a newer file", '{"format":"rimwright-shelf","version":2,"instruments":[]}', /newer/],
    ["no list", '{"format":"rimwright-shelf","version":1}', /no list/],
    [
      "too many",
      JSON.stringify({ format: "rimwright-shelf", version: 1, instruments: Array(20_001).fill(0) }),
      /more than/,
    ],
    ["too large", " ".repeat(20_000_001), /20 MB/],
  ])("is refused whole when it is %s", (_, broken, reason) => {
    const reading = readShelfFile(broken);
    expect(reading.ok ? "" : reading.reason).toMatch(reason);
  });
});
