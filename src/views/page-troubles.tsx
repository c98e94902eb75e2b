import { useStore } from "zustand";
import type { Session, SessionState } from "../store/session.ts";
import { useShelfSlot } from "./shelf-slot-context.ts";
import { useSharedAddress } from "./use-shared-address.ts";

/** What a builder must be told over any view: an address that cannot be read, work that is not saved. Loaded after the first drawing. */
export function PageTroubles() {
  return (
    <>
      <AddressTrouble />
      <SavingTrouble />
    </>
  );
}

function AddressTrouble() {
  const trouble = useSharedAddress();
  return trouble === null ? null : (
    <p className="page-trouble" role="alert">
      {trouble}
    </p>
  );
}

function SavingTrouble() {
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
