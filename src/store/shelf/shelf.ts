import { dequal as equal } from "dequal/lite";
import type { IDBPTransaction } from "idb";
import { newId } from "../document/new-id.ts";
import type { Document } from "../document/state.ts";
import type { Mended } from "../files/leave-out.ts";
import { type LastShown, readLastShown } from "./last-shown.ts";
import {
  type ShelfDatabase,
  type ShelfSchema,
  shownKey,
  type UnreadableEntry,
} from "./shelf-database.ts";
import {
  type Card,
  cardOf,
  type Entry,
  entryForm,
  readCard,
  readEntry,
  readEntryDocument,
  readMendedEntry,
  type StoredEntry,
} from "./shelf-entry.ts";

export type SaveResult =
  | { readonly saved: true; readonly entry: Entry }
  /** Another tab has saved since `entry` was read: its copy, and nothing is overwritten. */
  | { readonly saved: false; readonly theirs: Entry };

/** The instruments kept in this browser. Every change is one transaction: done whole, or not at all. */
export class Shelf {
  readonly #database: ShelfDatabase;

  constructor(database: ShelfDatabase) {
    this.#database = database;
  }

  /** What is on the shelf, in no order. */
  async cards(): Promise<readonly Card[]> {
    const kept: readonly unknown[] = await this.#database.getAll("cards");
    return kept.map(readCard).filter((card) => card !== null);
  }

  /** An entry; undefined when there is none. One that cannot be read is set aside, and then there is none. */
  async open(id: string): Promise<Entry | undefined> {
    const json: unknown = await this.#database.get("entries", id);
    if (json === undefined) return undefined;
    const read = readMendedEntry(json);
    if (read === null || read.leftOut.length > 0) await this.#quarantine(id);
    return read?.value;
  }

  /** An entry's document without its history: enough to draw, compare or export it, and read in a fraction of the time. */
  async document(id: string): Promise<Document | undefined> {
    return readEntryDocument(await this.#database.get("entries", id)) ?? undefined;
  }

  /**
   * Writes an entry over the one it was made from; not over a later one. What stands there and cannot
   * be read is set aside.
   */
  save(entry: Entry): Promise<SaveResult> {
    return this.#inOneTransaction(async (transaction): Promise<SaveResult> => {
      const json = await storedIn(transaction, entry.id);
      const later = Number(json?.revision ?? 0) > entry.revision ? readEntry(json) : null;
      if (later !== null) return { saved: false, theirs: later };
      if (json !== undefined) await quarantineDamaged(transaction, entry.id, json);
      const next = { ...entry, revision: entry.revision + 1 };
      await putEntry(transaction, next);
      return { saved: true, entry: next };
    });
  }

  /**
   * Stores entries in one transaction: each where its id is free, or over the revision it is said to
   * replace, whose document stays one undo away. One that finds another there gets an id of its own.
   * Gives them back as they came to stand.
   */
  add(additions: readonly Addition[]): Promise<readonly Entry[]> {
    return this.#inOneTransaction(async (transaction) => {
      const taken = new Set(await transaction.objectStore("entries").getAllKeys());
      const stood: Entry[] = [];
      const down: Promise<void>[] = [];
      for (const addition of additions) {
        const { id } = addition.entry;
        const there = taken.has(id) ? await storedIn(transaction, id) : undefined;
        const placed = placedAt(id === "" ? null : there, addition);
        // Waited for now and then only: a transaction does what it is asked in order, and the page stays responsive.
        down.push(awaitedLater(putEntry(transaction, placed)));
        if (down.length % atOnce === 0) await down.at(-1);
        taken.add(placed.id);
        stood.push(placed);
      }
      await Promise.all(down);
      return stood;
    });
  }

  remove(id: string): Promise<void> {
    return this.#inOneTransaction((transaction) => deleteEntry(transaction, id));
  }

  /** Notes that these revisions are in a file now. */
  noteInFile(cards: readonly Pick<Card, "id" | "revision">[]): Promise<void> {
    return this.#inOneTransaction(async (transaction) => {
      const store = transaction.objectStore("cards");
      for (const { id, revision } of cards) {
        const card = await store.get(id);
        if (card !== undefined) await store.put({ ...card, inFile: revision });
      }
    });
  }

  /** Adds what could not be read elsewhere, unless the same parts of an entry are named already. */
  addUnreadable(found: UnreadableEntry): Promise<void> {
    return this.#inOneTransaction(async (transaction) => {
      const aside = transaction.objectStore("aside");
      const named = (await aside.getAll()).some(
        ({ id, parts }) =>
          found.id.startsWith(id) && parts !== undefined && equal(parts, found.parts),
      );
      if (!named) await aside.put(found);
    });
  }

  /** Entries that could not be read, whole or in part, as they were. */
  unreadable(): Promise<readonly UnreadableEntry[]> {
    return this.#database.getAll("aside");
  }

  #quarantine(id: string): Promise<void> {
    return this.#inOneTransaction(async (transaction) => {
      const json = await storedIn(transaction, id);
      if (json === undefined) return;
      const read = await quarantineDamaged(transaction, id, json);
      if (read === null) await deleteEntry(transaction, id);
      else await putEntry(transaction, read.value);
    });
  }

  /** Forgets what was set aside, once the builder has it back or wants it no more. */
  async forgetUnreadable(id: string): Promise<void> {
    await this.#database.delete("aside", id);
  }

  /** Notes what is on screen, for a visit after a kill. */
  async noteShown(shown: LastShown): Promise<void> {
    await this.#database.put("shown", shown, shownKey);
  }

  async lastShown(): Promise<LastShown | undefined> {
    return readLastShown(await this.#database.get("shown", shownKey));
  }

  async #inOneTransaction<T>(does: (transaction: Transaction) => Promise<T>): Promise<T> {
    const transaction = this.#database.transaction(["entries", "cards", "aside"], "readwrite");
    try {
      const done = await does(transaction);
      await transaction.done;
      return done;
    } catch (fault) {
      transaction.done.catch(() => {});
      // One that failed by itself is over already.
      if (transaction.error === null) transaction.abort();
      throw fault;
    }
  }
}

