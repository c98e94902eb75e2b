import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { LeftOut } from "../files/leave-out.ts";
import type { LastShown } from "./last-shown.ts";
import type { Card, StoredEntry } from "./shelf-entry.ts";

/** An entry that could not be read whole, kept as it was. */
export interface UnreadableEntry {
  /** The instrument's, with more after it where one was set aside before. */
  readonly id: string;
  readonly json: unknown;
  /** What alone could not be read, where the rest is on the shelf. */
  readonly parts?: readonly LeftOut[];
}

export interface ShelfSchema extends DBSchema {
  entries: { key: string; value: StoredEntry };
  /** One beside each entry. */
  cards: { key: string; value: Card };
  aside: { key: string; value: UnreadableEntry };
  /** One record, under `shownKey`. */
  shown: { key: string; value: LastShown };
}

export type ShelfDatabase = IDBPDatabase<ShelfSchema>;

/** Grows when a store is added or its form changes. A page that meets a newer one must not write. */
const databaseVersion = 4;

export const shownKey = "last";

export interface DatabaseNews {
  /** A newer page wants to change the database: this one has closed it and must write no more. */
  superseded(): void;
  /** An older page in another tab holds the database open; it goes on once that is closed. */
  blocked(): void;
}

/** Opens the shelf's database. Rejects where the browser keeps nothing, or a newer page has changed it. */
export function openShelfDatabase(news: DatabaseNews, name = "rimwright"): Promise<ShelfDatabase> {
  return openDB<ShelfSchema>(name, databaseVersion, {
    async upgrade(database, before, _after, transaction) {
      if (before < 1) {
        database.createObjectStore("entries", { keyPath: "id" });
        database.createObjectStore("cards", { keyPath: "id" });
        database.createObjectStore("aside", { keyPath: "id" });
      } else if (before < 2) {
        // Version 1's entries are brought over as they are opened; its cards lacked two figures.
        const cards = await transaction.objectStore("cards").getAll();
        for (const card of cards) {
          await transaction.objectStore("cards").put({ ...card, revision: 0, inFile: null });
        }
      }
      if (before < 3) database.createObjectStore("shown");
      // Version 4 knows models: an older page would forget them with its next save.
    },
    blocked: () => news.blocked(),
    blocking(_current, _wanted, event) {
      (event.target as IDBDatabase).close();
      news.superseded();
    },
  });
}
