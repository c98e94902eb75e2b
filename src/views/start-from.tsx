import { useRef } from "react";
import type { Instrument } from "../instrument/instrument.ts";
import { presets } from "../instrument/presets.ts";
import { putBack, startFrom } from "../store/edits.ts";
import { newId } from "../store/new-id.ts";
import { useAct, useRimwright } from "./store-context.ts";

/** The invented instruments to start from, and the way back to what was open before. */
export function StartFrom() {
  const list = useRef<HTMLDivElement>(null);
  const away = useRimwright((state) => state.putAway?.instrument.name ?? null);
  const act = useAct();
  const open = (preset: Instrument): void => {
    list.current?.hidePopover?.();
    act((state) => startFrom(state, preset, newId()));
  };
  return (
    <div className="start-from">
      <button type="button" popoverTarget="start-from">
        Start from…
      </button>
      {away !== null && (
        <button type="button" className="put-back" onClick={() => act(putBack)}>
          Back to “{away === "" ? "unnamed" : away}”
        </button>
      )}
      <div id="start-from" ref={list} popover="auto" className="start-list">
        <h2>Start from an invented instrument</h2>
        <p>
          None of these is anybody’s guitar: they are made up, to be changed into yours. What is
          open now can be put back.
        </p>
        <ul>
          {presets.map((preset) => (
            <li key={preset.id}>
              <button type="button" onClick={() => open(preset)}>
                <strong>{preset.name}</strong>
                <span>{preset.notes}</span>
              </button>
            </li>
          ))}
        </ul>
        <button type="button" popoverTarget="start-from" popoverTargetAction="hide">
          Close
        </button>
      </div>
    </div>
  );
}
