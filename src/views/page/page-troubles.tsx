import { useStore } from "zustand";
import type { Session } from "../../store/shelf/session.ts";
import type { SessionState } from "../../store/shelf/session-machine.ts";
import type { ShelfSlot } from "../../store/shelf/shelf-slot.ts";
import { NotFetched } from "../late-part.tsx";
import { addStyles } from "../late-styles.ts";
import { useRimwright, useShelfSlot } from "../store-context.ts";
import { LookNote } from "./look-note.tsx";
import { NewerNote } from "./newer-version.tsx";
import styles from "./page-troubles.css?inline";
import { useSharedAddress } from "./use-shared-address.ts";

addStyles(styles);

/** What a builder must be told over any view: an address that cannot be read, work that is not saved, a newer page. Loaded after the first drawing. */
export function PageTroubles() {
  const slot = useShelfSlot();
  return (
    <>
      <FromAddress slot={slot} />
      {slot.is === "open" ? (
        <SessionTrouble session={slot.session} />
      ) : (
        <Trouble>{withoutShelf[slot.is]}</Trouble>
      )}
      {slot.is === "not fetched" && (
        <NotFetched what="What saves to the shelf, so that what is on screen is kept in this tab alone," />
      )}
      <LookNote />
      <NewerNote session={slot.is === "open" ? slot.session : null} />
    </>
  );
}

function FromAddress({ slot }: { readonly slot: ShelfSlot }) {
  const { trouble, id } = useSharedAddress();
  const isShown = useRimwright(({ instrument }) => instrument.id) === id;
  if (trouble !== null) {
    return (
      <p className="page-trouble" role="alert">
        {trouble}
      </p>
    );
  }
  return isShown && slot.is === "open" ? <NotSaved session={slot.session} /> : null;
}

function NotSaved({ session }: { readonly session: Session }) {
  const saving = useStore(session.state, (state) => state.saving);
  return saving === "new" ? (
    <p className="page-note" role="status">
      This came from an address, and is not on your shelf. Save puts it there; so does your first
      change.
    </p>
  ) : null;
}

const withoutShelf = {
  opening: null,
  "not fetched": null,
  shut: "This browser keeps nothing for this page. What is on screen stays while the tab does.",
  blocked:
    "Another tab holds the shelf with an older Rimwright. Nothing here is saved until that tab is closed.",
  newer:
    "A newer Rimwright has the shelf. Reload this page to go on with it; until then nothing here is saved.",
} as const;

function SessionTrouble({ session }: { readonly session: Session }) {
  return <Trouble>{useStore(session.state, troubleOf)}</Trouble>;
}

function Trouble({ children }: { readonly children: string | null }) {
  return children === null ? null : (
    <p className="page-trouble" role="status">
      {children}
    </p>
  );
}

function troubleOf({ saving, conflict }: SessionState): string | null {
  if (conflict)
    return "This instrument was changed in another tab as well. Theirs is shown; yours is one undo away.";
  if (saving === "refused") {
    return "The browser would not take the last change: it may be out of room. The change is kept in this tab, and tried again with the next one. Export what matters from the Shelf.";
  }
  if (saving === "superseded") {
    return "A newer Rimwright has taken over the shelf. Reload this tab to go on; until then nothing here is saved.";
  }
  return null;
}
