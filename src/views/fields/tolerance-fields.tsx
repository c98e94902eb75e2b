import { useMemo, useState } from "react";
import { toleranceBounds } from "../../instrument/field.ts";
import type { FieldPath } from "../../instrument/fields.ts";
import { defaultTolerances, fieldAt } from "../../instrument/fields.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import {
  tolerancesOf,
  withGeneralTolerances,
  withPartFixed,
} from "../../profile/uncertainty/tolerances.ts";
import { setTolerances } from "../../store/document/tolerance-edits.ts";
import { addStyles } from "../late-styles.ts";
import { useEdit, useRimwright } from "../store-context.ts";
import { FieldChoice } from "./field-choice.tsx";
import styles from "./tolerance-fields.css?inline";
import { fieldFormat, ValueEntry } from "./value-entry.tsx";

addStyles(styles);

/** The plus-or-minus of each measure, kept with the instrument. */
export function ToleranceFields() {
  const instrument = useRimwright((state) => state.lastGood);
  const edit = useEdit();
  const built = useMemo(() => withPartFixed(instrument) ?? instrument, [instrument]);
  const [asked, setAsked] = useState<readonly FieldPath[]>([]);
  const stated = tolerancesOf(built).map(([path]) => path);
  const emptied = asked.filter((path) => !stated.includes(path));
  const set = (path: FieldPath, plusMinus: number): void => {
    if (!asked.includes(path)) setAsked([...asked, path]);
    edit((state) => setTolerances(state, { ...state.instrument.tolerances, [path]: plusMinus }));
  };
  const take = (to: Instrument["tolerances"]): void => edit((state) => setTolerances(state, to));
  return (
    <div className="tolerances">
      <p className="tolerance-note">
        How closely you hold each measure, plus or minus. The first ones are common practice,
        without a source. ISO 2768-1 gives classes by size for plain lengths; radii and angles keep
        theirs.
      </p>
      <div className="tolerance-acts">
        <button
          type="button"
          onClick={() => take(withGeneralTolerances(instrument, "fine").tolerances)}
        >
          ISO 2768-1 fine
        </button>
        <button
          type="button"
          onClick={() => take(withGeneralTolerances(instrument, "medium").tolerances)}
        >
          ISO 2768-1 medium
        </button>
        <button type="button" onClick={() => take(defaultTolerances)}>
          Common practice
        </button>
        <FieldChoice
          label="Add"
          instrument={built}
          value={null}
          ask="Choose a measure…"
          without={[...stated, ...emptied]}
          onChoose={(path) => setAsked([...asked, path])}
        />
      </div>
      <div className="tolerance-rows">
        {[...stated, ...emptied].map((path) => (
          <ToleranceRow
            key={path}
            path={path}
            plusMinus={
              built.tolerances[path] ?? tolerancesOf(built).find(([own]) => own === path)?.[1] ?? 0
            }
            onSet={(plusMinus) => set(path, plusMinus)}
          />
        ))}
      </div>
    </div>
  );
}

interface RowProps {
  readonly path: FieldPath;
  readonly plusMinus: number;
  readonly onSet: (plusMinus: number) => void;
}

function ToleranceRow({ path, plusMinus, onSet }: RowProps) {
  const units = useRimwright((state) => state.choices.units);
  const { nullWord: _, usual: __, ...plain } = fieldAt(path, "shim");
  const { min, max } = toleranceBounds(plain);
  const field = { ...plain, min, max, step: Math.min(plain.step, 0.01) };
  return (
    <ValueEntry
      label={`${field.label}, plus or minus`}
      shown={field.label}
      value={plusMinus}
      format={fieldFormat(field, units)}
      onChange={(value) => value !== null && onSet(value)}
    />
  );
}
