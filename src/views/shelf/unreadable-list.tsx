import { useEffect, useState } from "react";
import { textLimits } from "../../instrument/text-limits.ts";
import { asJson } from "../../store/document/json.ts";
import type { LeftOut } from "../../store/files/leave-out.ts";
import { unreadableFile } from "../../store/shelf/export.ts";
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
  const forget = (id: string): void =>
    void shelf
      .forgetUnreadable(id)
      .then(() => shelf.unreadable())
      .then(setUnreadable, () => {});
  return (
    <section aria-labelledby="shelf-aside">
      <h3 id="shelf-aside">Could not be read</h3>
      <p>
        These are kept as they were found. The rest of the shelf is whole. To have a part back, type
        it into the instrument again, or save the record to a file, put it right there and import
        it; then remove it here.
      </p>
      <ul className="shelf-clashes">
        {unreadable.map((one) => (
          <li key={one.id}>
            <p>{headOf(one)}</p>
            {one.parts !== undefined && (
              <ul className="shelf-bad">
                {one.parts.map((part) => (
                  <li key={part.path}>{sentenceOf(part)}</li>
                ))}
              </ul>
            )}
            <div className="shelf-line">
              <button
                type="button"
                onClick={() =>
                  saveJson(fileName(nameIn(one), "unreadable", "json"), unreadableFile(one))
                }
              >
                Save to a file
              </button>
              <button type="button" onClick={() => forget(one.id)}>
                Remove from this list
              </button>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What the record calls its instrument. */
function nameIn({ id, json }: UnreadableEntry): string {
  const { work, instrument = asJson(work)["instrument"] } = asJson(json);
  const { name } = asJson(instrument);
  return typeof name === "string" && name !== "" ? name.slice(0, textLimits.name) : id;
}

const headOf = (one: UnreadableEntry): string =>
  one.parts === undefined
    ? `${nameIn(one)}: nothing of it could be read.`
    : `${nameIn(one)} is open without what is named here.`;

/** What a part is and why it was left out, with what it held. */
function sentenceOf({ path, reason, value }: LeftOut): string {
  const held = value === undefined ? "nothing" : JSON.stringify(value);
  const most = 200;
  return `${path}: ${reason} It held ${held.length > most ? `${held.slice(0, most)}…` : held}.`;
}
