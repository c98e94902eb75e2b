import { isWithin, toleranceBounds } from "../../instrument/field.ts";
import { fieldAt, isFieldPath } from "../../instrument/fields.ts";
import { withVersion } from "../../instrument/file-version.ts";
import type { Tolerances } from "../../instrument/instrument.ts";
import { type State, undoStep } from "./state.ts";

/** States how closely each measure is held. It changes no plan, so the last good instrument takes it too. */
export function setTolerances(state: State, tolerances: Tolerances): State {
  const fit = Object.entries(tolerances).every(
    ([path, plusMinus]) =>
      isFieldPath(path) && isWithin(plusMinus, toleranceBounds(fieldAt(path, "shim"))),
  );
  if (!fit) return state;
  const instrument = withVersion({ ...state.instrument, tolerances });
  const lastGood =
    state.lastGood === state.instrument
      ? instrument
      : withVersion({ ...state.lastGood, tolerances });
  return { ...state, instrument, lastGood, undoStep: undoStep("set the tolerances", "all") };
}
