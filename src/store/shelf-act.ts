import { newId } from "./new-id.ts";
import type { Shelf } from "./shelf.ts";
import { type Entry, newEntry } from "./shelf-entry.ts";
import { type BadEntry, type Exported, readShelfFile } from "./shelf-file.ts";

/** An entry copied under an id of its own. */
export async function duplicate(shelf: Shelf, id: string, now: number): Promise<Entry | null> {
  const entry = await shelf.open(id);
  if (entry === undefined) return null;
  const { instrument } = entry.work;
  const name = `${instrument.name === "" ? "Unnamed instrument" : instrument.name}, copy`;
  const copy = { ...instrument, id: newId(), name: name.slice(0, 200) };
  const made = { ...newEntry(copy, now), comparison: entry.comparison };
  await shelf.put([made]);
  return made;
}

/** What an import did. */
export interface Imported {
  readonly taken: number;
  /** Of those, how many came in under an id of their own, beside a different one on the shelf. */
  readonly kept: number;
  /** How many were on the shelf already, to the letter. */
  readonly same: number;
  readonly bad: readonly BadEntry[];
  /** Why nothing was taken in; null when the file could be read. */
  readonly refused: string | null;
}

/** Takes a file's instruments in. Nothing on the shelf is overwritten: another under the same id stands beside it. */
export async function importFile(shelf: Shelf, text: string, now: number): Promise<Imported> {
  const reading = readShelfFile(text);
  if (!reading.ok) return { taken: 0, kept: 0, same: 0, bad: [], refused: reading.reason };
  const taken = new Map<string, Entry>();
  let kept = 0;
  let same = 0;
  for (const exported of reading.read) {
    const { id } = exported.instrument;
    const known = taken.get(id) ?? (id === "" ? undefined : await shelf.open(id));
    if (known !== undefined && alike(known, exported)) same += 1;
    else {
      if (known !== undefined) kept += 1;
      const entry = entryOf(exported, id === "" || known !== undefined ? newId() : id, now);
      taken.set(entry.id, entry);
    }
  }
  await shelf.put([...taken.values()]);
  return { taken: taken.size, kept, same, bad: reading.bad, refused: null };
}

function entryOf({ instrument, comparison, asBuilt }: Exported, id: string, now: number): Entry {
  return { ...newEntry({ ...instrument, id }, now), comparison, asBuilt };
}

const alike = ({ work, comparison, asBuilt }: Entry, exported: Exported): boolean =>
  JSON.stringify([work.instrument, comparison, asBuilt]) ===
  JSON.stringify([exported.instrument, exported.comparison, exported.asBuilt]);
