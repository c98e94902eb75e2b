import type { FinishedInstrument } from "../../instrument/as-built/as-built.ts";
import { textLimits } from "../../instrument/text-limits.ts";
import { noEditId } from "../document/edit-id.ts";
import { markModel, rename } from "../document/edits.ts";
import { newId } from "../document/new-id.ts";
import { type Document, firstState, newDocument, type State } from "../document/state.ts";
import { documentIn, recorded } from "../document/undo.ts";
import type { Session } from "./session.ts";
import { type Entry, madeFrom, newEntry } from "./shelf-entry.ts";
import { editShop, forget, learnFrom } from "./shop.ts";

/** Edits a kept instrument without opening it. What it was is one undo away once it is open. False when it is not on the shelf. */
async function editKept(
  { parts }: Session,
  id: string,
  edit: (state: State) => State,
): Promise<boolean> {
  const { shelf, store, tell } = parts;
  if (store.getState().instrument.id === id) {
    store.setState((state) => recorded(state, edit(state)));
    return true;
  }
  for (;;) {
    const entry = await shelf.open(id);
    if (entry === undefined) return false;
    const before = { ...firstState, ...entry.document, ...entry.history };
    const after = recorded(before, edit(before));
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

export const renameKept = (session: Session, id: string, name: string): Promise<boolean> =>
  editKept(session, id, (state) => rename(state, name));

export const markKeptModel = (session: Session, id: string, isModel: boolean): Promise<boolean> =>
  editKept(session, id, (state) => markModel(state, isModel));

/** A new instrument made from a model, which it remembers: nothing is measured of it yet. Null when the model is not on the shelf. */
export async function makeFromModel(session: Session, id: string): Promise<Entry | null> {
  const { shelf, tell, now } = session.parts;
  await session.flush();
  const model = await shelf.document(id);
  if (model === undefined) return null;
  const made = madeFrom(await shelf.cards(), id).length;
  const { lastGood } = model;
  const ending = `, no. ${made + 1}`;
  const name = `${nameBefore(model, ending)}${ending}`;
  const document: Document = {
    ...newDocument({ ...lastGood, id: newId(), name }),
    madeFrom: { id, name: model.instrument.name },
  };
  const [entry] = await shelf.add([{ entry: newEntry(document, now()), replaces: null }]);
  if (entry !== undefined) tell(entry);
  return entry ?? null;
}

/** A name with room for what ends it. */
const nameBefore = ({ instrument: { name } }: Document, ending: string): string =>
  (name === "" ? "Unnamed instrument" : name).slice(0, textLimits.name - ending.length);

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
  const own = { id: newId(), name: `${nameBefore(document, ", copy")}, copy` };
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
