import { useCallback, useEffect, useState } from "react";
import type { Session } from "../../store/session.ts";
import type { Shelf } from "../../store/shelf.ts";
import type { Card } from "../../store/shelf-entry.ts";
import { useShelfSlot } from "../shelf-slot-context.ts";
import { SetAsideList } from "./set-aside-list.tsx";
import { ShelfFiles } from "./shelf-files.tsx";
import { ShelfList } from "./shelf-list.tsx";
import "./shelf.css";
import { Storage } from "./storage.tsx";

/** The instruments kept in this browser. */
export function ShelfView() {
  const slot = useShelfSlot();
  return (
    <main className="shelf">
      <h2>Shelf</h2>
      {slot.is === "open" ? (
        <OpenShelf shelf={slot.shelf} session={slot.session} />
      ) : (
        <p role="status">{troubles[slot.is]}</p>
      )}
    </main>
  );
}

const troubles = {
  opening: "Opening the shelf…",
  blocked:
    "Another tab holds the shelf with an older Rimwright. Close that tab, and it opens here.",
  shut: "This browser keeps nothing for this page (a private window may be why). What is on screen stays while the tab does; export or share what you want to keep.",
} as const;

function OpenShelf({ shelf, session }: { readonly shelf: Shelf; readonly session: Session }) {
  const [cards, setCards] = useState<readonly Card[] | null>(null);
  const read = useCallback(async () => {
    await session.flush();
    setCards(await shelf.cards());
  }, [shelf, session]);
  useEffect(() => void read(), [read]);
  if (cards === null) return <p>Reading the shelf…</p>;
  return (
    <>
      <ShelfList shelf={shelf} session={session} cards={cards} onChange={read} />
      <ShelfFiles shelf={shelf} onChange={read} />
      <SetAsideList shelf={shelf} />
      <Storage />
    </>
  );
}
