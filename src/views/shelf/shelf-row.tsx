import { type RefObject, useEffect, useId, useRef, useState } from "react";
import type { Scene } from "../../drawing/scene.ts";
import { thumbnailOf } from "../../drawing/section/thumbnail.ts";
import { formatRadius, type Units } from "../../instrument/length.ts";
import { textLimits } from "../../instrument/text-limits.ts";
import { givensOf } from "../../profile/givens.ts";
import { type ShownPlan, shownPlan } from "../../store/document/plan.ts";
import { oneFile } from "../../store/shelf/export.ts";
import type { Session } from "../../store/shelf/session.ts";
import type { Shelf } from "../../store/shelf/shelf.ts";
import type { Card } from "../../store/shelf/shelf-entry.ts";
import { anglePartOf } from "../figures/angle-part.ts";
import { height } from "../figures/measures.ts";
import { SceneFigure } from "../figures/scene-figure.tsx";
import { nameOf } from "../find-names.ts";
import { fileName, saveJson } from "../save-file.ts";
import { useRimwright } from "../store-context.ts";
import { ModelParts } from "./model-parts.tsx";
import { ShareButton } from "./share-button.tsx";

/** What is seldom done to an instrument on the shelf. */
function RowActs({ onDone, ...props }: RowProps & { readonly onDone: () => void }) {
  const { card, cards, session, isOpen, onCopy, onRemove, onModel, onMake } = props;
  const { shelf } = session.parts;
  const [renaming, setRenaming] = useState(false);
  const save = async (): Promise<void> => {
    const file = await oneFile(shelf, card.id);
    if (file !== null) saveJson(fileName(card.name, "rimwright", "json"), file);
  };
  return (
    <>
      <button type="button" aria-pressed={renaming} onClick={() => setRenaming(!renaming)}>
        Rename
      </button>
      <button type="button" onClick={onCopy}>
        Duplicate
      </button>
      <button type="button" onClick={() => void save()}>
        Export
      </button>
      {card.isModel && (
        <button type="button" onClick={onMake}>
          Make an instrument from it
        </button>
      )}
      <button type="button" onClick={() => onModel(!card.isModel)}>
        {card.isModel ? "No longer a model" : "Mark as a model"}
      </button>
      <ShareButton shelf={shelf} id={card.id} />
      {isOpen ? (
        <span className="shelf-hint">It is open: open another to take it off.</span>
      ) : (
        <button type="button" onClick={onRemove}>
          Take off the shelf
        </button>
      )}
      <ModelParts shelf={shelf} card={card} cards={cards} />
      {renaming && <RenameForm {...props} onDone={onDone} />}
    </>
  );
}

function RenameForm({ card, onRename, onDone }: RowProps & { readonly onDone: () => void }) {
  const [name, setName] = useState(card.name);
  return (
    <form
      className="shelf-line"
      onSubmit={(event) => {
        event.preventDefault();
        onRename(name);
        onDone();
      }}
    >
      <label>
        New name
        <input
          dir="auto"
          value={name}
          maxLength={textLimits.name}
          onChange={({ target }) => setName(target.value)}
        />
      </label>
      <button type="submit">Rename it</button>
    </form>
  );
}

/** An entry's section, small, and the figures that tell one instrument from another. */
interface Glance {
  readonly scene: Scene;
  readonly plan: ShownPlan;
}

/** An entry at a glance; read once its place in the page comes near the window. */
function useGlance(
  shelf: Shelf,
  { id, revision, savedAt }: Card,
): [RefObject<HTMLDivElement | null>, Glance | null] {
  const place = useRef<HTMLDivElement>(null);
  const [near, setNear] = useState(false);
  const [glance, setGlance] = useState<Glance | null>(null);
  useEffect(() => {
    if (place.current === null) return;
    const watch = new IntersectionObserver(
      (seen) => setNear(seen.some(({ isIntersecting }) => isIntersecting)),
      { rootMargin: "200px" },
    );
    watch.observe(place.current);
    return () => watch.disconnect();
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a later save is another drawing.
  useEffect(() => {
    if (!near) return;
    let wanted = true;
    void shelf
      .document(id)
      .then((document) => {
        const plan = document === undefined ? null : shownPlan(document);
        const set = plan === null ? null : givensOf(plan.instrument);
        if (wanted && plan !== null && set?.ok)
          setGlance({ scene: thumbnailOf(set.givens, plan.profile), plan });
      })
      // Without a picture the row is as good.
      .catch(() => {});
    return () => {
      wanted = false;
    };
  }, [shelf, id, revision, savedAt, near]);
  return [place, glance];
}

export interface RowProps {
  readonly card: Card;
  /** All there are, for what was made from which. */
  readonly cards: readonly Card[];
  readonly session: Session;
  readonly isOpen: boolean;
  readonly onOpen: () => void;
  readonly onRename: (name: string) => void;
  readonly onCopy: () => void;
  readonly onRemove: () => void;
  readonly onModel: (isModel: boolean) => void;
  readonly onMake: () => void;
}

export function ShelfRow(props: RowProps) {
  const { card, session, isOpen, onOpen } = props;
  const [place, glance] = useGlance(session.parts.shelf, card);
  const units = useRimwright((state) => state.choices.units);
  const [more, setMore] = useState(false);
  const acts = useId();
  const name = nameOf(card.name);
  return (
    <li className="shelf-row" aria-label={name}>
      <div className="shelf-thumbnail" ref={place}>
        {glance !== null && <SceneFigure scene={glance.scene} />}
      </div>
      <div className="shelf-name">
        <bdi>{name}</bdi>
        <span>
          {card.isModel ? "model, " : ""}
          {when.format(card.savedAt)}
          {card.finished ? ", finished" : ""}
          {isOpen ? ", open now" : ""}
        </span>
        {glance !== null && <span>{figuresSaid(glance.plan, units)}</span>}
      </div>
      <button type="button" aria-label={`Open ${name}`} onClick={onOpen}>
        Open
      </button>
      <button
        type="button"
        aria-label={`More for ${name}`}
        aria-expanded={more}
        aria-controls={acts}
        onClick={() => setMore(!more)}
      >
        More
      </button>
      <div id={acts} className="shelf-acts" hidden={!more}>
        {more && <RowActs {...props} onDone={() => setMore(false)} />}
      </div>
    </li>
  );
}

/** Shim or spacer, dish and saddle. */
function figuresSaid({ instrument, profile }: ShownPlan, units: Units): string {
  const { name, value } = anglePartOf(profile);
  const { dishRadius } = instrument.dome;
  const dish = dishRadius === null ? "no dome" : `dish ${formatRadius(dishRadius, units)}`;
  return `${name.toLowerCase()} ${height(value, units)}, ${dish}, saddle ${height(profile.saddleExposure, units)}`;
}

const when = new Intl.DateTimeFormat(undefined, { dateStyle: "medium", timeStyle: "short" });
