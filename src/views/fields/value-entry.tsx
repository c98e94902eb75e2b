import { useId, useState } from "react";
import type { Field } from "../../instrument/field.ts";
import { fieldFigure, unitAfter } from "../../instrument/field-text.ts";
import type { Units } from "../../instrument/length.ts";
import { sayPhrase } from "../../instrument/phrase.ts";
import { readTyped } from "../../store/document/field-view.ts";
import { stepped } from "../../store/document/step.ts";
import { Labelled } from "./labelled.tsx";
import { NumberEntry } from "./number-entry.tsx";

/** How a number is written: read from a text, shown as one, and stepped. */
export interface NumberFormat {
  readonly read: (
    text: string,
  ) =>
    | { readonly ok: true; readonly value: number | null }
    | { readonly ok: false; readonly why: string };
  readonly show: (value: number | null) => string;
  readonly unitAfter: (text: string) => string;
  readonly step?: (value: number, steps: number) => number;
}

/** A field's number in the units shown, within the field's limits. */
export const fieldFormat = (field: Field, units: Units): NumberFormat => ({
  read: (text) => {
    const read = readTyped(field, { text, units });
    return read.ok ? read : { ok: false, why: sayPhrase(read.why, units) };
  },
  show: (value) => fieldFigure(value, field, units),
  unitAfter: (text) => unitAfter(text, field, units),
  step: (value, steps) => stepped(value, field, units, steps),
});

/** The same where nothing need be stated: an empty text is null. */
export const optional = (format: NumberFormat): NumberFormat => ({
  ...format,
  read: (text) => (text.trim() === "" ? { ok: true, value: null } : format.read(text)),
  show: (value) => (value === null ? "" : format.show(value)),
});

interface ValueEntryProps {
  readonly label: string;
  /** The part of the label that is shown, where what stands round it says the rest; "" shows none of it. */
  readonly shown?: string;
  readonly value: number | null;
  readonly format: NumberFormat;
  readonly placeholder?: string | undefined;
  readonly onChange: (value: number | null) => void;
}

/**
 * A number that is no field of the open instrument, under its name. What was typed stays as typed while
 * it says the value held or cannot be read; what cannot be read changes nothing, and it is said why.
 */
export function ValueEntry(props: ValueEntryProps) {
  const { label, shown = label, value, format, placeholder, onChange } = props;
  const { step } = format;
  const faultId = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const read = typed === null ? null : format.read(typed);
  const stands = read !== null && (!read.ok || read.value === value);
  const text = typed !== null && stands ? typed : format.show(value);
  const fault = stands && !read.ok ? read.why : "";
  const onText = (next: string): void => {
    setTyped(next);
    const stated = format.read(next);
    if (stated.ok) onChange(stated.value);
  };
  const onStep = (steps: number): void => {
    if (value === null || step === undefined) return;
    setTyped(null);
    onChange(step(value, steps));
  };
  const entry = (id?: string) => (
    <span className="number-entry">
      <NumberEntry
        {...{ id, label, text, placeholder, onText }}
        unit={format.unitAfter(text)}
        invalid={fault !== ""}
        describedBy={faultId}
        onStep={step === undefined ? undefined : onStep}
        stepless={value === null}
      />
    </span>
  );
  return (
    <div className="value-entry">
      {shown === "" ? entry() : <Labelled label={shown}>{entry}</Labelled>}
      <span id={faultId} className="entry-fault">
        {fault}
      </span>
    </div>
  );
}
