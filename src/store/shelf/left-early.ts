import { type EditId, sameEditId } from "../document/edit-id.ts";
import type { State } from "../document/state.ts";
import type { Store } from "../document/store.ts";

/** What is on screen, or was, and the edit that had made it when it came there. */
export interface OnScreen {
  readonly screen: State;
  readonly base: EditId;
}

export interface EarlyEdits {
  /** What left the screen since with edits of its own, in that order. */
  readonly left: readonly OnScreen[];
  readonly onScreen: OnScreen;
}

/** Watches the page until there is a session to save what is edited. Gives what is to be saved, and watches no more. */
export function watchEarlyEdits(store: Store): () => EarlyEdits {
  const left: OnScreen[] = [];
  let base = store.getState().initialEditId;
  const stop = store.subscribe((after, before) => {
    if (after.instrument.id === before.instrument.id) return;
    if (!sameEditId(before.editId, base)) left.push({ screen: before, base });
    base = after.editId;
  });
  return () => {
    stop();
    return { left, onScreen: { screen: store.getState(), base } };
  };
}
