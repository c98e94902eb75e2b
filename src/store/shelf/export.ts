import { asJson } from "../document/json.ts";
import type { Document } from "../document/state.ts";
import {
  type FileEntry,
  fileEntryOf,
  fileLimits,
  fileVersion,
  type ShelfFile,
  shelfFileOf,
  shelfFormat,
} from "../files/shelf-file.ts";
import type { OwnedStick } from "../files/sticks-form.ts";
import type { Shelf } from "./shelf.ts";
import type { UnreadableEntry } from "./shelf-database.ts";
import type { Card } from "./shelf-entry.ts";

/**
 * The whole shelf as files with the shop's sticks in the first, as many as it takes for each to be within what is taken in again; written
 * with `JSON.stringify(file, null, 1)` or tighter. The shelf takes note that its instruments are in a file.
 */
export async function shelfFiles(
  shelf: Shelf,
  sticks: readonly OwnedStick[] = [],
): Promise<readonly ShelfFile[]> {
  const cards = await shelf.cards();
  const parts: Document[][] = [[]];
  let bytes = 0;
  for await (const document of documentsOf(shelf, cards)) {
    const size = bytesOf(fileEntryOf(document));
    const last = parts.at(-1) ?? [];
    if (last.length > 0 && (bytes + size > roomInFile || last.length >= fileLimits.instruments)) {
      parts.push([document]);
      bytes = size;
    } else {
      last.push(document);
      bytes += size;
    }
  }
  await shelf.noteInFile(cards);
  return parts.map((documents, i) =>
    shelfFileOf(
      documents.map((document) => ({ document })),
      i === 0 ? sticks : [],
    ),
  );
}

/** Works asked for at once: the database answers many as soon as one. */
const atOnce = 50;

async function* documentsOf(shelf: Shelf, cards: readonly Card[]): AsyncGenerator<Document> {
  for (let from = 0; from < cards.length; from += atOnce) {
    const some = cards.slice(from, from + atOnce).map(({ id }) => shelf.document(id));
    for (const document of await Promise.all(some)) if (document !== undefined) yield document;
  }
}

/** One instrument of the shelf as a file; the shelf takes note. Null when it is not there. */
export async function oneFile(shelf: Shelf, id: string): Promise<ShelfFile | null> {
  const entry = await shelf.open(id);
  if (entry === undefined) return null;
  await shelf.noteInFile([entry]);
  return shelfFileOf([entry]);
}

/**
 * What could not be read as a file: of the form that is taken in, so that it can be put right in an editor and
 * imported. With no instrument in it, as it was found.
 */
export function unreadableFile({ json }: UnreadableEntry): unknown {
  const { work, history, ...rest } = asJson(json);
  const { instrument, ...beside } = work === undefined ? rest : asJson(work);
  if (typeof instrument !== "object" || instrument === null) return json;
  return {
    format: shelfFormat,
    version: fileVersion,
    instruments: [{ instrument, ...beside, history }],
  };
}

/** Bytes of instruments put in one file, with room left for what stands round them. */
const roomInFile = fileLimits.bytes * 0.9;

const bytesOf = (entry: FileEntry): number =>
  new TextEncoder().encode(JSON.stringify(entry, null, 3)).length;