type Transaction = IDBPTransaction<ShelfSchema, ("entries" | "cards" | "aside")[], "readwrite">;

/** What a database holds may be anything: only its types say it is an entry. */
const storedIn = (transaction: Transaction, id: string): Promise<StoredEntry | undefined> =>
  transaction.objectStore("entries").get(id);

/** Stores an entry with its card, which goes on knowing what is in a file. */
async function putEntry(transaction: Transaction, entry: Entry): Promise<void> {
  const cards = transaction.objectStore("cards");
  const put = awaitedLater(transaction.objectStore("entries").put(entryForm(entry)));
  const inFile = (await cards.get(entry.id))?.inFile ?? null;
  await cards.put(cardOf(entry, inFile));
  await put;
}

/** Entries stored at once. */
const atOnce = 20;

/** A promise that is awaited later: should it fail before that, nothing is said of it. */
function awaitedLater<T>(promise: Promise<T>): Promise<T> {
  promise.catch(() => {});
  return promise;
}

async function deleteEntry(transaction: Transaction, id: string): Promise<void> {
  await transaction.objectStore("entries").delete(id);
  await transaction.objectStore("cards").delete(id);
}

/** Sets a record that cannot be read whole aside as it is, over none set aside before; gives what can be read of it. */
async function quarantineDamaged(
  transaction: Transaction,
  id: string,
  json: unknown,
): Promise<Mended<Entry> | null> {
  const read = readMendedEntry(json);
  if (read !== null && read.leftOut.length === 0) return read;
  const aside = transaction.objectStore("aside");
  const taken = (await aside.get(id)) !== undefined;
  const parts = read === null ? {} : { parts: read.leftOut };
  await aside.put({ id: taken ? `${id} ${newId()}` : id, json, ...parts });
  return read;
}

/** What comes to the shelf, and the revision it is to replace; null: none. */
export interface Addition {
  readonly entry: Entry;
  readonly replaces: number | null;
}

/** An addition as it is stored where `json` stands now; undefined: nothing, null: where no id is free. */
function placedAt(json: StoredEntry | null | undefined, { entry, replaces }: Addition): Entry {
  if (json === undefined) return entry;
  const there = json !== null && json.revision === replaces ? readEntry(json) : null;
  if (there !== null) {
    const past = [...there.history.past, there.document];
    return { ...entry, revision: there.revision + 1, history: { past, future: [] } };
  }
  const id = newId();
  const { document } = entry;
  const [instrument, lastGood] = [
    { ...document.instrument, id },
    { ...document.lastGood, id },
  ];
  return { ...entry, id, document: { ...document, instrument, lastGood } };
}
