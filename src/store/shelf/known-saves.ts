import { asJson } from "../document/json.ts";
import { noStamp, readStamp } from "../document/stamp.ts";
import type { TextStorage } from "./browser-storage.ts";
import type { Entry } from "./shelf-entry.ts";

/** An instrument's entry as a tab last saved or showed it. */
type Known = Pick<Entry, "id" | "revision" | "stamp">;

const key = "rimwright-saved";

/** What a tab knows of the entries it saved or showed: of the last, over a reload. */
export class KnownSaves {
  readonly #storage: TextStorage;
  readonly #all = new Map<string, Known>();

  constructor(storage: TextStorage) {
    this.#storage = storage;
  }

  /** Revision 0 where nothing is known. */
  of(id: string): Known {
    return this.#all.get(id) ?? this.#recalled(id) ?? { id, revision: 0, stamp: noStamp };
  }

  note({ id, revision, stamp }: Known): void {
    this.#all.set(id, { id, revision, stamp });
  }

  noteOverReload({ id, revision, stamp }: Known): void {
    this.note({ id, revision, stamp });
    try {
      this.#storage.setItem(key, JSON.stringify({ id, revision, stamp }));
    } catch {
      // Then a reload takes the shelf's word.
    }
  }

  #recalled(id: string): Known | null {
    try {
      const kept = asJson(JSON.parse(this.#storage.getItem(key) ?? "null"));
      const { revision, stamp } = kept;
      return kept["id"] === id && typeof revision === "number"
        ? { id, revision, stamp: readStamp(stamp) }
        : null;
    } catch {
      return null;
    }
  }
}
