import type { FieldPath } from "../../instrument/field.ts";
import { howPictures } from "./how-pictures.ts";

/** The picture of how a field is measured, where there is one. */
export function HowPicture({ path }: { readonly path: FieldPath }) {
  const strokes = howPictures[path];
  if (strokes === undefined) return null;
  return (
    <svg viewBox="0 0 120 60" aria-hidden="true">
      {strokes.map(([look, d]) => (
        <path key={d} className={`how-${look}`} d={d} />
      ))}
    </svg>
  );
}
