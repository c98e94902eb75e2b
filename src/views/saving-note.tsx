import { useStore } from "zustand";
import type { Session } from "../store/session.ts";
import { useShelfSlot } from "./shelf-slot-context.ts";

/** How what is on screen stands to the shelf, in a word or two. */
export function SavingNote() {
  const slot = useShelfSlot();
  if (slot.is === "open") return <Note session={slot.session} />;
  return <p className="saving">{slot.is === "opening" ? "" : "kept in this tab only"}</p>;
}

const words = {
  saved: "saved",
  saving: "saving…",
  refused: "not saved: the browser would not take it. Export it from the Shelf.",
  superseded: "a newer Rimwright is open: reload this tab",
} as const;

function Note({ session }: { readonly session: Session }) {
  const { saving, met } = useStore(session.state);
  if (saving === "new") {
    return (
      <button type="button" className="saving" onClick={() => session.keep()}>
        Keep on the shelf
      </button>
    );
  }
  return (
    <p className="saving" role="status">
      {met ? "changed in another tab; yours is one undo away" : words[saving]}
    </p>
  );
}
