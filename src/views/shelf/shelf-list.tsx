import { useMemo, useState } from "react";
import { demoShelf } from "../../instrument/as-built/demo-shelf.ts";
import { newDocument } from "../../store/document/state.ts";
import type { Session } from "../../store/shelf/session.ts";
import {
  duplicate,
  makeFromModel,
  markKeptModel,
  type Removed,
  removeFromShelf,
  renameKept,
  restoreRemoved,
} from "../../store/shelf/shelf-edits.ts";
import { type Card, newEntry } from "../../store/shelf/shelf-entry.ts";
import { Labelled } from "../fields/labelled.tsx";
import { Select } from "../fields/select.tsx";
import { nameOf } from "../find-names.ts";
import { useRimwright } from "../store-context.ts";
import { foundCards, type Order, orders, type Shown } from "./cards.ts";
import { ShelfRow } from "./shelf-row.tsx";

interface EmptyShelfProps {
  readonly session: Session;
  readonly act: (doing: Promise<unknown>) => Promise<void>;
}

/** What a builder sees before anything is saved: how things come here, and something to look at. */
function EmptyShelf({ session, act }: EmptyShelfProps) {
  const { shelf, tell, now } = session.parts;
  const load = async (): Promise<void> => {
    const invented = demoShelf.map(({ instrument, asBuilt }) => ({
      entry: newEntry({ ...newDocument(instrument), asBuilt }, now()),
      replaces: null,
    }));
    for (const one of await shelf.add(invented)) tell(one);
  };
  return (
    <div className="shelf-empty">
      <p>
        Nothing is on the shelf yet. The open instrument comes here with its first change, and is
        saved by itself from then on. To have it here unchanged, press Save above.
      </p>
      <p>
        To look round first, put {demoShelf.length} invented instruments here. Nobody built them,
        and each says so in its name; take them off when you have seen enough.
      </p>
      <button type="button" onClick={() => void act(load())}>
        Put the invented ones on the shelf
      </button>
    </div>
  );
}

interface ShelfListProps {
  readonly session: Session;
  readonly cards: readonly Card[];
  readonly onChange: () => Promise<void>;
}

/** Rows shown at once: a shelf of thousands is searched, not scrolled. */
const page = 25;

/** The instruments on the shelf, and what can be done to each. */
export function ShelfList({ session, cards, onChange }: ShelfListProps) {
  const [wanted, setWanted] = useState("");
  const [order, setOrder] = useState<Order>("latest");
  const [which, setWhich] = useState<Shown>("all");
  const [shown, setShown] = useState(page);
  const [off, setOff] = useState<readonly Removed[]>([]);
  const [refused, setRefused] = useState("");
  const open = useRimwright((state) => state.instrument.id);
  const found = useMemo(
    () => foundCards(cards, wanted, order, which),
    [cards, wanted, order, which],
  );

  /** Does what was asked, and says so where the browser or the session will not. */
  const act = async (doing: Promise<unknown>): Promise<void> => {
    setRefused("");
    await doing.catch(() => setRefused("The browser would not do that; nothing was changed."));
    await onChange();
  };
  const openOne = async (id: string): Promise<void> => {
    if (await session.open(id)) window.location.assign("#/layout");
    else
      setRefused("What is open now is not saved, or that one cannot be read: it stays as it is.");
  };
  const remove = async (id: string): Promise<void> => {
    const removed = await removeFromShelf(session, id);
    if (removed !== null) setOff((before) => [...before, removed]);
  };
  const restore = async (one: Removed): Promise<void> => {
    await restoreRemoved(session, one);
    setOff((before) => before.filter((other) => other !== one));
  };
  const make = async (id: string): Promise<void> => {
    const made = await makeFromModel(session, id);
    if (made !== null) await openOne(made.id);
  };
  const last = off.at(-1);
  return (
    <section aria-label="Instruments">
      {cards.length === 0 ? (
        <EmptyShelf session={session} act={act} />
      ) : (
        <Finding {...{ cards, wanted, order, which, setWanted, setOrder, setWhich }} />
      )}
      <div className="shelf-told" role="status">
        {cards.length > 0 && <span>{countOf(found.length, cards.length)}</span>}
        {refused !== "" && <span className="shelf-refused">{refused}</span>}
        {last !== undefined && (
          <span>
            <bdi>“{nameOf(last.entry.document.instrument.name)}”</bdi> was taken off.{" "}
            <button type="button" onClick={() => void act(restore(last))}>
              Put it back
            </button>
          </span>
        )}
      </div>
      {found.length > 0 && (
        <ul className="shelf-list">
          {found.slice(0, shown).map((card) => (
            <ShelfRow
              key={card.id}
              card={card}
              cards={cards}
              session={session}
              isOpen={card.id === open}
              onOpen={() => void act(openOne(card.id))}
              onRename={(name) => void act(renameKept(session, card.id, name))}
              onCopy={() => void act(duplicate(session, card.id))}
              onRemove={() => void act(remove(card.id))}
              onModel={(isModel) => void act(markKeptModel(session, card.id, isModel))}
              onMake={() => void act(make(card.id))}
            />
          ))}
        </ul>
      )}
      {found.length > shown && (
        <button type="button" onClick={() => setShown(shown + page)}>
          Show {Math.min(page, found.length - shown)} more
        </button>
      )}
    </section>
  );
}

function countOf(found: number, all: number): string {
  if (found === all) return all === 1 ? "1 instrument" : `${all} instruments`;
  return found === 0 ? "No name here has those words." : `${found} of ${all}`;
}

interface FindingProps {
  readonly cards: readonly Card[];
  readonly wanted: string;
  readonly order: Order;
  readonly which: Shown;
  readonly setWhich: (which: Shown) => void;
  readonly setWanted: (wanted: string) => void;
  readonly setOrder: (order: Order) => void;
}

function Finding(props: FindingProps) {
  const { cards, wanted, order, which, setWanted, setOrder, setWhich } = props;
  const models = cards.filter(({ isModel }) => isModel);
  const made = models.map(({ id, name }) => [id, `made from ${nameOf(name)}`] as const);
  return (
    <div className="shelf-tools">
      <Labelled label="Find">
        {(id) => (
          <input
            id={id}
            type="search"
            value={wanted}
            onChange={({ target }) => setWanted(target.value)}
          />
        )}
      </Labelled>
      <Select label="Order" value={order} options={orders} onChoose={setOrder} />
      {models.length > 0 && (
        <Select
          label="Show"
          value={typeof which === "string" ? which : which.madeFrom}
          options={[["all", "all"], ["models", "models"], ...made]}
          onChoose={(chosen) =>
            setWhich(chosen === "all" || chosen === "models" ? chosen : { madeFrom: chosen })
          }
        />
      )}
    </div>
  );
}
