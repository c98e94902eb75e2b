import type { Document, History } from "../document/state.ts";

/** A document as it is stored: in the names of the form's version 2. */
export const documentForm = ({ lastNumbers, ...document }: Document) => ({
  ...document,
  setAside: lastNumbers,
});

export const historyForm = ({ past, future }: History) => ({
  past: past.map(documentForm),
  future: future.map(documentForm),
});
