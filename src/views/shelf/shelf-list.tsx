import { useMemo, useState } from "react";
import type { Session } from "../../store/session.ts";
import type { Shelf } from "../../store/shelf.ts";
import { duplicate } from "../../store/shelf-act.ts";
import type { Card, Entry } from "../../store/shelf-entry.ts";
import { useRimwright } from "../store-context.ts";
import { ShelfRow } from "./shelf-row.tsx";

interface Props {
  readonly shelf: Shelf;
  readonly session: Session;
  readonly cards: readonly Card[];
  readonly onChange: () => Promise<void>;
}

type Order = "latest" | "name";

/** Rows shown at once: a shelf of thousands is searched, not scrolled. */
const page = 50;

export function ShelfList({ shelf, session, cards, onChange }: Props) {
  const [wanted, setWanted] = useState("");
  const [order, setOrder] = useState<Order>("latest");
  const [shown, setShown] = useState(page);
  const [removed, setRemoved] = useState<Entry | null>(null);
  const open = useRimwright((state) => state.instrument.id);
  const found = useMemo(() => sorted(matching(cards, wanted), order), [cards, wanted, order]);

  const remove = async (id: string): Promise<void> => {
    setRemoved((await shelf.open(id)) ?? null);
    await shelf.remove(id);
    await onChange();
  };
  const restore = async (entry: Entry): Promise<void> => {
    await shelf.put([entry]);
    setRemoved(null);
    await onChange();
  };
  const copy = async (id: string): Promise<void> => {
    await duplicate(shelf, id, Date.now());
    await onChange();
  };
  return (
    <section aria-label="Instruments">
      <div className="shelf-tools">
        <label>
          Find{" "}
          <input type="search" value={wanted} onChange={({ target }) => setWanted(target.value)} />
        </label>
        <label>
          Order{" "}
          <select
            value={order}
            onChange={({ target }) => setOrder(target.value === "name" ? "name" : "latest")}
          >
            <option value="latest">last changed first</option>
            <option value="name">by name</option>
          </select>
        </label>
      </div>
      <p role="status">
        {cards.length === 0
          ? "Nothing is on the shelf yet. An instrument comes here with its first change."
          : `${found.length} of ${cards.length}`}
        {removed !== null && (
          <>
            {" "}
            “{removed.work.instrument.name}” was taken off.{" "}
            <button type="button" onClick={() => void restore(removed)}>
              Put it back
            </button>
          </>
        )}
      </p>
      <ul className="shelf-list">
        {found.slice(0, shown).map((card) => (
          <ShelfRow
            key={card.id}
            card={card}
            shelf={shelf}
            isOpen={card.id === open}
            onOpen={() => void session.open(card.id).then(() => window.location.assign("#/layout"))}
            onCopy={() => void copy(card.id)}
            onRemove={() => void remove(card.id)}
          />
        ))}
      </ul>
      {found.length > shown && (
        <button type="button" onClick={() => setShown(shown + page)}>
          Show more
        </button>
      )}
    </section>
  );
}

function matching(cards: readonly Card[], wanted: string): readonly Card[] {
  const words = wanted.toLocaleLowerCase().split(/\s+/);
  return cards.filter(({ name }) => {
    const lower = name.toLocaleLowerCase();
    return words.every((word) => lower.includes(word));
  });
}

const byName = new Intl.Collator(undefined, { numeric: true });

const sorted = (cards: readonly Card[], order: Order): readonly Card[] =>
  cards.toSorted((a, b) =>
    order === "name" ? byName.compare(a.name, b.name) : b.savedAt - a.savedAt,
  );
