import { useId, useState } from "react";
import { type LengthStyle, lengthFigure, parseLength } from "../../instrument/length.ts";
import { useRimwright } from "../store-context.ts";
import "./length-entry.css";

interface Props {
  readonly label: string;
  /** The part of the label that is shown, where what stands before it says the rest. */
  readonly shown?: string;
  /** mm; null where nothing is stated. */
  readonly value: number | null;
  readonly least: number;
  readonly most: number;
  /** The word for nothing stated, where that is allowed. */
  readonly none?: string;
  /** Radii are quoted in feet where inches are shown. */
  readonly feet?: boolean;
  readonly onChange: (mm: number | null) => void;
}

/** A length that is a choice of this view and no part of the instrument. What was typed stays until it is changed. */
export function LengthEntry(props: Props) {
  const { label, shown = label, value, least, most, none, feet = false, onChange } = props;
  const units = useRimwright((state) => state.choices.units);
  const id = useId();
  const style: LengthStyle =
    units === "mm" ? { unit: "mm", decimals: 2 } : { unit: feet ? "ft" : "in", decimals: 3 };
  const [typed, setTyped] = useState<{ text: string; unit: string } | null>(null);
  const stated = value === null ? (none ?? "") : lengthFigure(value, style);
  const text = typed?.unit === style.unit ? typed.text : stated;
  const read = readEntry(text, style.unit, none);
  const fault = faultOf(read, least, most, (mm) => lengthFigure(mm, style));
  const take = (next: string): void => {
    setTyped({ text: next, unit: style.unit });
    const parsed = readEntry(next, style.unit, none);
    if (parsed.ok && faultOf(parsed, least, most, String) === null) onChange(parsed.mm);
  };
  return (
    <div className="length-entry">
      <label htmlFor={id}>{shown}</label>
      <span className="length-value">
        <input
          id={id}
          aria-label={label}
          value={text}
          autoComplete="off"
          spellCheck={false}
          aria-invalid={fault !== null}
          aria-describedby={`${id}-fault`}
          onChange={({ target }) => take(target.value)}
        />
        <span className="length-unit">{value === null ? "" : style.unit}</span>
      </span>
      <span id={`${id}-fault`} className="length-fault">
        {fault}
      </span>
    </div>
  );
}

type Entry =
  | { readonly ok: true; readonly mm: number | null }
  | { readonly ok: false; readonly why: string };

function readEntry(text: string, unit: LengthStyle["unit"], none: string | undefined): Entry {
  const plain = text.trim().toLowerCase();
  if (none !== undefined && (plain === "" || plain === none)) return { ok: true, mm: null };
  return parseLength(text, unit);
}

function faultOf(
  entry: Entry,
  least: number,
  most: number,
  show: (mm: number) => string,
): string | null {
  if (!entry.ok) return entry.why;
  if (entry.mm === null || (entry.mm >= least && entry.mm <= most)) return null;
  return `This must be from ${show(least)} to ${show(most)}.`;
}
