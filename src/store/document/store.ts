import { createStore, type StoreApi } from "zustand/vanilla";
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

/** An edit counts on; what is shown as another made it brings its own editId. */
function stamped(before: State, after: State): State {
  if (after.editId !== before.editId || nothingToSave(before, after)) return after;
  return { ...after, editId: { run: after.run, edit: before.editId.edit + 1 } };
}
