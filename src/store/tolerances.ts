import type { Tolerances } from "../instrument/instrument.ts";
import type { State } from "./state.ts";

/** States how closely each measure is held. It changes no plan, so the last good instrument takes it too. */
export function setTolerances(state: State, tolerances: Tolerances): State {
  const instrument = { ...state.instrument, tolerances };
  const lastGood =
    state.lastGood === state.instrument ? instrument : { ...state.lastGood, tolerances };
  return { ...state, instrument, lastGood, gesture: "tolerances" };
}
