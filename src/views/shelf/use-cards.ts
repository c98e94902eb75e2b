import { useCallback, useEffect, useState } from "react";
import { useStore } from "zustand";
import type { Session } from "../../store/session.ts";
import type { Card } from "../../store/shelf-entry.ts";

/** What is on the shelf, read again whenever this tab or another changes it; null until it was read. */
export function useCards(session: Session): [readonly Card[] | null, () => Promise<void>] {
  const [cards, setCards] = useState<readonly Card[] | null>(null);
  const { saving } = useStore(session.state);
  const read = useCallback(async () => {
    await session.flush();
    setCards(await session.parts.shelf.cards());
  }, [session]);
  useEffect(() => {
    if (saving !== "saving") void read();
  }, [read, saving]);
  useEffect(() => {
    const tabs = new BroadcastChannel("rimwright");
    const look = (): void => void read();
    tabs.addEventListener("message", look);
    addEventListener("focus", look);
    return () => {
      tabs.close();
      removeEventListener("focus", look);
    };
  }, [read]);
  return [cards, read];
}
