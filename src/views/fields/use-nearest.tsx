import { useMemo } from "react";
import { fieldAt } from "../../instrument/fields.ts";
import { sayQuantity } from "../../instrument/phrase.ts";
import type { Refusal } from "../../profile/outcome.ts";
import { setField } from "../../store/document/edits.ts";
import { offeredValue } from "../../store/document/workable-range.ts";
import { useEdit, useRimwright } from "../store-context.ts";

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
