import { useEffect, useState } from "react";
import { differencesFrom } from "../../instrument/differences.ts";
import { fieldFigure, unitAfter } from "../../instrument/field-text.ts";
import { readField } from "../../instrument/field-value.ts";
import { type FieldPath, fieldAt } from "../../instrument/fields.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import type { Units } from "../../instrument/length.ts";
import { sayPhrase } from "../../instrument/phrase.ts";
import { learntFrom, learntKinds, learntNames, learntSaid } from "../../profile/bench/learning.ts";
import type { Document } from "../../store/document/state.ts";
import type { Shelf } from "../../store/shelf/shelf.ts";
import { type Card, madeFrom } from "../../store/shelf/shelf-entry.ts";
import { nameOf } from "../find-names.ts";
import { useRimwright } from "../store-context.ts";
import { useSame } from "../use-same.ts";

interface Props {
  readonly shelf: Shelf;
  readonly card: Card;
  readonly cards: readonly Card[];
}

/** Of a model: what was made from it. Of an instrument made from one: in what it differs from it. */
export function ModelParts(props: Props) {
  const { card } = props;
  return (
    <>
      {card.isModel && <MadeOfIt {...props} />}
      {card.madeFrom !== undefined && <MadeFrom {...props} model={card.madeFrom} />}
    </>
  );
}

/** The documents of these cards, read again when one of them is another; null while they are read. */
function useDocuments(shelf: Shelf, cards: readonly Card[]): readonly Document[] | null {
  const asked = useSame(cards, (a, b) => a.id === b?.id && a.revision === b.revision);
  const [read, setRead] = useState<{
    readonly asked: readonly Card[];
    readonly documents: readonly Document[];
  } | null>(null);
  useEffect(() => {
    let wanted = true;
    const reading = Promise.all(asked.map(({ id }) => shelf.document(id)));
    void reading
      .then((found) => {
        const documents = found.filter((one) => one !== undefined);
        if (wanted) setRead({ asked, documents });
      })
      // A shelf that cannot be read is told of by its list.
      .catch(() => {});
    return () => {
      wanted = false;
    };
  }, [shelf, asked]);
  return read?.asked === asked ? read.documents : null;
}

/** How many were made from a model, and how they came out, from their records. */
function MadeOfIt({ shelf, card, cards }: Props) {
  const units = useRimwright((state) => state.choices.units);
  const made = madeFrom(cards, card.id);
  const documents = useDocuments(shelf, made);
  if (made.length === 0)
    return <p className="shelf-model">A model. Nothing on the shelf was made from it yet.</p>;
  const finished = made.filter((one) => one.finished).length;
  const records = (documents ?? []).map(({ lastGood, asBuilt }) => ({
    instrument: lastGood,
    asBuilt,
    invented: false,
  }));
  const learnt = learntKinds
    .map((kind) => learntFrom(records, kind))
    .filter(({ samples }) => samples.length > 0);
  return (
    <div className="shelf-model">
      <p>
        A model: {made.length === 1 ? "1 instrument was" : `${made.length} instruments were`} made
        from it, {finished === 0 ? "none" : finished} finished.
      </p>
      {documents !== null && learnt.length === 0 && (
        <p>Nothing that was measured on them tells yet how they came out.</p>
      )}
      <dl>
        {learnt.map((one) => (
          <div key={one.kind}>
            <dt>{learntNames[one.kind]}</dt>
            <dd>{sayPhrase(learntSaid(one), units)}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}

/** In what an instrument differs from the model it was made from, as that is now. */
function MadeFrom({ shelf, card, cards, model }: Props & { readonly model: string }) {
  const units = useRimwright((state) => state.choices.units);
  const documents = useDocuments(
    shelf,
    cards.filter(({ id }) => id === card.id || id === model),
  );
  if (documents === null) return null;
  const [own, base] = [card.id, model].map((id) =>
    documents.find(({ instrument }) => instrument.id === id),
  );
  if (own === undefined) return null;
  if (base === undefined)
    return (
      <p className="shelf-model">
        Made from <bdi>“{nameOf(own.madeFrom?.name ?? "")}”</bdi>, which is not on the shelf: in
        what it differs cannot be said.
      </p>
    );
  const { fields, others } = differencesFrom(base.instrument, own.instrument);
  return (
    <div className="shelf-model">
      <p>
        Made from <bdi>“{nameOf(base.instrument.name)}”</bdi>
        {fields.length + others.length === 0
          ? ", and differs from it in nothing."
          : ". It differs in:"}
      </p>
      <ul>
        {fields.map((path) => (
          <li key={path}>
            {fieldAt(path, own.instrument.target.kind).label}:{" "}
            {valueSaid(own.instrument, path, units)}, model{" "}
            {valueSaid(base.instrument, path, units)}
          </li>
        ))}
        {others.map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
    </div>
  );
}

function valueSaid(instrument: Instrument, path: FieldPath, units: Units): string {
  const field = fieldAt(path, instrument.target.kind);
  const value = readField(instrument, path);
  const figure = fieldFigure(value, field, units);
  const unit = unitAfter(figure, field, units);
  return unit === "" || unit === "°" ? `${figure}${unit}` : `${figure} ${unit}`;
}
