import { useEffect, useMemo, useRef, useState } from "react";
import type { FieldPath } from "../../instrument/fields.ts";
import { fieldAt } from "../../instrument/fields.ts";
import { type Phrase, sayPhrase, sayQuantity } from "../../instrument/phrase.ts";
import type { Refusal } from "../../profile/outcome.ts";
import { setField } from "../../store/document/edits.ts";
import { offeredValue, workableRange } from "../../store/document/field-view.ts";
import { rangePhrase } from "../../store/document/plan.ts";
import { useEdit, useRimwright } from "../store-context.ts";
import { fieldId } from "./go-to-field.ts";

/** "… to … works here": what a field in trouble may be, found a moment after the trouble is on the screen. */
function useWorks(path: FieldPath, wanted: boolean): Phrase | null {
  const instrument = useRimwright((state) => state.instrument);
  const lastGood = useRimwright((state) => state.lastGood);
  const [works, setWorks] = useState<Phrase | null>(null);
  useEffect(() => {
    setWorks(null);
    if (!wanted) return;
    const search = setTimeout(() => {
      const range = workableRange({ instrument, lastGood }, path);
      if (range !== null)
        setWorks([...rangePhrase(instrument, path, range), " works with the rest as it is."]);
    }, 60);
    return () => clearTimeout(search);
  }, [instrument, lastGood, path, wanted]);
  return wanted ? works : null;
}

/** What is wrong with a field, what would work in it for this instrument, and a button that takes the nearest. */
export function FieldTrouble({ path, trouble }: { path: FieldPath; trouble: Refusal | null }) {
  const units = useRimwright((state) => state.choices.units);
  const works = useWorks(path, trouble !== null);
  const parts = [trouble?.why, works].filter((part) => part !== undefined && part !== null);
  const said = parts.map((part) => sayPhrase(part, units)).join(" ");
  const place = useRef<HTMLDivElement>(null);
  // What is said of the field being typed in must not lie below the edge.
  useEffect(() => {
    if (said !== "" && document.activeElement?.id === fieldId(path))
      place.current?.scrollIntoView({ block: "nearest" });
  }, [path, said]);
  return (
    <div ref={place} id={`${fieldId(path)}-trouble`} className="trouble">
      {trouble !== null && (
        <>
          <p>{said}</p>
          {trouble.field === path && <UseNearest trouble={trouble} />}
        </>
      )}
    </div>
  );
}

/** Takes the nearest value that works, where there is one. */
export function UseNearest({ trouble }: { readonly trouble: Refusal }) {
  const units = useRimwright((state) => state.choices.units);
  const instrument = useRimwright((state) => state.instrument);
  const edit = useEdit();
  const { field } = trouble;
  const value = useMemo(
    () => offeredValue(instrument, trouble, units),
    [instrument, trouble, units],
  );
  if (value === null) return null;
  const { quantity } = fieldAt(field, instrument.target.kind);
  return (
    <button
      type="button"
      className="use-nearest"
      onClick={() => edit((state) => setField(state, field, value))}
    >
      Use {sayQuantity({ value, as: quantity }, units)}
    </button>
  );
}
