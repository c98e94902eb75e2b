import { type DragEvent, useState } from "react";
import { readImport } from "../../store/shelf/import.ts";
import type { Session } from "../../store/shelf/session.ts";
import { addStyles } from "../late-styles.ts";
import { useShelfSlot } from "../store-context.ts";
import { useCards } from "./cards.ts";
import styles from "./shelf.css?inline";
import { type ImportState, importAll, ShelfFiles } from "./shelf-files.tsx";
import { ShelfList } from "./shelf-list.tsx";
import { BackUpNudge, Storage, useStorageRoom } from "./storage.tsx";
import { UnreadableList } from "./unreadable-list.tsx";

addStyles(styles);

/** The instruments kept in this browser. */
export function ShelfView() {
  const slot = useShelfSlot();
  return slot.is === "open" ? (
    <OpenShelf session={slot.session} />
  ) : (
    <main className="shelf">
      <h2>Shelf</h2>
      <p role="status">{troubles[slot.is]}</p>
    </main>
  );
}

const troubles = {
  opening: "Opening the shelf…",
  "not fetched": "What opens the shelf could not be fetched. It is tried again by itself.",
  blocked:
    "Another tab holds the shelf with an older Rimwright. Close that tab, and it opens here.",
  newer: "A newer Rimwright has been here and keeps the shelf. Reload this page to have it open.",
  shut: "This browser keeps nothing for this page (a private window may be why). What is on screen stays while the tab does; print the sheet, or share its address from there.",
} as const;

function OpenShelf({ session }: { readonly session: Session }) {
  const [cards, read] = useCards(session);
  const [room, ask] = useStorageRoom(cards);
  const [importState, setImportState] = useState<ImportState>({ is: "none" });
  const readIn = async (file: File): Promise<void> => {
    setImportState({ is: "reading", name: file.name });
    const reading = await readImport(session.parts.shelf, file);
    if (!reading.ok) setImportState({ is: "refused", reason: reading.reason });
    else if (reading.plan.clashes.length > 0) setImportState({ is: "asking", plan: reading.plan });
    else {
      setImportState(await importAll(session, reading.plan));
      await read();
    }
  };
  const arrive = (file: File): void =>
    void readIn(file).catch(() => setImportState({ is: "refused", reason: unreadable }));
  const drop = (event: DragEvent): void => {
    event.preventDefault();
    const file = event.dataTransfer.files[0];
    if (file !== undefined) arrive(file);
  };
  return (
    <main className="shelf" onDragOver={(event) => event.preventDefault()} onDrop={drop}>
      <h2>Shelf</h2>
      <ShelfFiles
        session={session}
        isEmpty={cards?.length === 0}
        importState={importState}
        onImportState={setImportState}
        onFile={arrive}
        onChange={read}
      />
      {/* The nudge comes with the list: it must not push it from under a finger. */}
      {cards === null || room === null ? (
        <p>Reading the shelf…</p>
      ) : (
        <>
          <BackUpNudge cards={cards} room={room} />
          <ShelfList session={session} cards={cards} onChange={read} />
        </>
      )}
      <UnreadableList shelf={session.parts.shelf} cards={cards} />
      <Storage room={room} onAsk={ask} />
    </main>
  );
}

const unreadable =
  "The file cannot be read: it may have been moved or changed. Nothing was imported.";
