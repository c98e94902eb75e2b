import type { FinishedInstrument } from "../../instrument/as-built/as-built.ts";
import { textLimits } from "../../instrument/text-limits.ts";
import { noEditId } from "../document/edit-id.ts";
import { rename } from "../document/edits.ts";
import { newId } from "../document/new-id.ts";
import { type Document, firstState } from "../document/state.ts";
import { documentIn, recorded } from "../document/undo.ts";
import type { Session } from "./session.ts";
import { type Entry, newEntry } from "./shelf-entry.ts";
import { editShop, forget, learnFrom } from "./shop.ts";

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
    const before = { ...firstState, ...entry.document, ...entry.history };
    const after = recorded(before, rename(before, name));
    if (after === before) return true;
    const { past, future } = after;
    const result = await shelf.save({
      ...entry,
      editId: noEditId,
      document: documentIn(after),
      history: { past, future },
    });
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
export async function duplicate(session: Session, id: string): Promise<Entry | null> {
  const { shelf, tell, now } = session.parts;
  await session.flush();
  const document = await shelf.document(id);
  if (document === undefined) return null;
  const { instrument, lastGood, asBuilt } = document;
  const name = `${instrument.name === "" ? "Unnamed instrument" : instrument.name}, copy`;
  const own = { id: newId(), name: name.slice(0, textLimits.name) };
  const copy: Document = {
    ...document,
    instrument: { ...instrument, ...own },
    lastGood: { ...lastGood, ...own },
    asBuilt: { ...asBuilt, finished: null },
  };
  const [made] = await shelf.add([{ entry: newEntry(copy, now()), replaces: null }]);
  if (made !== undefined) tell(made);
  return made ?? null;
}

/** What was taken off the shelf, to be put back whole. */
export interface Removed {
  readonly entry: Entry;
  /** What was learnt from it; null when it was not finished. */
  readonly learnt: FinishedInstrument | null;
}

/** The revision told of an instrument that was taken off. */
const gone = -1;

/** Takes an instrument off the shelf, and from those learnt from. Null when it is not there. */
export async function removeFromShelf(session: Session, id: string): Promise<Removed | null> {
  const { shelf, shop, tell } = session.parts;
  await session.flush();
  const entry = await shelf.open(id);
  if (entry === undefined) return null;
  const learnt = shop.getState()?.finished.find(({ instrument }) => instrument.id === id) ?? null;
  await shelf.remove(id);
  tell({ id, revision: gone });
  editShop(shop, (all) => forget(all, id));
  return { entry, learnt };
}

/** Puts back what was taken off, as it was. */
export async function restoreRemoved(
  { parts }: Session,
  { entry, learnt }: Removed,
): Promise<void> {
  const stood = await parts.shelf.add([{ entry, replaces: null }]);
  for (const one of stood) parts.tell(one);
  if (learnt !== null) editShop(parts.shop, (all) => learnFrom(all, learnt));
}
