import { useEffect } from "react";
import { useStore } from "zustand";
import { redo, undo } from "../../store/document/undo.ts";
import type { Session } from "../../store/shelf/session.ts";
import { HistoryButtons } from "../history-buttons.tsx";
import { latePart } from "../late-part.tsx";
import { useEdit, useRimwright, useShelfSlot } from "../store-context.ts";
import { useShopIsOpen } from "../use-shop.ts";
import { useOpenView } from "./view-list.tsx";

/** Undo and redo of the open instrument. */
function DocumentHistory() {
  const edit = useEdit();
  const back = useRimwright(({ past }) => past.length > 0);
  const forth = useRimwright(({ future }) => future.length > 0);
  return (
    <HistoryButtons
      onUndo={back ? () => edit(undo) : null}
      onRedo={forth ? () => edit(redo) : null}
    />
  );
}

const StickHistory = latePart({
  what: "What undoes changes to the sticks",
  load: () => import("../sticks/stick-history.tsx").then(({ StickHistory }) => StickHistory),
});

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
  const shopIsOpen = useShopIsOpen();
  return (
    <div className="header-tools">
      {useOpenView().id === "sticks" && shopIsOpen ? <StickHistory /> : <DocumentHistory />}
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
