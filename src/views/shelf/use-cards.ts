import { useCallback, useEffect, useState } from "react";
import { useStore } from "zustand";
import type { Session } from "../../store/session.ts";
import type { Card } from "../../store/shelf-entry.ts";
import { knownCards, readCards } from "./known-cards.ts";

/** What is on the shelf: as last known, then read, and again whenever this tab or another changes it. */
export function useCards(session: Session): [readonly Card[] | null, () => Promise<void>] {
  const [cards, setCards] = useState(() => knownCards(session));
  const { saving } = useStore(session.state);
  const read = useCallback(async () => {
    setCards(await readCards(session));
  }, [session]);
  useEffect(() => {
    if (saving !== "saving") void read();
  }, [read, saving]);
  useEffect(() => watchTabs(read), [read]);
  return [cards, read];
}

/** Changes told in a row are read once, ms after the last. */
const rest = 150;

function watchTabs(read: () => Promise<void>): () => void {
  const tabs = new BroadcastChannel("rimwright");
  let waiting: ReturnType<typeof setTimeout> | undefined;
  const soon = (): void => {
    clearTimeout(waiting);
    waiting = setTimeout(() => void read(), rest);
  };
  tabs.addEventListener("message", soon);
  addEventListener("focus", soon);
  return () => {
    clearTimeout(waiting);
    tabs.close();
    removeEventListener("focus", soon);
  };
}
