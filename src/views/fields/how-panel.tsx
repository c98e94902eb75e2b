import type { FieldPath } from "../../instrument/fields.ts";
import { fieldAt } from "../../instrument/fields.ts";
import { latePart } from "../late-part.tsx";
import { useRimwright } from "../store-context.ts";

const HowPicture = latePart({
  what: "The pictures of how to measure",
  load: () => import("./how-picture.tsx").then(({ HowPicture }) => HowPicture),
});

/**
 * How to measure the field that has the cursor, with a picture where words are slow. The field itself
 * is described by the same words, so a screen reader need not come here.
 */
export function HowPanel({ path }: { readonly path: FieldPath | null }) {
  const kind = useRimwright((state) => state.instrument.target.kind);
  if (path === null)
    return (
      <div className="how" aria-hidden="true">
        <p>Choose a field: here it says how to measure it.</p>
      </div>
    );
  const { label, howTo } = fieldAt(path, kind);
  return (
    <div className="how" aria-hidden="true">
      <HowPicture path={path} />
      <p>
        <strong>{label}.</strong> {howTo}
      </p>
    </div>
  );
}
