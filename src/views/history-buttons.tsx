import { useEffect } from "react";

interface Props {
  /** Null where there is nothing to take back, or to do again. */
  readonly onUndo: (() => void) | null;
  readonly onRedo: (() => void) | null;
}

/** Undo and redo, also by their usual keys. */
export function HistoryButtons({ onUndo, onRedo }: Props) {
  useEffect(() => {
    const press = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      if (key !== "z" && key !== "y") return;
      event.preventDefault();
      if (key === "y" || event.shiftKey) onRedo?.();
      else onUndo?.();
    };
    addEventListener("keydown", press);
    return () => removeEventListener("keydown", press);
  }, [onUndo, onRedo]);
  return (
    <div className="history">
      <button type="button" aria-label="Undo" disabled={onUndo === null} onClick={() => onUndo?.()}>
        ↶
      </button>
      <button type="button" aria-label="Redo" disabled={onRedo === null} onClick={() => onRedo?.()}>
        ↷
      </button>
    </div>
  );
}
