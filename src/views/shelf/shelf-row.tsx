import { type RefObject, useEffect, useId, useRef, useState } from "react";
import type { Scene } from "../../drawing/scene.ts";
import { thumbnailOf } from "../../drawing/section/thumbnail.ts";
import { textLimits } from "../../instrument/text-limits.ts";
import { givensOf } from "../../profile/givens.ts";
import { shownPlan } from "../../store/document/plan.ts";
import { oneFile } from "../../store/shelf/export.ts";
import type { Session } from "../../store/shelf/session.ts";
import type { Shelf } from "../../store/shelf/shelf.ts";
import type { Card } from "../../store/shelf/shelf-entry.ts";
import { SceneFigure } from "../figures/scene-figure.tsx";
import { fileName, saveJson } from "../save-file.ts";
import { nameOf } from "./cards.ts";
import { ShareButton } from "./share-button.tsx";

/** What is seldom done to an instrument on the shelf. */
function RowActs({ onDone, ...props }: RowProps & { readonly onDone: () => void }) {
  const { card, session, isOpen, onCopy, onRemove } = props;
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
      <ShareButton shelf={shelf} id={card.id} />
      {isOpen ? (
        <span className="shelf-hint">It is open: open another to take it off.</span>
      ) : (
        <button type="button" onClick={onRemove}>
          Take off the shelf
        </button>
      )}
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

/** The entry's section, small; read once its place in the page comes near the window. */
function useThumbnail(
  shelf: Shelf,
  { id, revision, savedAt }: Card,
): [RefObject<HTMLDivElement | null>, Scene | null] {
  const place = useRef<HTMLDivElement>(null);
  const [near, setNear] = useState(false);
  const [scene, setScene] = useState<Scene | null>(null);
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
        if (wanted && plan !== null && set?.ok) setScene(thumbnailOf(set.givens, plan.profile));
      })
      // Without a picture the row is as good.
      .catch(() => {});
    return () => {
      wanted = false;
    };
  }, [shelf, id, revision, savedAt, near]);
  return [place, scene];
}

export interface RowProps {
  readonly card: Card;
  readonly session: Session;
  readonly isOpen: boolean;
  readonly onOpen: () => void;
  readonly onRename: (name: string) => void;
  readonly onCopy: () => void;
  readonly onRemove: () => void;
}

export function ShelfRow(props: RowProps) {
  const { card, session, isOpen, onOpen } = props;
  const [place, thumbnail] = useThumbnail(session.parts.shelf, card);
  const [more, setMore] = useState(false);
  const acts = useId();
  const name = nameOf(card.name);
  return (
    <li className="shelf-row" aria-label={name}>
      <div className="shelf-thumbnail" ref={place}>
        {thumbnail !== null && <SceneFigure scene={thumbnail} />}
      </div>
      <div className="shelf-name">
        <bdi>{name}</bdi>
        <span>
          {when.format(card.savedAt)}
          {card.finished ? ", finished" : ""}
          {isOpen ? ", open now" : ""}
        </span>
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

const when = new Intl.DateTimeFormat(undefined, { dateStyle: "medium", timeStyle: "short" });
