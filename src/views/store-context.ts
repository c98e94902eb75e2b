import { createContext, useCallback, useContext } from "react";
import { useStore } from "zustand";
import { firstState, type State } from "../store/document/state.ts";
import { makeStore, type Store } from "../store/document/store.ts";
import { recorded } from "../store/document/undo.ts";
import { makeShelfSlot, type ShelfSlot } from "../store/shelf/shelf-slot.ts";

/** The page's shelf. Without a provider: one that never opens. */
export const ShelfSlotContext = createContext(makeShelfSlot());

export const useShelfSlot = (): ShelfSlot => useStore(useContext(ShelfSlotContext));

/** The page's store. Without a provider: one that forgets. */
export const StoreContext = createContext<Store>(makeStore(firstState));

/** A part of the state; the part must be the same object while nothing of it changes. */
export function useRimwright<Part>(part: (state: State) => Part): Part {
  return useStore(useContext(StoreContext), part);
}

/** Takes the state to the next, so that it can be taken back: `act((state) => stepField(state, path, 1))`. */
export function useAct(): (edit: (state: State) => State) => void {
  const store = useContext(StoreContext);
  return useCallback((edit) => store.setState((state) => recorded(state, edit(state))), [store]);
}
