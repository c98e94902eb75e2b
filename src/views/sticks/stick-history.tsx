import { redoSticks, undoSticks } from "../../store/shelf/sticks.ts";
import { HistoryButtons } from "../history-buttons.tsx";
import { useShop, useShopEdit } from "../use-shop.ts";

/** Undo and redo of what was done to the shop's sticks, in the place of the instrument's while they are in hand. */
export function StickHistory() {
  const { past, future } = useShop(({ sticks }) => sticks);
  const edit = useShopEdit();
  return (
    <HistoryButtons
      onUndo={
        past.length === 0
          ? null
          : () => edit((shop) => ({ ...shop, sticks: undoSticks(shop.sticks) }))
      }
      onRedo={
        future.length === 0
          ? null
          : () => edit((shop) => ({ ...shop, sticks: redoSticks(shop.sticks) }))
      }
    />
  );
}
