import { useEffect, useState } from "react";
import type { Shelf } from "../../store/shelf/shelf.ts";
import type { UnreadableEntry } from "../../store/shelf/shelf-database.ts";
import { fileName, saveJson } from "../save-file.ts";

/** Records that could not be read: kept as they are, to be saved to a file. */
export function UnreadableList({
  shelf,
  cards,
}: {
  readonly shelf: Shelf;
  /** Read again when these change: opening one may have found it so. */
  readonly cards: unknown;
}) {
  const [unreadable, setUnreadable] = useState<readonly UnreadableEntry[]>([]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what can no longer be read leaves the cards.
  useEffect(() => {
    void shelf.unreadable().then(setUnreadable, () => {});
  }, [shelf, cards]);
  if (unreadable.length === 0) return null;
  return (
    <section aria-labelledby="shelf-aside">
      <h3 id="shelf-aside">Could not be read</h3>
      <p>These records are kept as they were found. The rest of the shelf is whole.</p>
      <ul className="shelf-clashes">
        {unreadable.map(({ id, json }) => (
          <li key={id} className="shelf-line">
            <code>{id}</code>
            <button
              type="button"
              onClick={() => saveJson(fileName(id, "unreadable", "json"), json)}
            >
              Save to a file
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
