import { createContext, useContext } from "react";
import { useStore } from "zustand";
import { makeShelfSlot, type ShelfSlot } from "../store/shelf-slot.ts";

/** The page's shelf. Without a provider: one that never opens. */
export const ShelfSlotContext = createContext(makeShelfSlot());

export const useShelfSlot = (): ShelfSlot => useStore(useContext(ShelfSlotContext));
