import type { Card } from "../../store/shelf-entry.ts";

export const orders = [
  ["latest", "last changed first"],
  ["earliest", "first changed first"],
  ["name", "by name"],
] as const;

export type Order = (typeof orders)[number][0];

/** What a list calls an instrument that has no name. */
export const nameOf = (name: string): string => (name.trim() === "" ? "Unnamed instrument" : name);

/** The cards whose names hold every word, in any case and without regard to accents, in an order. */
export function foundCards(cards: readonly Card[], wanted: string, order: Order): readonly Card[] {
  const words = plain(wanted).split(/\s+/);
  const found =
    wanted.trim() === ""
      ? cards
      : cards.filter(({ name }) => {
          const held = plain(nameOf(name));
          return words.every((word) => held.includes(word));
        });
  return found.toSorted(comparing[order]);
}

const plain = (text: string): string =>
  text.normalize("NFD").replace(/\p{M}/gu, "").toLocaleLowerCase();

const byName = new Intl.Collator(undefined, { numeric: true });

const named = (a: Card, b: Card): number => byName.compare(nameOf(a.name), nameOf(b.name));

const comparing: Readonly<Record<Order, (a: Card, b: Card) => number>> = {
  latest: (a, b) => b.savedAt - a.savedAt || named(a, b),
  earliest: (a, b) => a.savedAt - b.savedAt || named(a, b),
  name: named,
};
