import { useCallback } from "react";
import { useStore } from "zustand";
import { editShop, type Shop } from "../store/shelf/shop.ts";
import { ShopContext, useGiven } from "./store-context.ts";

/** Whether the shop has been read from the browser. Until then nothing here has it to show. */
export const useShopIsOpen = (): boolean =>
  useStore(useGiven(ShopContext), (shop) => shop !== null);

/** Whether there are finished instruments to learn from, as far as the shop has been read. */
export const useHasFinished = (): boolean =>
  useStore(useGiven(ShopContext), (shop) => shop !== null && shop.finished.length > 0);

/** A part of the shop; the part must be the same object while nothing of it changes. */
export function useShop<Part>(part: (shop: Shop) => Part): Part {
  return useStore(useGiven(ShopContext), (shop) => {
    if (shop === null) throw new Error("The shop has not been read yet.");
    return part(shop);
  });
}

/** Changes the shop. That is no edit of the instrument, and undo leaves it. */
export function useShopEdit(): (edit: (shop: Shop) => Shop) => void {
  const shop = useGiven(ShopContext);
  return useCallback((edit) => editShop(shop, edit), [shop]);
}
