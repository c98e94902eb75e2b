import { asJson } from "./json.ts";

/** Which edit made a work: of two that one visit made, the higher is the later, whichever was written down last. */
export interface Stamp {
  /** Of the visit that made it: a page from its loading to its end. Empty: not known. */
  readonly run: string;
  /** Goes on from the edit before, whoever made that. */
  readonly edit: number;
}

export const noStamp: Stamp = { run: "", edit: 0 };

export function readStamp(json: unknown): Stamp {
  const { run, edit } = asJson(json);
  return typeof run === "string" && typeof edit === "number" && Number.isFinite(edit)
    ? { run, edit }
    : noStamp;
}

/** Whether one visit made both. */
export const ofOneRun = (a: Stamp, b: Stamp): boolean => a.run !== "" && a.run === b.run;

export const sameStamp = (a: Stamp, b: Stamp): boolean => a.run === b.run && a.edit === b.edit;
