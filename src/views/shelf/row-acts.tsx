import { useState } from "react";
import { textLimits } from "../../instrument/schema.ts";
import { openAddress } from "../../store/share.ts";
import { oneFile } from "../../store/shelf-file.ts";
import { fileName, saveJson } from "../save-file.ts";
import type { RowProps } from "./shelf-row.tsx";

/** What is seldom done to an instrument on the shelf. */
export function RowActs({ onDone, ...props }: RowProps & { readonly onDone: () => void }) {
  const { card, session, isOpen, onCopy, onTakeOff } = props;
  const { shelf } = session.parts;
  const [renaming, setRenaming] = useState(false);
  const [shared, setShared] = useState<string | null>(null);
  const share = async (): Promise<void> => {
    const work = await shelf.look(card.id);
    if (work === undefined) return;
    const address = await openAddress(work.instrument, window.location.href);
    setShared(address);
    await navigator.clipboard?.writeText(address).catch(() => {});
  };
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
      <button type="button" onClick={() => void share()}>
        Share
      </button>
      {isOpen ? (
        <span className="shelf-hint">It is open: open another to take it off.</span>
      ) : (
        <button type="button" onClick={onTakeOff}>
          Take off the shelf
        </button>
      )}
      {renaming && <RenameForm {...props} onDone={onDone} />}
      {shared !== null && (
        <label className="shelf-line">
          Address that opens it; copied, where the browser allows
          <input readOnly value={shared} onFocus={({ target }) => target.select()} />
        </label>
      )}
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
