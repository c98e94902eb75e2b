import { useStore } from "zustand";
import type { Session, SessionState } from "../store/session.ts";
import { useShelfSlot } from "./shelf-slot-context.ts";

/** How what is on screen stands to the shelf, in a word. */
export function SavingNote() {
  const slot = useShelfSlot();
  return slot.is === "open" ? <Word session={slot.session} /> : null;
}

function Word({ session }: { readonly session: Session }) {
  const { saving } = useStore(session.state);
  if (saving !== "new") return <p className="saving">{words[saving]}</p>;
  return (
    <button type="button" className="keep" title="Keep on the shelf" onClick={() => session.keep()}>
      Keep
    </button>
  );
}

const words = {
  saved: "saved",
  saving: "saving…",
  refused: "not saved",
  superseded: "not saved",
} as const;

/** What a builder must know of it in full: nothing while all is well. */
export function SavingTrouble() {
  const slot = useShelfSlot();
  if (slot.is === "open") return <SessionTrouble session={slot.session} />;
  return slot.is === "shut" ? (
    <p className="page-trouble" role="status">
      This browser keeps nothing for this page. What is on screen stays while the tab does.
    </p>
  ) : null;
}

function SessionTrouble({ session }: { readonly session: Session }) {
  const trouble = troubleOf(useStore(session.state));
  return trouble === null ? null : (
    <p className="page-trouble" role="status">
      {trouble}
    </p>
  );
}

function troubleOf({ saving, met }: SessionState): string | null {
  if (met)
    return "This instrument was changed in another tab as well. Theirs is shown; yours is one undo away.";
  if (saving === "refused") {
    return "The browser would not take the last change: it may be out of room. The change is kept in this tab, and tried again with the next one. Export what matters from the Shelf.";
  }
  if (saving === "superseded") {
    return "A newer Rimwright has taken over the shelf. Reload this tab to go on; until then nothing here is saved.";
  }
  return null;
}
