import "fake-indexeddb/auto";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { makeBenchStore } from "../../src/store/bench-keep.ts";
import { makeCompareStore } from "../../src/store/compare-keep.ts";
import { stepField } from "../../src/store/edits.ts";
import { Session } from "../../src/store/session.ts";
import { Shelf } from "../../src/store/shelf.ts";
import { openShelfDatabase, type ShelfDatabase } from "../../src/store/shelf-database.ts";
import { firstState, type State } from "../../src/store/state.ts";
import { makeStore } from "../../src/store/store.ts";
import { recorded, undo } from "../../src/store/undo.ts";

let database: ShelfDatabase;
let shelf: Shelf;
let count = 0;

beforeEach(async () => {
  const news = { superseded: () => {}, blocked: () => {} };
  database = await openShelfDatabase(news, `session-${count++}`);
  shelf = new Shelf(database);
});
afterEach(() => database.close());

function keeper() {
  const held = new Map<string, string>();
  return {
    getItem: (key: string) => held.get(key) ?? null,
    setItem: (key: string, value: string) => void held.set(key, value),
  };
}

function openTab(state: State = firstState, kept = keeper()) {
  const store = makeStore(state);
  const tell = vi.fn();
  const session = new Session({
    store,
    compare: makeCompareStore(keeper()),
    bench: makeBenchStore(keeper()),
    shelf,
    tell,
    keeper: kept,
    now: () => 1,
  });
  const act = (edit: (state: State) => State): void =>
    store.setState((before) => recorded(before, edit(before)));
  return { store, session, tell, act, kept };
}

const longer = (state: State): State => stepField(state, "body.length", 1);
const { id } = firstState.instrument;
const { length } = firstState.instrument.body;

describe("a session", () => {
  test("puts nothing on the shelf until something is changed, or it is told to", async () => {
    const { session } = openTab();
    await session.start();
    await session.flush();
    expect(await shelf.cards()).toEqual([]);
    session.keep();
    await session.flush();
    expect(await shelf.cards()).toHaveLength(1);
  });

  test("saves an edit, with the way back, and says so", async () => {
    const { session, act, tell } = openTab();
    act(longer);
    expect(session.state.getState().saving).toBe("saving");
    await session.flush();
    expect(session.state.getState().saving).toBe("saved");
    const entry = await shelf.open(id);
    expect(entry?.work.instrument.body.length).toBe(length + 1);
    expect(entry?.history.past).toHaveLength(1);
    expect(tell).toHaveBeenCalledWith({ id, revision: 1 });
  });

  test("shows in one tab what another saved", async () => {
    const [one, two] = [openTab(), openTab()];
    one.act(longer);
    await one.session.flush();
    await two.session.hear({ id, revision: 1 });
    expect(two.store.getState().instrument.body.length).toBe(length + 1);
  });

  test("overwrites nothing when two tabs save at once: the later yields, and its own is one undo away", async () => {
    const [one, two] = [openTab(), openTab()];
    one.act(longer);
    two.act((state) => stepField(state, "shim.contact", 1));
    await one.session.flush();
    await two.session.flush();
    expect(two.session.state.getState().met).toBe(true);
    expect(two.store.getState().instrument).toEqual(one.store.getState().instrument);
    two.act(undo);
    expect(two.store.getState().instrument.shim.contact).toBe(
      firstState.instrument.shim.contact + 1,
    );
  });

  test("saves at the next start what a killed tab had kept but not saved", async () => {
    const first = openTab();
    first.act(longer);
    await first.session.flush();
    first.act(longer);
    const again = openTab(first.store.getState(), first.kept);
    await again.session.start();
    await again.session.flush();
    expect((await shelf.open(id))?.work.instrument.body.length).toBe(length + 2);
  });

  test("starts on the shelf's entry when another tab has saved since", async () => {
    const [one, two] = [openTab(), openTab()];
    one.act(longer);
    await one.session.flush();
    await two.session.start();
    expect(two.store.getState().instrument.body.length).toBe(length + 1);
  });

  test("saves what is left behind before another entry is opened", async () => {
    const { session, act, store } = openTab();
    act(longer);
    await session.flush();
    const entry = await shelf.open(id);
    if (entry === undefined) throw new Error("not saved");
    const instrument = { ...entry.work.instrument, id: "other" };
    await shelf.put([{ ...entry, id: "other", work: { ...entry.work, instrument } }]);
    act((state) => stepField(state, "shim.contact", 1));
    expect(await session.open("other")).toBe(true);
    expect(store.getState().instrument.id).toBe("other");
    expect((await shelf.open(id))?.work.instrument.shim.contact).toBe(
      firstState.instrument.shim.contact + 1,
    );
  });

  test("says that a save was refused, keeps the work, and saves it with the next edit", async () => {
    const { session, act, store } = openTab();
    const save = vi.spyOn(shelf, "save").mockRejectedValueOnce(new Error("QuotaExceededError"));
    act(longer);
    await session.flush();
    expect(session.state.getState().saving).toBe("refused");
    expect(store.getState().instrument.body.length).toBe(length + 1);
    save.mockRestore();
    act(longer);
    await session.flush();
    expect((await shelf.open(id))?.work.instrument.body.length).toBe(length + 2);
  });

  test("writes no more once a newer page has taken the shelf over", async () => {
    const { session, act } = openTab();
    session.supersede();
    act(longer);
    await session.flush();
    expect(await shelf.cards()).toEqual([]);
    expect(session.state.getState().saving).toBe("superseded");
  });
});
