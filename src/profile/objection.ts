import type { FieldPath } from "../instrument/field.ts";
import type { Phrase } from "../instrument/phrase.ts";

/** Why an instrument cannot be solved, before the nearest value that would work has been looked for. */
export interface Objection {
  /** The field to blame. */
  readonly field: FieldPath;
  readonly why: Phrase;
}
