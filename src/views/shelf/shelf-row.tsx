import { useEffect, useState } from "react";
import type { Scene } from "../../drawing/scene.ts";
import { thumbnailOf } from "../../drawing/thumbnail.ts";
import { settingOf } from "../../profile/setting.ts";
import { shownPlan } from "../../store/plan.ts";
import { openAddress } from "../../store/share.ts";
import type { Shelf } from "../../store/shelf.ts";
import type { Card } from "../../store/shelf-entry.ts";
import { shelfFileOf } from "../../store/shelf-file.ts";
import { SceneFigure } from "../figures/scene-figure.tsx";
import { fileName, saveJson } from "../save-file.ts";

interface Props {
  readonly card: Card;
  readonly shelf: Shelf;
  readonly isOpen: boolean;
  readonly onOpen: () => void;
  readonly onCopy: () => void;
  readonly onRemove: () => void;
}

export function ShelfRow({ card, shelf, isOpen, onOpen, onCopy, onRemove }: Props) {
  const name = card.name === "" ? "Unnamed instrument" : card.name;
  const thumbnail = useThumbnail(shelf, card);
  const [shared, setShared] = useState<string | null>(null);
  const share = async (): Promise<void> => {
    const entry = await shelf.open(card.id);
    if (entry === undefined) return;
    const address = await openAddress(entry.work.instrument, window.location.href);
    setShared(address);
    await navigator.clipboard?.writeText(address).catch(() => {});
  };
  const save = async (): Promise<void> => {
    const entry = await shelf.open(card.id);
    if (entry !== undefined) saveJson(fileName(name, "instrument", "json"), shelfFileOf([entry]));
  };
  return (
    <li className="shelf-row" aria-label={name}>
      {thumbnail !== null && <SceneFigure scene={thumbnail} />}
      <div className="shelf-name">
        <strong dir="auto">{name}</strong>
        <span>
          {new Date(card.savedAt).toLocaleString()}
          {card.finished ? ", finished" : ""}
          {isOpen ? ", open now" : ""}
        </span>
      </div>
      <div className="shelf-acts">
        <button type="button" onClick={onOpen}>
          Open
        </button>
        <button type="button" onClick={onCopy}>
          Duplicate
        </button>
        <button type="button" onClick={() => void save()}>
          Export
        </button>
        <button type="button" onClick={() => void share()}>
          Share
        </button>
        {!isOpen && (
          <button type="button" onClick={onRemove}>
            Take off
          </button>
        )}
      </div>
      {shared !== null && (
        <label className="shelf-address">
          Address that opens it (copied where the browser allows)
          <input readOnly value={shared} onFocus={({ target }) => target.select()} />
        </label>
      )}
    </li>
  );
}

/** The entry's section, small; read when the row is shown. */
function useThumbnail(shelf: Shelf, { id, savedAt }: Card): Scene | null {
  const [scene, setScene] = useState<Scene | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a later save is another drawing.
  useEffect(() => {
    let wanted = true;
    void shelf.open(id).then((entry) => {
      const plan = entry === undefined ? null : shownPlan(entry.work);
      const set = plan === null ? null : settingOf(plan.instrument);
      if (wanted && plan !== null && set?.ok) setScene(thumbnailOf(set.setting, plan.profile));
    });
    return () => {
      wanted = false;
    };
  }, [shelf, id, savedAt]);
  return scene;
}
