import { useEffect, useRef } from "react";
import type { FieldPath } from "../../instrument/field.ts";
import { fieldAt } from "../../instrument/fields.ts";
import { sayPhrase, sayQuantity } from "../../instrument/say-phrase.ts";
import type { Refusal } from "../../profile/outcome.ts";
import { setField } from "../../store/edits.ts";
import { useAct, useRimwright } from "../store-context.ts";
import { fieldId } from "./field-id.ts";
import { useWorks } from "./use-works.ts";

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
export function UseNearest({ trouble: { field, nearest } }: { readonly trouble: Refusal }) {
  const units = useRimwright((state) => state.choices.units);
  const kind = useRimwright((state) => state.instrument.target.kind);
  const act = useAct();
  if (nearest === null) return null;
  const { quantity } = fieldAt(field, kind);
  return (
    <button
      type="button"
      className="use-nearest"
      onClick={() => act((state) => setField(state, field, nearest))}
    >
      Use {sayQuantity({ value: nearest, as: quantity }, units)}
    </button>
  );
}
