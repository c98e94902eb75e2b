import { createStore, type StoreApi } from "zustand/vanilla";
import { type Keeper, keep, recall } from "./keep.ts";
import { firstState, type State } from "./state.ts";

export type Store = StoreApi<State>;

/** The one store of the page: state goes from one to the next through the functions of `edits` and `choosing`. */
export function makeStore(first: State = firstState): Store {
  return createStore<State>(() => first);
}

/** How long edits must rest before they are written down. */
const rest = 300;

/** A store that goes on where the last visit stopped, and is kept once its edits rest. */
export function makeKeptStore(keeper: Keeper, page: EventTarget): Store {
  const store = makeStore(recall(keeper));
  let waiting: ReturnType<typeof setTimeout> | null = null;
  const keepNow = (): void => {
    if (waiting === null) return;
    clearTimeout(waiting);
    waiting = null;
    keep(keeper, store.getState());
  };
  store.subscribe(() => {
    if (waiting !== null) clearTimeout(waiting);
    waiting = setTimeout(keepNow, rest);
  });
  page.addEventListener("pagehide", keepNow);
  page.addEventListener("visibilitychange", keepNow);
  return store;
}
