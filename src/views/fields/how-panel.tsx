import type { FieldPath } from "../../instrument/field.ts";
import { fieldAt } from "../../instrument/fields.ts";
import { useRimwright } from "../store-context.ts";
import { howPictures } from "./how-pictures.ts";

/** How to measure the field that has the cursor, with a picture where words are slow. */
export function HowPanel({ path }: { readonly path: FieldPath | null }) {
  const kind = useRimwright((state) => state.instrument.target.kind);
  if (path === null)
    return (
      <div className="how" aria-hidden="true">
        <p>Choose a field: here it says how to measure it.</p>
      </div>
    );
  const { label, howTo } = fieldAt(path, kind);
  const strokes = howPictures[path];
  return (
    // The field itself is described by the same words, so a screen reader need not come here.
    <div className="how" aria-hidden="true">
      {strokes !== undefined && (
        <svg viewBox="0 0 120 60" aria-hidden="true">
          {strokes.map(([look, d]) => (
            <path key={d} className={`how-${look}`} d={d} />
          ))}
        </svg>
      )}
      <p>
        <strong>{label}.</strong> {howTo}
      </p>
    </div>
  );
}
