import "fake-indexeddb/auto";
import { readFileSync } from "node:fs";
import { openDB } from "idb";
import { describe, expect, test } from "vitest";
import { makeStore } from "../../../src/store/document/store.ts";
import { undo } from "../../../src/store/document/undo.ts";
import { readShareText } from "../../../src/store/files/share.ts";
import { shelfFileOf } from "../../../src/store/files/shelf-file.ts";
import type { TextStorage } from "../../../src/store/shelf/browser-storage.ts";
import { readImport } from "../../../src/store/shelf/import.ts";
import { readTabCopy } from "../../../src/store/shelf/read-tab-copy.ts";
import { Shelf } from "../../../src/store/shelf/shelf.ts";
import { openShelfDatabase } from "../../../src/store/shelf/shelf-database.ts";
import { entryForm } from "../../../src/store/shelf/shelf-entry.ts";
import { firstShop, makeShopStore, type Shop } from "../../../src/store/shelf/shop.ts";
import { openShop } from "../../../src/store/shelf/shop-storage.ts";
import { writeTabCopy } from "../../../src/store/shelf/tab-copy.ts";
import { memoryStorage, openShelf } from "../../support/tab.ts";

// These files were written by the page itself while that version was its own, and are never written again.
const fixture = (name: string, version = "v1"): string =>
  readFileSync(new URL(`fixtures/${version}/${name}`, import.meta.url), "utf8");
const asWritten = (name: string, version?: string) =>
  JSON.parse(fixture(name, version), (_, one) => withoutFamily(one));

/** A comparison without what was plotted of one shim for several, which is no longer an instrument's own. */
function withoutFamily(one: unknown): unknown {
  if (typeof one !== "object" || one === null || !("family" in one)) return one;
  const { family: _, ...rest } = one;
  return rest;
}

/** What a shop has had since, as at first. */
const withSticks = (shop: object) => ({
  ...shop,
  sticks: firstShop.sticks,
  trial: firstShop.trial,
});

/** The same with what an instrument's file has had since, at its defaults, in every instrument of it. */
const json = (name: string, version?: string) =>
  JSON.parse(fixture(name, version), (_, one) =>
    one?.format === "rimwright-instrument"
      ? {
          ...one,
          dome: { ...one.dome, method: "break" },
          seat: { topThickness: 2.8, leastCut: 0, fingerboardWidth: 57 },
          neck: { ...one.neck, fan: 0, fanFret: 7 },
          bridge: { ...one.bridge, slant: 0 },
          strings: { ...one.strings, pairGap: 0, settling: 0 },
        }
      : withoutFamily(one),
  );

const news = { superseded: () => {}, blocked: () => {} };
const id = "0f1e2d3c4b5a69788796a5b4c3d2e1f0";

function shopIn(storage: TextStorage): Shop | null {
  const shop = makeShopStore();
  openShop(shop, storage, makeStore(), new EventTarget());
  return shop.getState();
}

describe("what version 1 kept in the tab", () => {
  const kept = json("kept.json");
  const storage = memoryStorage(
    Object.fromEntries(Object.entries(kept).map(([key, one]) => [key, JSON.stringify(one)])),
  );

  test("comes back with the comparison and the record that lay beside it", () => {
    const state = readTabCopy(storage);
    expect(state.instrument).toEqual(kept.rimwright.instrument);
    expect(state.texts).toEqual(kept.rimwright.texts);
    expect(state.comparison).toEqual(kept["rimwright-compare"][id]);
    expect(state.comparison.variants).toHaveLength(2);
    expect(state.asBuilt).toEqual(kept["rimwright-bench"].records[id]);
    expect(state.readingTexts).toEqual(kept["rimwright-bench"].texts[id]);
    expect(state.past).toHaveLength(kept.rimwright.history.past.length);
  });

  test("gives what was put away its own", () => {
    const { previous } = readTabCopy(storage);
    const { putAway } = kept.rimwright;
    const away = putAway.instrument.id;
    expect(previous?.instrument).toEqual(putAway.instrument);
    expect(previous?.comparison).toEqual(kept["rimwright-compare"][away]);
    expect(previous?.asBuilt).toEqual(kept["rimwright-bench"].records[away]);
  });

  test("has acts that take nothing back of what lay beside it", () => {
    const state = readTabCopy(storage);
    const back = undo(state);
    expect(back.instrument).not.toEqual(state.instrument);
    expect(back.asBuilt).toEqual(state.asBuilt);
    expect(back.comparison).toEqual(state.comparison);
  });

  test("is kept from then on in the form of version 2", () => {
    const state = readTabCopy(storage);
    const now = memoryStorage();
    writeTabCopy(now, state);
    expect(readTabCopy(now)).toEqual(state);
  });

  test("leaves the shop as it was", () => {
    const { records: _, texts: __, ...shop } = kept["rimwright-bench"];
    expect(shopIn(storage)).toEqual(withSticks(shop));
    expect(shop.finished).toHaveLength(1);
  });
});

