import type { IDBPObjectStore } from "idb";
import { newId } from "./new-id.ts";
import type { SetAside, ShelfDatabase, ShelfSchema } from "./shelf-database.ts";
import { type Card, cardOf, type Entry, readEntry, readEntryWork } from "./shelf-entry.ts";
import type { Work } from "./state.ts";

export type SaveResult =
  | { readonly saved: true; readonly entry: Entry }
  /** Another tab has saved since `entry` was read: its copy, and nothing is overwritten. */
  | { readonly saved: false; readonly theirs: Entry };

/** The instruments kept in this browser. Every act is one transaction: done whole, or not at all. */
export class Shelf {
  readonly #database: ShelfDatabase;

  constructor(database: ShelfDatabase) {
    this.#database = database;
  }

  /** What is on the shelf, in no order. */
  cards(): Promise<readonly Card[]> {
    return this.#database.getAll("cards");
  }

  /** An entry; undefined when there is none. One that cannot be read is set aside, and then there is none. */
  async open(id: string): Promise<Entry | undefined> {
    const json: unknown = await this.#database.get("entries", id);
    if (json === undefined) return undefined;
    const entry = readEntry(json);
    if (entry === null) await this.#setAside(id);
    return entry ?? undefined;
  }

  /** An entry's work without its history: enough to draw, compare or export it, and read in a fraction of the time. */
  async look(id: string): Promise<Work | undefined> {
    return readEntryWork(await this.#database.get("entries", id)) ?? undefined;
  }

  /** Every entry that can be read. */
  async entries(): Promise<readonly Entry[]> {
    const kept: readonly unknown[] = await this.#database.getAll("entries");
    return kept.map(readEntry).filter((entry) => entry !== null);
  }

  /** Puts many entries, as they are, in one act. */
  async put(entries: readonly Entry[]): Promise<void> {
    const act = this.#database.transaction(["entries", "cards"], "readwrite");
    await Promise.all([
      ...entries.map((entry) => act.objectStore("entries").put(entry)),
      ...entries.map((entry) => act.objectStore("cards").put(cardOf(entry))),
      act.done,
    ]);
  }

  /**
   * Writes an entry over the one it was made from; not over a later one. What stands there and cannot
   * be read is set aside.
   */
  async save(entry: Entry): Promise<SaveResult> {
    const act = this.#database.transaction(["entries", "cards", "aside"], "readwrite");
    const [entries, cards] = [act.objectStore("entries"), act.objectStore("cards")];
    const json: unknown = await entries.get(entry.id);
    const theirs = readEntry(json);
    if (theirs !== null && theirs.revision > entry.revision) {
      await act.done;
      return { saved: false, theirs };
    }
    if (theirs === null && json !== undefined)
      await putAside(act.objectStore("aside"), entry.id, json);
    const next = { ...entry, revision: entry.revision + 1 };
    const inFile = (await cards.get(entry.id))?.inFile ?? null;
    await Promise.all([entries.put(next), cards.put(cardOf(next, inFile)), act.done]);
    return { saved: true, entry: next };
  }

  /**
   * Puts entries down in one act: each where its id is free, or over the revision it is said to
   * replace, whose work stays one undo away. One that finds another there gets an id of its own.
   * Gives them back as they came to stand.
   */
  async take(arrivals: readonly Arrival[]): Promise<readonly Entry[]> {
    const act = this.#database.transaction(["entries", "cards"], "readwrite");
    const [entries, cards] = [act.objectStore("entries"), act.objectStore("cards")];
    const stood: Entry[] = [];
    for (const { entry, over } of arrivals) {
      const json: unknown = entry.id === "" ? undefined : await entries.get(entry.id);
      const placed = placedBeside(
        entry,
        readEntry(json),
        json !== undefined || entry.id === "",
        over,
      );
      const inFile = (await cards.get(placed.id))?.inFile ?? null;
      await entries.put(placed);
      await cards.put(cardOf(placed, inFile));
      stood.push(placed);
    }
    await act.done;
    return stood;
  }

  async remove(id: string): Promise<void> {
    const act = this.#database.transaction(["entries", "cards"], "readwrite");
    await Promise.all([
      act.objectStore("entries").delete(id),
      act.objectStore("cards").delete(id),
      act.done,
    ]);
  }

  /** Notes that these revisions are in a file now. */
  async noteInFile(cards: readonly Pick<Card, "id" | "revision">[]): Promise<void> {
    const act = this.#database.transaction("cards", "readwrite");
    for (const { id, revision } of cards) {
      const card = await act.store.get(id);
      if (card !== undefined) await act.store.put({ ...card, inFile: revision });
    }
    await act.done;
  }

  /** Entries that could not be read, as they were. */
  aside(): Promise<readonly SetAside[]> {
    return this.#database.getAll("aside");
  }

  async #setAside(id: string): Promise<void> {
    const act = this.#database.transaction(["entries", "cards", "aside"], "readwrite");
    const json: unknown = await act.objectStore("entries").get(id);
    if (json !== undefined && readEntry(json) === null) {
      await putAside(act.objectStore("aside"), id, json);
      await act.objectStore("entries").delete(id);
      await act.objectStore("cards").delete(id);
    }
    await act.done;
  }
}

type AsideStore = IDBPObjectStore<
  ShelfSchema,
  ("entries" | "cards" | "aside")[],
  "aside",
  "readwrite"
>;

/** Sets a record aside, over none set aside before. */
async function putAside(aside: AsideStore, id: string, json: unknown): Promise<void> {
  const taken = (await aside.get(id)) !== undefined;
  await aside.put({ id: taken ? `${id} ${newId()}` : id, json });
}

/** What comes to the shelf, and the revision it is to replace; null: none. */
export interface Arrival {
  readonly entry: Entry;
  readonly over: number | null;
}

function placedBeside(
  entry: Entry,
  there: Entry | null,
  taken: boolean,
  over: number | null,
): Entry {
  if (!taken) return entry;
  if (there !== null && there.revision === over) {
    const past = [...there.history.past, there.work];
    return { ...entry, revision: there.revision + 1, history: { past, future: [] } };
  }
  const id = newId();
  const { work } = entry;
  const [instrument, lastGood] = [
    { ...work.instrument, id },
    { ...work.lastGood, id },
  ];
  return { ...entry, id, work: { ...work, instrument, lastGood } };
}
