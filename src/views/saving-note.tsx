import { useStore } from "zustand";
import type { Session } from "../store/session.ts";
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