describe("a shelf of version 1", () => {
  const { entries, cards } = json("database.json");

  async function oldShelf(name: string) {
    const old = await openDB(name, 1, {
      upgrade(database) {
        for (const store of ["entries", "cards", "aside"])
          database.createObjectStore(store, { keyPath: "id" });
      },
    });
    for (const entry of entries) await old.put("entries", entry);
    for (const card of cards) await old.put("cards", card);
    return old;
  }

  test("is opened whole, each entry with what it had", async () => {
    (await oldShelf("old-1")).close();
    const database = await openShelfDatabase(news, "old-1");
    const shelf = new Shelf(database);
    expect(await shelf.cards()).toEqual(
      cards.map((card: object) => ({ ...card, revision: 0, inFile: null })),
    );
    for (const before of entries) {
      const { work, history, comparison, asBuilt, revision, savedAt } = before;
      const beside = { comparison, asBuilt, readingTexts: {} };
      const entry = await shelf.open(before.id);
      expect(entry && entryForm(entry)).toEqual({
        version: 2,
        id: before.id,
        revision,
        savedAt,
        stamp: { run: "", edit: 0 },
        work: { ...work, ...beside },
        history: {
          past: history.past.map((one: object) => ({ ...one, ...beside })),
          future: history.future.map((one: object) => ({ ...one, ...beside })),
        },
      });
    }
    const entry = await shelf.open(id);
    if (entry === undefined) throw new Error("lost");
    await shelf.save(entry);
    expect(await database.get("entries", id)).toMatchObject({ version: 2, revision: 13 });
    database.close();
  });

  test("and one of version 2 too, its cards as they were", async () => {
    const old = await openDB("old-3", 2, {
      upgrade(database) {
        for (const store of ["entries", "cards", "aside"])
          database.createObjectStore(store, { keyPath: "id" });
      },
    });
    const card = { ...cards[0], revision: 7, inFile: 7 };
    await old.put("cards", card);
    await old.put("entries", entries[0]);
    old.close();
    const database = await openShelfDatabase(news, "old-3");
    const shelf = new Shelf(database);
    expect(await shelf.cards()).toEqual([card]);
    expect(await shelf.open(entries[0].id)).toBeDefined();
    expect(await shelf.lastShown()).toBeUndefined();
    database.close();
  });

  test("and one of version 3, whose instruments are no models", async () => {
    const old = await openDB("old-4", 3, {
      upgrade(database) {
        for (const store of ["entries", "cards", "aside"])
          database.createObjectStore(store, { keyPath: "id" });
        database.createObjectStore("shown");
      },
    });
    await old.put("entries", entries[0]);
    old.close();
    const database = await openShelfDatabase(news, "old-4");
    const opened = await new Shelf(database).open(entries[0].id);
    expect(opened?.document).toMatchObject({ isModel: false, madeFrom: null });
    database.close();
  });

  test("waits for the page of version 1 to let go of it", async () => {
    const old = await oldShelf("old-2");
    let blocked = false;
    const opening = openShelfDatabase(
      {
        superseded: () => {},
        blocked: () => {
          blocked = true;
          old.close();
        },
      },
      "old-2",
    );
    (await opening).close();
    expect(blocked).toBe(true);
  });
});

describe("files and addresses of version 1", () => {
  test("a shelf's file comes in whole", async () => {
    const { shelf } = await openShelf();
    const { instruments } = json("shelf-file.json");
    const reading = await readImport(shelf, new Blob([fixture("shelf-file.json")]));
    if (!reading.ok) throw new Error(reading.reason);
    const { fresh, bad } = reading.plan;
    expect(bad).toEqual([]);
    const read = fresh.map(({ instrument, comparison, asBuilt }) => ({
      instrument,
      comparison,
      asBuilt,
    }));
    expect(read).toEqual(instruments);
  });

  test("an instrument alone comes in", async () => {
    const { shelf } = await openShelf();
    const reading = await readImport(shelf, new Blob([fixture("instrument.json")]));
    expect(reading.ok && reading.plan.fresh[0]?.instrument).toEqual(json("instrument.json"));
  });

  test("an address opens its instrument", async () => {
    const read = await readShareText(fixture("fragment.txt").trim());
    expect(read).toEqual({ ok: true, instrument: json("instrument.json") });
  });
});

