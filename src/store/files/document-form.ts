import type { Document, History } from "../document/state.ts";

/** A document as it is stored: in the names of the form's version 2. */
export const documentForm = ({ lastNumbers, isModel, madeFrom, ...document }: Document) => ({
  ...document,
  setAside: lastNumbers,
  ...modelForm({ isModel, madeFrom }),
});

/** What is said of models, where there is anything to say. */
export const modelForm = ({ isModel, madeFrom }: Pick<Document, "isModel" | "madeFrom">) => ({
  ...(isModel ? { model: true as const } : {}),
  ...(madeFrom === null ? {} : { madeFrom }),
});

export const historyForm = ({ past, future }: History) => ({
  past: past.map(documentForm),
  future: future.map(documentForm),
});
