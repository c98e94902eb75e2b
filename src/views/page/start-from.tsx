import { useRef, useState } from "react";
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
  const list = useRef<HTMLDivElement>(null);
  const away = useRimwright((state) => state.previous?.instrument.name ?? null);
  const [wanted, setWanted] = useState(false);
  const edit = useEdit();
  const start = (preset: Instrument): void => {
    list.current?.hidePopover?.();
    edit((state) => startFrom(state, preset, newId()));
  };
  const goBack = (): void => {
    list.current?.hidePopover?.();
    edit(reopenPrevious);
  };
  return (
    <div className="start-from">
      <button type="button" popoverTarget="start-from" onClick={() => setWanted(true)}>
        Start from…
      </button>
      <div id="start-from" ref={list} popover="auto" className="start-list">
        {away !== null && (
          <button type="button" className="put-back" onClick={goBack}>
            Back to “{away === "" ? "unnamed" : away}”
          </button>
        )}
        <h2>Start from an invented instrument</h2>
        <p>
          None of these is anybody’s guitar: they are made up, to be changed into yours. What is
          open now can be put back.
        </p>
        {wanted && <StartList onStart={start} />}
        <button type="button" popoverTarget="start-from" popoverTargetAction="hide">
          Close
        </button>
      </div>
    </div>
  );
}
