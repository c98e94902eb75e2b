import { useId, useState } from "react";
import type { Session } from "../../store/session.ts";
import type { Card } from "../../store/shelf-entry.ts";
import { SceneFigure } from "../figures/scene-figure.tsx";
import { nameOf } from "./found-cards.ts";
import { RowActs } from "./row-acts.tsx";
import { useThumbnail } from "./use-thumbnail.ts";

export interface RowProps {
  readonly card: Card;
  readonly session: Session;
  readonly isOpen: boolean;
  readonly onOpen: () => void;
  readonly onRename: (name: string) => void;
  readonly onCopy: () => void;
  readonly onTakeOff: () => void;
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
