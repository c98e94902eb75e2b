import type { FieldPath } from "../../instrument/field.ts";

/** The id of a field's input in the page. */
export const fieldId = (path: FieldPath): string => `field-${path}`;
