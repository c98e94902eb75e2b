import type { State } from "./state.ts";
import type { Store } from "./store.ts";
import { recorded, sameWork } from "./undo.ts";

/**
 * What edits the variants and the record, so that it can be taken back. Whatever one turn of the
 * page's script changes is one act: a variant made the base changes the base and the list.
 */
export function besideEditor(page: Store): (edit: (state: State) => State) => void {
  let changing = false;
  page.subscribe((after, before) => {
    if (sameWork(after, before)) return;
    changing = true;
    queueMicrotask(() => {
      changing = false;
    });
  });
  return (edit) =>
    page.setState((state) =>
      changing ? { ...edit(state), future: [], gesture: "" } : recorded(state, edit(state)),
    );
}
