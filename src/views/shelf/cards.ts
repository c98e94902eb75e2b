import { useCallback, useEffect, useState } from "react";
import { useStore } from "zustand";
import type { Session } from "../../store/shelf/session.ts";
import { type Card, madeFrom } from "../../store/shelf/shelf-entry.ts";
import { byName, hasWords } from "../find-names.ts";

export const orders = [
  ["latest", "last changed first"],
  ["earliest", "first changed first"],
  ["name", "by name"],
] as const;

export type Order = (typeof orders)[number][0];

/** Which of the shelf's instruments a list shows: all, the models, or those made from one, by its id. */
export type Shown = "all" | "models" | { readonly madeFrom: string };

/** The cards whose names hold every word, of those that are to be shown, in an order. */
export function foundCards(
  cards: readonly Card[],
  words: string,
  order: Order,
  shown: Shown,
): readonly Card[] {
  return shownCards(cards, shown)
    .filter(({ name }) => hasWords(name, words))
    .toSorted(comparing[order]);
}

function shownCards(cards: readonly Card[], shown: Shown): readonly Card[] {
  if (shown === "all") return cards;
  return shown === "models"
    ? cards.filter(({ isModel }) => isModel)
    : madeFrom(cards, shown.madeFrom);
}

const named = (a: Card, b: Card): number => byName(a.name, b.name);

const comparing: Readonly<Record<Order, (a: Card, b: Card) => number>> = {
  latest: (a, b) => b.savedAt - a.savedAt || named(a, b),
  earliest: (a, b) => a.savedAt - b.savedAt || named(a, b),
  name: named,
};

const known = new WeakMap<Session, readonly Card[]>();

/** The cards as last read; null before that. */
const knownCards = (session: Session): readonly Card[] | null => known.get(session) ?? null;

/** Reads the cards of a shelf, with what waits to be saved on it. */
export async function readCards(session: Session): Promise<readonly Card[]> {
  await session.flush();
  const cards = await session.parts.shelf.cards();
  known.set(session, cards);
  return cards;
}

/** What is on the shelf: as last known, then read, and again whenever this tab or another changes it. */
export function useCards(session: Session): [readonly Card[] | null, () => Promise<void>] {
  const [cards, setCards] = useState(() => knownCards(session));
  const saving = useStore(session.state, (state) => state.saving);
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
