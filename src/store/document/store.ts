import { createStore, type StoreApi } from "zustand/vanilla";
import { type Keeper, keep, recall } from "../shelf/keep.ts";
import { newId } from "./new-id.ts";
import { firstState, type State } from "./state.ts";
import { nothingToSave } from "./undo.ts";

export type Store = StoreApi<State>;

/** The one store of the page: state goes from one to the next through the functions of `edits` and `choosing`. */
export function makeStore(first: State = firstState): Store {
  const store = createStore<State>(() => first);
  const { setState } = store;
  const stamping = (change: Partial<State> | ((state: State) => Partial<State>)): void =>
    setState((before) => {
      const next = typeof change === "function" ? change(before) : change;
      return next === before ? before : stamped(before, { ...before, ...next });
    });
  return { ...store, setState: stamping };
}

/** An edit counts on; what is shown as another made it brings its own stamp. */
function stamped(before: State, after: State): State {
  if (after.stamp !== before.stamp || nothingToSave(before, after)) return after;
  return { ...after, stamp: { run: after.run, edit: before.stamp.edit + 1 } };
}

/** How long edits must rest before they are written down, and the longest that any waits, ms. */
const rest = 300;
const longest = 450;

/** A store that goes on where the last visit stopped, and is kept once its edits rest. */
export function makeKeptStore(keeper: Keeper, page: EventTarget): Store {
  const recalled = recall(keeper);
  const store = makeStore({ ...recalled, run: newId(), began: recalled.stamp });
  let since = 0;
  let waiting: ReturnType<typeof setTimeout> | null = null;
  const keepNow = (): void => {
    if (waiting === null) return;
    clearTimeout(waiting);
    waiting = null;
    keep(keeper, store.getState());
  };
  store.subscribe(() => {
    const now = performance.now();
    if (waiting === null) since = now;
    else clearTimeout(waiting);
    waiting = setTimeout(keepNow, Math.min(rest, since + longest - now));
  });
  page.addEventListener("pagehide", keepNow);
  page.addEventListener("visibilitychange", keepNow);
  return store;
}
