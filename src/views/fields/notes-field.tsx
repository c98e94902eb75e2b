import { textLimits } from "../../instrument/schema.ts";
import { writeNotes } from "../../store/edits.ts";
import { useAct, useRimwright } from "../store-context.ts";

export function NotesField() {
  const notes = useRimwright((state) => state.instrument.notes);
  const act = useAct();
  return (
    <section className="group">
      <h2>
        <label htmlFor="notes">Notes</label>
      </h2>
      <textarea
        id="notes"
        rows={4}
        maxLength={textLimits.notes}
        value={notes}
        onChange={({ target }) => act((state) => writeNotes(state, target.value))}
      />
    </section>
  );
}

/** The notes where they are seen first: an invented instrument says there that it is one. */
export function NotesLine() {
  const notes = useRimwright((state) => state.instrument.notes);
  return notes === "" ? null : <p className="notes-line">{notes}</p>;
}
