import { useEffect } from "react";
import { HistoryButtons } from "./history-buttons.tsx";
import { SavingNote } from "./saving-note.tsx";
import { useShelfSlot } from "./shelf-slot-context.ts";

/** What can wait for the first drawing: the way back, and how saving stands. */
export function HeaderTools() {
  useShelfAtHand();
  return (
    <div className="header-tools">
      <HistoryButtons />
      <SavingNote />
    </div>
  );
}

/** After the shelf opens, ms: until then the page has better to do. */
const rest = 1000;

/** Has the Shelf view and a long shelf's list ready before they are asked for. */
function useShelfAtHand(): void {
  const slot = useShelfSlot();
  const session = slot.is === "open" ? slot.session : null;
  useEffect(() => {
    if (session === null) return;
    const reading = async (): Promise<void> => {
      await import("./shelf/shelf-view.tsx");
      const { readCards } = await import("./shelf/known-cards.ts");
      await readCards(session);
    };
    // What fails here is told when the view is opened.
    const waiting = setTimeout(() => void reading().catch(() => {}), rest);
    return () => clearTimeout(waiting);
  }, [session]);
}
