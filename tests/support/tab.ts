import "fake-indexeddb/auto";
import { onTestFinished, vi } from "vitest";
import { firstState, type State } from "../../src/store/document/state.ts";
import { makeStore } from "../../src/store/document/store.ts";
import { recorded } from "../../src/store/document/undo.ts";
import type { TextStorage } from "../../src/store/shelf/browser-storage.ts";
import { type ImportPlan, readImport } from "../../src/store/shelf/import.ts";
import { watchEarlyEdits } from "../../src/store/shelf/left-early.ts";
import { type Parts, Session } from "../../src/store/shelf/session.ts";
import { Shelf } from "../../src/store/shelf/shelf.ts";
import { openShelfDatabase, type ShelfDatabase } from "../../src/store/shelf/shelf-database.ts";
import { makeShopStore } from "../../src/store/shelf/shop.ts";
import { openShop } from "../../src/store/shelf/shop-storage.ts";

let count = 0;

/** An empty shelf in a database of its own, closed after the test unless it stays. */
export async function openShelf({ stays = false } = {}): Promise<{
  shelf: Shelf;
  database: ShelfDatabase;
}> {
  const news = { superseded: () => {}, blocked: () => {} };
  const database = await openShelfDatabase(news, `shelf-${count++}`);
  if (!stays) onTestFinished(() => database.close());
  return { shelf: new Shelf(database), database };
}

/** What a browser stores, in memory. */
export function memoryStorage(first: Readonly<Record<string, string>> = {}): TextStorage {
  const held = new Map(Object.entries(first));
  return {
    getItem: (key) => held.get(key) ?? null,
    setItem: (key, value) => void held.set(key, value),
  };
}

/** A tab of the page on a shelf. */
export function openTab(shelf: Shelf, state: State = firstState, more: Partial<Parts> = {}) {
  const store = makeStore(state);
  const early = watchEarlyEdits(store)();
  const storage = more.storage ?? memoryStorage();
  const shop = makeShopStore();
  openShop(shop, memoryStorage(), store, new EventTarget());
  const tell = vi.fn();
  const firstSave = vi.fn();
  const now = () => 1;
  const session = new Session({
    store,
    early,
    shop,
    shelf,
    tell,
    storage,
    now,
    firstSave,
    ...more,
  });
  const edit = (change: (state: State) => State): void =>
    store.setState((before) => recorded(before, change(before)));
  return { store, session, shop, tell, firstSave, edit, storage };
}

/** What a file would bring in; throws where it is refused whole. */
export async function importPlanOf(shelf: Shelf, from: Blob): Promise<ImportPlan> {
  const reading = await readImport(shelf, from);
  if (!reading.ok) throw new Error(reading.reason);
  return reading.plan;
}
