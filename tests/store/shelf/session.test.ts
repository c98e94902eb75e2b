import { beforeEach, describe, expect, test, vi } from "vitest";
import { stepField } from "../../../src/store/document/edits.ts";
import { firstState, type State } from "../../../src/store/document/state.ts";
import { undo } from "../../../src/store/document/undo.ts";
import type { Shelf } from "../../../src/store/shelf/shelf.ts";
import type { ShelfDatabase } from "../../../src/store/shelf/shelf-database.ts";
import type { StoredEntry } from "../../../src/store/shelf/shelf-entry.ts";
import { memoryStorage, openShelf, openTab } from "../../support/tab.ts";

let shelf: Shelf;
let database: ShelfDatabase;
beforeEach(async () => {
  ({ shelf, database } = await openShelf());
});

const longer = (state: State): State => stepField(state, "body.length", 1);
const { id } = firstState.instrument;
const { length } = firstState.instrument.body;

describe("a session", () => {
  test("puts nothing on the shelf until something is changed, or it is told to", async () => {
    const { session } = openTab(shelf);
    await session.start();
    await session.flush();
    expect(await shelf.cards()).toEqual([]);
    session.addToShelf();
    await session.flush();
    expect(await shelf.cards()).toHaveLength(1);
  });

  test("saves an edit, with the way back, and says so", async () => {
    const { session, edit, tell } = openTab(shelf);
    edit(longer);
    expect(session.state.getState().saving).toBe("saving");
    await session.flush();
    expect(session.state.getState().saving).toBe("saved");
    const entry = await shelf.open(id);
    expect(entry?.document.instrument.body.length).toBe(length + 1);
    expect(entry?.history.past).toHaveLength(1);
    expect(tell).toHaveBeenCalledWith({ id, revision: 1 });
  });

  test("shows in one tab what another saved", async () => {
    const [one, two] = [openTab(shelf), openTab(shelf)];
    one.edit(longer);
    await one.session.flush();
    await two.session.onSaved({ id, revision: 1 });
    expect(two.store.getState().instrument.body.length).toBe(length + 1);
  });

  test("overwrites nothing when two tabs save at once: the later yields, and its own is one undo away", async () => {
    const [one, two] = [openTab(shelf), openTab(shelf)];
    one.edit(longer);
    two.edit((state) => stepField(state, "shim.contact", 1));
    await one.session.flush();
    await two.session.flush();
    expect(two.session.state.getState().conflict).toBe(true);
    expect(two.store.getState().instrument).toEqual(one.store.getState().instrument);
    two.edit(undo);
    expect(two.store.getState().instrument.shim.contact).toBe(
      firstState.instrument.shim.contact + 1,
    );
  });

  test("saves at the next start what a killed tab had kept but not saved", async () => {
    const first = openTab(shelf);
    first.edit(longer);
    await first.session.flush();
    first.edit(longer);
    const again = openTab(shelf, first.store.getState(), { storage: first.storage });
    await again.session.start();
    await again.session.flush();
    expect((await shelf.open(id))?.document.instrument.body.length).toBe(length + 2);
  });

  test("saves at the next start what a visit had edited whose shelf never opened, but nothing that was removed", async () => {
    const storage = memoryStorage();
    const unheard = openTab(shelf, firstState, { storage });
    unheard.edit(longer);
    const state = unheard.store.getState();
    const again = openTab(shelf, { ...state, initialEditId: state.editId }, { storage });
    await again.session.start();
    await again.session.flush();
    expect((await shelf.open(id))?.document.instrument.body.length).toBe(length + 1);
    await shelf.remove(id);
    const after = openTab(shelf, { ...state, initialEditId: state.editId }, { storage });
    await after.session.start();
    await after.session.flush();
    expect(await shelf.open(id)).toBeUndefined();
    expect(after.session.state.getState().saving).toBe("new");
  });

  test("starts on the shelf's entry when another tab has saved since", async () => {
    const [one, two] = [openTab(shelf), openTab(shelf)];
    one.edit(longer);
    await one.session.flush();
    await two.session.start();
    expect(two.store.getState().instrument.body.length).toBe(length + 1);
  });

  test("saves what is left behind before another entry is opened", async () => {
    const { session, edit, store } = openTab(shelf);
    edit(longer);
    await session.flush();
    const entry = await shelf.open(id);
    if (entry === undefined) throw new Error("not saved");
    const instrument = { ...entry.document.instrument, id: "other" };
    const document = { ...entry.document, instrument, lastGood: instrument };
    await shelf.add([{ entry: { ...entry, id: "other", document }, replaces: null }]);
    edit((state) => stepField(state, "shim.contact", 1));
    expect(await session.open("other")).toBe(true);
    expect(store.getState().instrument.id).toBe("other");
    expect((await shelf.open(id))?.document.instrument.shim.contact).toBe(
      firstState.instrument.shim.contact + 1,
    );
  });

  test("says that a save was refused, keeps the work, and saves it with the next edit", async () => {
    const { session, edit, store } = openTab(shelf);
    const save = vi.spyOn(shelf, "save").mockRejectedValueOnce(new Error("QuotaExceededError"));
    edit(longer);
    await session.flush();
    expect(session.state.getState().saving).toBe("refused");
    expect(store.getState().instrument.body.length).toBe(length + 1);
    save.mockRestore();
    edit(longer);
    await session.flush();
    expect((await shelf.open(id))?.document.instrument.body.length).toBe(length + 2);
  });

  test("writes no more once a newer page has taken the shelf over", async () => {
    const { session, edit } = openTab(shelf);
    session.supersede();
    edit(longer);
    await session.flush();
    expect(await shelf.cards()).toEqual([]);
    expect(session.state.getState().saving).toBe("superseded");
  });

  test("goes on saving when the clock is moved back", async () => {
    const times = [5_000_000, 9, 8];
    const { session, edit } = openTab(shelf, firstState, { now: () => times.shift() ?? 0 });
    for (let i = 1; i <= 3; i++) {
      edit(longer);
      await session.flush();
      expect(await shelf.open(id)).toMatchObject({ revision: i });
    }
    expect((await shelf.open(id))?.document.instrument.body.length).toBe(length + 3);
  });

  test("puts the tab's own copy on the shelf again where its entry was spoiled, which is set aside", async () => {
    const first = openTab(shelf);
    first.edit(longer);
    await first.session.flush();
    const spoiled = { id, version: 2, revision: 7, work: { lastGood: "?" } };
    await database.put("entries", spoiled as unknown as StoredEntry);
    const again = openTab(shelf, first.store.getState(), { storage: first.storage });
    await again.session.start();
    expect(await shelf.unreadable()).toEqual([{ id, json: spoiled }]);
    again.edit(longer);
    await again.session.flush();
    expect((await shelf.open(id))?.document.instrument.body.length).toBe(length + 2);
  });

  test("leaves the last whole save where the browser gives out amid one", async () => {
    const { session, edit } = openTab(shelf);
    edit(longer);
    await session.flush();
    const before = [await shelf.open(id), await shelf.cards()];
    const { put: whole } = IDBObjectStore.prototype;
    const put = vi.spyOn(IDBObjectStore.prototype, "put");
    put.mockImplementationOnce(whole).mockImplementationOnce(() => {
      throw new DOMException("full", "QuotaExceededError");
    });
    edit(longer);
    await session.flush();
    put.mockRestore();
    expect(session.state.getState().saving).toBe("refused");
    expect([await shelf.open(id), await shelf.cards()]).toEqual(before);
    edit(longer);
    await session.flush();
    expect((await shelf.open(id))?.document.instrument.body.length).toBe(length + 3);
  });
});
