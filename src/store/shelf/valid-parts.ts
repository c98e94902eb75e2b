import { dequal as equal } from "dequal/lite";
import { isMeasurementKey } from "../../instrument/as-built/measurement-fields.ts";
import type { Document, State } from "../document/state.ts";
import { readComparison } from "../files/comparison-form.ts";
import type { PartReader } from "../files/read-document.ts";
import { readRecord } from "../files/record-form.ts";

/** Reads comparisons and records through and through. */
export const validParts: PartReader = {
  comparison: readComparison,
  record: readRecord,
  isKey: isMeasurementKey,
};

/** The state as the tab kept it, its comparisons and records read through: what is not sound of them is as at first. The same state when all are. */
export function withValidParts(state: State): State {
  const { past, future, previous } = state;
  const documents = [state, ...past, ...future, ...(previous === null ? [] : [previous])];
  if (documents.every((document) => sound(document) === document)) return state;
  return {
    ...sound(state),
    past: past.map(sound),
    future: future.map(sound),
    previous: previous === null ? null : sound(previous),
  };
}

function sound<Of extends Document>(document: Of): Of {
  const comparison = validParts.comparison(document.comparison).value;
  const asBuilt = validParts.record(document.asBuilt).value;
  const same = equal([comparison, asBuilt], [document.comparison, document.asBuilt]);
  return same ? document : { ...document, comparison, asBuilt };
}
