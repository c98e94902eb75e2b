import { HistoryButtons } from "./history-buttons.tsx";
import { SavingNote } from "./saving-note.tsx";

/** What can wait for the first drawing: the way back, and how saving stands. */
export function HeaderTools() {
  return (
    <div className="header-tools">
      <HistoryButtons />
      <SavingNote />
    </div>
  );
}
