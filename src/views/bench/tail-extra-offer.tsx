import type { Instrument } from "../../instrument/instrument.ts";
import { sayPhrase } from "../../instrument/phrase.ts";
import { tailExtraOffer } from "../../profile/bench/tail-extra.ts";
import { setField } from "../../store/document/edits.ts";
import { useEdit, useRimwright } from "../store-context.ts";
import { useRecord } from "./bench-context.ts";

/** What the side depths say that the dish took off the tail, offered to the plan in place of what it counts on. */
export function TailExtraOffer({ instrument }: { readonly instrument: Instrument }) {
  const units = useRimwright((state) => state.choices.units);
  const record = useRecord();
  const edit = useEdit();
  const offer = tailExtraOffer(instrument, record);
  if (offer === null) return null;
  return (
    <div className="offer" role="status">
      <p>{sayPhrase(offer.said, units)}</p>
      <button
        type="button"
        onClick={() => edit((state) => setField(state, "dome.tailExtra", offer.tailExtra))}
      >
        Count it into the plan
      </button>
    </div>
  );
}
