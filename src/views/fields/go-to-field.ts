import { type FieldPath, groupOf } from "../../instrument/fields.ts";
import { fold } from "../../store/document/choices.ts";
import { useEdit } from "../store-context.ts";

/** The id of a field's input in the page. */
export const fieldId = (path: FieldPath): string => `field-${path}`;

/** Unfolds a field's group and puts the cursor in it. */
export function useGoToField(): (path: FieldPath) => void {
  const edit = useEdit();
  return (path) => {
    edit((state) => fold(state, groupOf(path), false));
    // The group is drawn by the next frame at the latest.
    requestAnimationFrame(() => {
      const input = document.getElementById(fieldId(path));
      input?.focus();
      input?.scrollIntoView({ block: "center" });
    });
  };
}
