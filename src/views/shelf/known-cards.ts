import type { Session } from "../../store/session.ts";
import type { Card } from "../../store/shelf-entry.ts";

const known = new WeakMap<Session, readonly Card[]>();

/** The cards as last read; null before that. */
export const knownCards = (session: Session): readonly Card[] | null => known.get(session) ?? null;

/** Reads the cards of a shelf, with what waits to be saved on it. */
export async function readCards(session: Session): Promise<readonly Card[]> {
  await session.flush();
  const cards = await session.parts.shelf.cards();
  known.set(session, cards);
  return cards;
}
