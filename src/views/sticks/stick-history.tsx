import { redoSticks, undoSticks } from "../../store/shelf/sticks.ts";
import { HistoryButtons } from "../history-buttons.tsx";
import { useShop } from "../use-shop.ts";
import { useSticksEdit } from "./use-sticks.ts";

/** Undo and redo of what was done to the shop's sticks, in the place of the instrument's while they are in hand. */
export function StickHistory() {
  const { past, future } = useShop(({ sticks }) => sticks);
  const edit = useSticksEdit();
  return (
    <HistoryButtons
      onUndo={past.length === 0 ? null : () => edit(undoSticks)}
      onRedo={future.length === 0 ? null : () => edit(redoSticks)}
    />
  );
}
