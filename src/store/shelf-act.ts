import type { FinishedInstrument } from "../instrument/as-built.ts";
import { textLimits } from "../instrument/schema.ts";
import { learning } from "./bench-keep.ts";
import { rename } from "./edits.ts";
import { readIntake } from "./intake.ts";
import { newId } from "./new-id.ts";
import type { BadEntry } from "./read-file-entry.ts";
import type { Session } from "./session.ts";
import type { Shelf } from "./shelf.ts";
import { type Entry, newEntry } from "./shelf-entry.ts";
import { firstState, type Work } from "./state.ts";
import { recorded, workIn } from "./undo.ts";

/** Gives a kept instrument another name without opening it. The old one is one undo away once it is open. False when it is not on the shelf. */
export async function renameKept({ parts }: Session, id: string, name: string): Promise<boolean> {
  const { shelf, store, tell } = parts;
  if (store.getState().instrument.id === id) {
    store.setState((state) => recorded(state, rename(state, name)));
    return true;
  }
  for (;;) {
    const entry = await shelf.open(id);
    if (entry === undefined) return false;
    const before = { ...firstState, ...entry.work, ...entry.history };
    const after = recorded(before, rename(before, name));
    if (after === before) return true;
    const { past, future } = after;
    const result = await shelf.save({ ...entry, work: workIn(after), history: { past, future } });
    // Another tab saved it in between: its copy is named instead.
    if (!result.saved) continue;
    tell({ id, revision: result.entry.revision });
    return true;
  }
}

/**
 * An instrument copied under an id of its own, with its variants and all that was measured. The copy is
 * not finished: nothing is learnt twice from one instrument.
 */
export async function duplicate(shelf: Shelf, id: string, now: number): Promise<Entry | null> {
  const work = await shelf.look(id);
  if (work === undefined) return null;
  const { instrument, lastGood, asBuilt } = work;
  const name = `${instrument.name === "" ? "Unnamed instrument" : instrument.name}, copy`;
  const own = { id: newId(), name: name.slice(0, textLimits.name) };
  const copy: Work = {
    ...work,
    instrument: { ...instrument, ...own },
    lastGood: { ...lastGood, ...own },
    asBuilt: { ...asBuilt, finished: null },
  };
  const [made] = await shelf.take([{ entry: newEntry(copy, now), over: null }]);
  return made ?? null;
}

/** What was taken off the shelf, to be put back whole. */
export interface TakenOff {
  readonly entry: Entry;
  /** What was learnt from it; null when it was not finished. */
  readonly learnt: FinishedInstrument | null;
}

/** Takes an instrument off the shelf, and from those learnt from. Null when it is not there. */
export async function takeOff(session: Session, id: string): Promise<TakenOff | null> {
  const { shelf, bench } = session.parts;
  await session.flush();
  const entry = await shelf.open(id);
  if (entry === undefined) return null;
  const learnt = bench.getState().finished.find(({ instrument }) => instrument.id === id) ?? null;
  await shelf.remove(id);
  bench.setState((all) => ({
    ...all,
    finished: all.finished.filter(({ instrument }) => instrument.id !== id),
  }));
  return { entry, learnt };
}

/** Puts back what was taken off, as it was. */
export async function putBack({ parts }: Session, { entry, learnt }: TakenOff): Promise<void> {
  await parts.shelf.take([{ entry, over: null }]);
  if (learnt !== null) parts.bench.setState((all) => learning(all, learnt));
}

/** What an import did. */
export interface Imported {
  readonly taken: number;
  readonly kept: number;
  readonly same: number;
  readonly bad: readonly BadEntry[];
  readonly refused: string | null;
}

export async function importFile(shelf: Shelf, text: string, now: number): Promise<Imported> {
  const reading = await readIntake(shelf, new Blob([text]));
  if (!reading.ok) return { taken: 0, kept: 0, same: 0, bad: [], refused: reading.reason };
  const { fresh, clashes, same, bad } = reading.intake;
  const works = [...fresh, ...clashes.map(({ work }) => work)];
  await shelf.take(works.map((work) => ({ entry: newEntry(work, now), over: null })));
  return { taken: works.length, kept: clashes.length, same, bad, refused: null };
}
