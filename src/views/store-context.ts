import { type Context, createContext, useCallback, useContext } from "react";
import { useStore } from "zustand";
import type { State } from "../store/document/state.ts";
import type { Store } from "../store/document/store.ts";
import { recorded } from "../store/document/undo.ts";
import type { ShelfSlot, ShelfSlotStore } from "../store/shelf/shelf-slot.ts";
import type { ShopStore } from "../store/shelf/shop.ts";

/** The page's stores, given by `App`. What asks for one outside of it is a mistake, and throws. */
export const StoreContext = createContext<Store | null>(null);
export const ShopContext = createContext<ShopStore | null>(null);
export const ShelfSlotContext = createContext<ShelfSlotStore | null>(null);

export function useGiven<Given>(context: Context<Given | null>): Given {
  const given = useContext(context);
  if (given === null) throw new Error("This is drawn outside the page that gives it its stores.");
  return given;
}

export const useShelfSlot = (): ShelfSlot => useStore(useGiven(ShelfSlotContext));

/** A part of the state; the part must be the same object while nothing of it changes. */
export function useRimwright<Part>(part: (state: State) => Part): Part {
  return useStore(useGiven(StoreContext), part);
}

/** Takes the state to the next, so that it can be taken back: `edit((state) => stepField(state, path, 1))`. */
export function useEdit(): (edit: (state: State) => State) => void {
  const store = useGiven(StoreContext);
  return useCallback((edit) => store.setState((state) => recorded(state, edit(state))), [store]);
}
