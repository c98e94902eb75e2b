import { memo } from "react";
import type { Field } from "../../instrument/field.ts";
import { unitAfter } from "../../instrument/field-text.ts";
import { readField } from "../../instrument/field-value.ts";
import type { FieldPath } from "../../instrument/fields.ts";
import { fieldAt } from "../../instrument/fields.ts";
import { setNone, stepField, typeField } from "../../store/document/edits.ts";
import { fieldTrouble, shownText } from "../../store/document/field-view.ts";
import { useEdit, useRimwright } from "../store-context.ts";
import { fieldNotes } from "./field-notes.tsx";
import { FieldTrouble } from "./field-trouble.tsx";
import { fieldId } from "./go-to-field.ts";
import { NumberEntry } from "./number-entry.tsx";

/** One number: its name, what is typed, steppers, and what is wrong with it. */
export const FieldRow = memo(function FieldRow({ path }: { readonly path: FieldPath }) {
  const kind = useRimwright((state) => state.instrument.target.kind);
  const units = useRimwright((state) => state.choices.units);
  const text = useRimwright((state) => shownText(state, path));
  const trouble = useRimwright((state) => fieldTrouble(state, path));
  const isNull = useRimwright((state) => readField(state.instrument, path) === null);
  const edit = useEdit();
  const field = fieldAt(path, kind);
  const { label, howTo, nullWord } = field;
  const id = fieldId(path);
  const Note = fieldNotes[path];
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <NumberEntry
        {...{ id, label, text, name: path, stepless: isNull }}
        unit={unitAfter(text, field, units)}
        keypad={keypadFor(field)}
        invalid={trouble !== null}
        describedBy={`${id}-how ${id}-trouble`}
        onText={(typed) => edit((state) => typeField(state, path, typed))}
        onStep={(steps) => edit((state) => stepField(state, path, steps))}
      />
      {nullWord !== undefined && <NoneSwitch path={path} word={nullWord} on={isNull} />}
      <span id={`${id}-how`} className="field-how unseen">
        {howTo}
      </span>
      {Note !== undefined && (
        <div className="field-note">
          <Note />
        </div>
      )}
      <FieldTrouble path={path} trouble={trouble} />
    </div>
  );
});

function NoneSwitch({ path, word, on }: { path: FieldPath; word: string; on: boolean }) {
  const edit = useEdit();
  const label = useRimwright(({ instrument }) => fieldAt(path, instrument.target.kind).label);
  return (
    <label className="none-switch">
      <input
        type="checkbox"
        className="tick"
        checked={on}
        aria-label={`${label}: ${word}`}
        onChange={({ target }) => edit((state) => setNone(state, path, target.checked))}
      />
      {word}
    </label>
  );
}

/** A keypad of figures only where nothing else is ever needed: no sign, no word, and of a length, in any units shown, no fraction and no foot. */
function keypadFor({ quantity, min, nullWord }: Field): "numeric" | "decimal" | "text" {
  if (quantity === "count") return "numeric";
  return quantity === "angle" && min >= 0 && nullWord === undefined ? "decimal" : "text";
}
