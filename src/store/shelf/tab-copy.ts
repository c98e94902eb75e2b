import { newId } from "../document/new-id.ts";
import type { History, State } from "../document/state.ts";
import { makeStore, type Store } from "../document/store.ts";
import { documentIn } from "../document/undo.ts";
import { documentForm, historyForm } from "../files/document-form.ts";
import { atRest } from "./at-rest.ts";
import type { TextStorage } from "./browser-storage.ts";
import type { LastShown } from "./last-shown.ts";

/** Where the tab's own copy is stored. */
export const tabKey = "rimwright";

/** Steps of undo stored each way, to be taken back after a reload. */
const storedSteps = 40;

export const storedHistory = ({ past, future }: History): History => ({
  past: past.slice(-storedSteps),
  future: future.slice(0, storedSteps),
});

/** Stores the state: without its history where there is no room for that. A browser that refuses to store anything is no fault of the page's. */
export function writeTabCopy(storage: TextStorage, state: State): boolean {
  const { previous, choices, editId, run } = state;
  const shown: LastShown = { id: state.instrument.id, run, time: Date.now() };
  const kept = {
    version: 2,
    ...documentForm(documentIn(state)),
    putAway: previous === null ? null : documentForm(previous),
    choices,
    stamp: editId,
    shown,
  };
  return [{ ...kept, history: historyForm(storedHistory(state)) }, kept].some((one) => {
    try {
      storage.setItem(tabKey, JSON.stringify(one));
      return true;
    } catch {
      return false;
    }
  });
}

/** Whether a visit before this one has left something to go on with. */
export function hasTabCopy(storage: TextStorage): boolean {
  try {
    return storage.getItem(tabKey) !== null;
  } catch {
    return false;
  }
}

/** How long edits must rest before they are stored, and the longest that any waits, ms. */
const rest = 300;
const longest = 450;

/** A store of the open document that goes on from `stored`, and is stored once its edits rest. */
export function openTabStore(storage: TextStorage, page: EventTarget, stored: State): Store {
  const store = makeStore({ ...stored, run: newId(), initialEditId: stored.editId });
  const write = (): void => void writeTabCopy(storage, store.getState());
  const waiting = atRest(write, rest, longest);
  const storeNow = (): void => {
    if (waiting.stop()) write();
  };
  store.subscribe(waiting.edited);
  page.addEventListener("pagehide", storeNow);
  page.addEventListener("visibilitychange", storeNow);
  return store;
}
