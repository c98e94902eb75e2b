import { asJson } from "./json.ts";

/** Which edit made a document: of two that one visit made, the higher is the later, whichever was written down last. */
export interface EditId {
  /** Of the visit that made it: a page from its loading to its end. Empty: not known. */
  readonly run: string;
  /** Goes on from the edit before, whoever made that. */
  readonly edit: number;
}

export const noEditId: EditId = { run: "", edit: 0 };

export function readEditId(json: unknown): EditId {
  const { run, edit } = asJson(json);
  return typeof run === "string" && typeof edit === "number" && Number.isFinite(edit)
    ? { run, edit }
    : noEditId;
}

/** Whether one visit made both. */
export const sameVisit = (a: EditId, b: EditId): boolean => a.run !== "" && a.run === b.run;

export const sameEditId = (a: EditId, b: EditId): boolean => a.run === b.run && a.edit === b.edit;
