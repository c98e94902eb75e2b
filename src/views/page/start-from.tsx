import { type MouseEvent, useRef, useState } from "react";
import type { Instrument } from "../../instrument/instrument.ts";
import { reopenPrevious, startFrom } from "../../store/document/edits.ts";
import { newId } from "../../store/document/new-id.ts";
import { latePart } from "../late-part.tsx";
import { useEdit, useRimwright } from "../store-context.ts";

const StartList = latePart({
  what: "The list of invented instruments",
  load: () => import("./start-list.tsx").then(({ StartList }) => StartList),
});

/** The invented instruments to start from, and the way back to what was open before. */
export function StartFrom() {
  const list = useRef<HTMLDialogElement>(null);
  const away = useRimwright((state) => state.previous?.instrument.name ?? null);
  const [wanted, setWanted] = useState(false);
  const edit = useEdit();
  const open = (): void => {
    setWanted(true);
    list.current?.showModal();
  };
  const close = (): void => list.current?.close();
  const closeOutside = ({ target, currentTarget }: MouseEvent<HTMLDialogElement>): void => {
    if (target === currentTarget) currentTarget.close();
  };
  const start = (preset: Instrument): void => {
    close();
    edit((state) => startFrom(state, preset, newId()));
  };
  const goBack = (): void => {
    close();
    edit(reopenPrevious);
  };
  return (
    <div className="start-from">
      <button type="button" aria-haspopup="dialog" onClick={open}>
        Start from…
      </button>
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: by keyboard Escape closes it, which the browser does. */}
      <dialog
        id="start-from"
        ref={list}
        className="start-list"
        aria-labelledby="start-from-heading"
        onClick={closeOutside}
      >
        {away !== null && (
          <button type="button" className="put-back" onClick={goBack}>
            Back to “{away === "" ? "unnamed" : away}”
          </button>
        )}
        <h2 id="start-from-heading">Start from an invented instrument</h2>
        <p>
          None of these is anybody’s guitar: they are made up, to be changed into yours. What is
          open now can be put back.
        </p>
        {wanted && <StartList onStart={start} />}
        <button type="button" onClick={close}>
          Close
        </button>
      </dialog>
    </div>
  );
}
