import type { SetAside, ShelfDatabase } from "./shelf-database.ts";
import { type Card, cardOf, type Entry, readEntry } from "./shelf-entry.ts";

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
    if (entry === null) await this.#setAside({ id, json });
    return entry ?? undefined;
  }

  /** Every entry that can be read. */
  async entries(): Promise<readonly Entry[]> {
    const kept: readonly unknown[] = await this.#database.getAll("entries");
    return kept.map(readEntry).filter((entry) => entry !== null);
  }

  /** Writes an entry over the one it was made from; not over a later one. */
  async save(entry: Entry): Promise<SaveResult> {
    const act = this.#database.transaction(["entries", "cards"], "readwrite");
    const theirs = readEntry(await act.objectStore("entries").get(entry.id));
    if (theirs !== null && theirs.revision > entry.revision) {
      await act.done;
      return { saved: false, theirs };
    }
    const next = { ...entry, revision: entry.revision + 1 };
    await Promise.all([
      act.objectStore("entries").put(next),
      act.objectStore("cards").put(cardOf(next)),
      act.done,
    ]);
    return { saved: true, entry: next };
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

  async remove(id: string): Promise<void> {
    const act = this.#database.transaction(["entries", "cards"], "readwrite");
    await Promise.all([
      act.objectStore("entries").delete(id),
      act.objectStore("cards").delete(id),
      act.done,
    ]);
  }

  /** Entries that could not be read, as they were. */
  aside(): Promise<readonly SetAside[]> {
    return this.#database.getAll("aside");
  }

  async #setAside(entry: SetAside): Promise<void> {
    const act = this.#database.transaction(["entries", "cards", "aside"], "readwrite");
    await Promise.all([
      act.objectStore("aside").put(entry),
      act.objectStore("entries").delete(entry.id),
      act.objectStore("cards").delete(entry.id),
      act.done,
    ]);
  }
}
