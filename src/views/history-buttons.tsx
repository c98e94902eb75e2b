import { useEffect } from "react";
import { redo, undo } from "../store/undo.ts";
import { useAct, useRimwright } from "./store-context.ts";

/** Takes acts back and does them again, also by the keys everybody's hands know. */
export function HistoryButtons() {
  const act = useAct();
  const back = useRimwright(({ past }) => past.length > 0);
  const forth = useRimwright(({ future }) => future.length > 0);
  useEffect(() => {
    const press = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      if (key !== "z" && key !== "y") return;
      event.preventDefault();
      act(key === "y" || event.shiftKey ? redo : undo);
    };
    addEventListener("keydown", press);
    return () => removeEventListener("keydown", press);
  }, [act]);
  return (
    <div className="history">
      <button type="button" aria-label="Undo" disabled={!back} onClick={() => act(undo)}>
        ↶
      </button>
      <button type="button" aria-label="Redo" disabled={!forth} onClick={() => act(redo)}>
        ↷
      </button>
    </div>
  );
}
