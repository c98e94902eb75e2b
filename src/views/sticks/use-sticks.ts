import { useCallback } from "react";
import type { OwnedSticks, StickTrial } from "../../store/shelf/shop.ts";
import { useShopEdit } from "../use-shop.ts";

/** Changes the sticks the shop owns. */
export function useSticksEdit(): (edit: (sticks: OwnedSticks) => OwnedSticks) => void {
  const editShop = useShopEdit();
  return useCallback(
    (edit) => editShop((shop) => ({ ...shop, sticks: edit(shop.sticks) })),
    [editShop],
  );
}

/** Changes what is tried on which stick. */
export function useTrialEdit(): (part: Partial<StickTrial>) => void {
  const editShop = useShopEdit();
  return useCallback(
    (part) => editShop((shop) => ({ ...shop, trial: { ...shop.trial, ...part } })),
    [editShop],
  );
}
