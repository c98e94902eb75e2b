import { runsBack } from "../geometry/outline/turns.ts";
import { defaultInstrument } from "./default-instrument.ts";
import { readField } from "./field-value.ts";
import { type FieldPath, fieldPaths, isFieldPath } from "./fields.ts";
import type { Instrument } from "./instrument.ts";

/** The newest form of an instrument's file that is read. */
export const newestVersion = 2;

/** The fields that version 1 did not have; each has a default that leaves its results as they were. */
const addedPaths: readonly FieldPath[] = [
  ...fieldPaths.filter((path) => path.startsWith("seat.")),
  "neck.fan",
  "neck.fanFret",
  "bridge.slant",
  "strings.pairGap",
  "strings.settling",
];

/**
 * The version an instrument's file must state: 1 while nothing is used that version 1 did not have, so that
 * older pages open it; else 2, so that they refuse it untouched instead of opening it wrong.
 */
function versionOf(instrument: Instrument): 1 | 2 {
  const { body, dome, target, tolerances } = instrument;
  const uses =
    body.tracingTreble !== undefined ||
    body.leftHanded === true ||
    (body.tracing !== undefined && runsBack(body.tracing)) ||
    dome.method !== "break" ||
    target.kind === "spacer" ||
    addedPaths.some((path) => readField(instrument, path) !== readField(defaultInstrument, path)) ||
    Object.keys(tolerances).some((path) => isFieldPath(path) && addedPaths.includes(path));
  return uses ? 2 : 1;
}

/** The instrument with the version its file must state. */
export function withVersion(instrument: Instrument): Instrument {
  const version = versionOf(instrument);
  return instrument.version === version ? instrument : { ...instrument, version };
}
