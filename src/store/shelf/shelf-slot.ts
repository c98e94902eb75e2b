import { createStore } from "zustand/vanilla";
import type { Session } from "./session.ts";
import type { Shelf } from "./shelf.ts";

/** The shelf as the page has it: it opens after the first drawing, and in some browsers not at all. */
export type ShelfSlot =
  | { readonly is: "opening" }
  /** The code that opens it has not come, and is asked for again. */
  | { readonly is: "not fetched" }
  /** Another tab with an older page holds it; it goes on when that is closed. */
  | { readonly is: "blocked" }
  /** A newer page has been here: this one is too old to read what it left, and writes nothing. */
  | { readonly is: "newer" }
  | { readonly is: "shut" }
  | { readonly is: "open"; readonly shelf: Shelf; readonly session: Session };

export const makeShelfSlot = () => createStore<ShelfSlot>(() => ({ is: "opening" }));

export type ShelfSlotStore = ReturnType<typeof makeShelfSlot>;