describe("version 2", () => {
  test("kept in the tab comes back as it was", () => {
    const kept = json("kept.json", "v2");
    const storage = memoryStorage(
      Object.fromEntries(Object.entries(kept).map(([key, one]) => [key, JSON.stringify(one)])),
    );
    const { history, version, ...rest } = kept.rimwright;
    expect(version).toBe(2);
    const state = readTabCopy(storage);
    const now = memoryStorage();
    writeTabCopy(now, state);
    // The shim's group of fields is no more: its fields are in the group that is never folded at first.
    const folded = kept.rimwright.choices.folded.filter((group: string) => group !== "shim");
    const { shown, ...stored } = JSON.parse(now.getItem("rimwright") ?? "null");
    expect(shown.id).toBe(rest.instrument.id);
    expect(stored).toEqual({
      ...kept.rimwright,
      choices: { ...kept.rimwright.choices, folded, introduced: true },
    });
    expect(state).toMatchObject({ instrument: rest.instrument, asBuilt: rest.asBuilt });
    expect(state.past).toHaveLength(history.past.length);
    expect(shopIn(storage)).toEqual(withSticks(kept["rimwright-shop"]));
  });

  test("on the shelf is opened as it was", async () => {
    const { entries, cards } = json("database.json", "v2");
    const { shelf, database } = await openShelf();
    for (const entry of entries) await database.put("entries", entry);
    for (const card of cards) await database.put("cards", card);
    for (const entry of entries) {
      const opened = await shelf.open(entry.id);
      expect(opened && entryForm(opened)).toEqual(entry);
    }
    expect(await shelf.cards()).toEqual(expect.arrayContaining(cards));
  });

  test("in a file, half-done numbers among it, comes in whole and goes out the same", async () => {
    const { shelf } = await openShelf();
    const reading = await readImport(shelf, new Blob([fixture("shelf-file.json", "v2")]));
    if (!reading.ok) throw new Error(reading.reason);
    const out = shelfFileOf(reading.plan.fresh.map((document) => ({ document })));
    expect(reading.plan.bad).toEqual([]);
    expect(out).toEqual(asWritten("shelf-file.json", "v2"));
    expect(out.instruments[0]).toHaveProperty("lastGood");
  });

  test("of instruments of the file's version 2, a seat, a variant by the other way, twelve strings and a cutaway, comes in whole and goes out the same", async () => {
    const { shelf } = await openShelf();
    const name = "shelf-file-both-ways.json";
    const reading = await readImport(shelf, new Blob([fixture(name, "v2")]));
    if (!reading.ok) throw new Error(reading.reason);
    expect(reading.plan.bad).toEqual([]);
    expect(shelfFileOf(reading.plan.fresh.map((document) => ({ document })))).toEqual(
      asWritten(name, "v2"),
    );
    const [seat, twelve, cutaway] = reading.plan.fresh;
    expect(seat?.comparison.variants[0]?.method).toBe("break");
    expect(twelve?.instrument.version).toBe(2);
    expect(twelve?.instrument.strings.pairGap).toBe(2.4);
    expect(cutaway?.instrument.body.tracingTreble).toBeDefined();
  });
});

test("a file of version 2 with sticks, a model and what was made from it comes in whole and goes out the same", async () => {
  const { shelf } = await openShelf();
  const name = "shelf-file-models.json";
  const reading = await readImport(shelf, new Blob([fixture(name, "v2")]));
  if (!reading.ok) throw new Error(reading.reason);
  const { fresh, sticks, bad } = reading.plan;
  expect(bad).toEqual([]);
  const out = shelfFileOf(
    fresh.map((document) => ({ document })),
    sticks,
  );
  expect(out).toEqual(asWritten(name, "v2"));
  expect(fresh.map(({ isModel, madeFrom }) => [isModel, madeFrom?.id])).toEqual([
    [true, undefined],
    [false, "three-quarter"],
  ]);
});

test("a page whose shelf a newer one wants lets go of it, and opens it no more", async () => {
  let superseded = false;
  const ours = await openShelfDatabase(
    {
      superseded: () => {
        superseded = true;
      },
      blocked: () => {},
    },
    "newer",
  );
  const newer = await openDB("newer", 99);
  expect(superseded).toBe(true);
  await expect(ours.get("entries", "any")).rejects.toThrow();
  await expect(openShelfDatabase(news, "newer")).rejects.toThrow(/version/i);
  newer.close();
});
