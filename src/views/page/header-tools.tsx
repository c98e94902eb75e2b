import { useEffect } from "react";
import { useStore } from "zustand";
import { redo, undo } from "../../store/document/undo.ts";
import type { Session } from "../../store/shelf/session.ts";
import { useEdit, useRimwright, useShelfSlot } from "../store-context.ts";

/** Undo and redo, also by their usual keys. */
function HistoryButtons() {
  const edit = useEdit();
  const back = useRimwright(({ past }) => past.length > 0);
  const forth = useRimwright(({ future }) => future.length > 0);
  useEffect(() => {
    const press = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      if (key !== "z" && key !== "y") return;
      event.preventDefault();
      edit(key === "y" || event.shiftKey ? redo : undo);
    };
    addEventListener("keydown", press);
    return () => removeEventListener("keydown", press);
  }, [edit]);
  return (
    <div className="history">
      <button type="button" aria-label="Undo" disabled={!back} onClick={() => edit(undo)}>
        ↶
      </button>
      <button type="button" aria-label="Redo" disabled={!forth} onClick={() => edit(redo)}>
        ↷
      </button>
    </div>
  );
}

/** Whether what is on screen is saved, in a word. */
function SavingNote() {
  const slot = useShelfSlot();
  if (slot.is === "open") return <Word session={slot.session} />;
  return slot.is === "opening" ? null : <p className="saving">not saved</p>;
}

function Word({ session }: { readonly session: Session }) {
  const saving = useStore(session.state, (state) => state.saving);
  if (saving !== "new") return <p className="saving">{words[saving]}</p>;
  return (
    <button
      type="button"
      className="save"
      title="Save to the shelf"
      onClick={() => session.addToShelf()}
    >
      Save
    </button>
  );
}

const words = {
  saved: "saved",
  saving: "saving…",
  refused: "not saved",
  superseded: "not saved",
} as const;

/** Undo, and how saving stands. */
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
      await import("../shelf/shelf-view.tsx");
      const { readCards } = await import("../shelf/cards.ts");
      await readCards(session);
    };
    // What fails here is told when the view is opened.
    const waiting = setTimeout(() => void reading().catch(() => {}), rest);
    return () => clearTimeout(waiting);
  }, [session]);
}
