import { dequal as equal } from "dequal/lite";
import { emptyAsBuilt } from "../../instrument/as-built/as-built.ts";
import { isMeasurementKey } from "../../instrument/as-built/measurement-fields.ts";
import { readAsBuilt } from "../../instrument/as-built/read-as-built.ts";
import type { Document, State } from "../document/state.ts";
import { readComparison } from "../files/comparison-form.ts";
import type { PartReader } from "../files/read-document.ts";

/** Reads comparisons and records through and through. */
export const validParts: PartReader = {
  comparison: readComparison,
  record(json) {
    const read = readAsBuilt(json);
    return read.ok ? read.asBuilt : null;
  },
  isKey: isMeasurementKey,
};

/** The state as the tab kept it, its comparisons and records read through: what is not sound of them is as at first. The same state when all are. */
export function withValidParts(state: State): State {
  const { past, future, putAway } = state;
  const works = [state, ...past, ...future, ...(putAway === null ? [] : [putAway])];
  if (works.every((work) => sound(work) === work)) return state;
  return {
    ...sound(state),
    past: past.map(sound),
    future: future.map(sound),
    putAway: putAway === null ? null : sound(putAway),
  };
}

function sound<Of extends Document>(work: Of): Of {
  const comparison = validParts.comparison(work.comparison);
  const asBuilt = validParts.record(work.asBuilt) ?? emptyAsBuilt;
  const same = equal([comparison, asBuilt], [work.comparison, work.asBuilt]);
  return same ? work : { ...work, comparison, asBuilt };
}
