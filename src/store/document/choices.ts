import type { FieldGroup } from "../../instrument/fields.ts";
import type { Units } from "../../instrument/length.ts";
import type { State, Stretch } from "./state.ts";

/** Changes how values are shown, never a value. */
export function chooseUnits(state: State, units: Units): State {
  return { ...state, choices: { ...state.choices, units } };
}

export function chooseStretch(state: State, stretch: Stretch): State {
  return { ...state, choices: { ...state.choices, stretch } };
}

export function turnOver(state: State): State {
  const { choices } = state;
  return { ...state, choices: { ...choices, turned: !choices.turned } };
}

/** What a first visit is asked has been answered, or passed over. */
export function introduce(state: State): State {
  return { ...state, choices: { ...state.choices, introduced: true } };
}

export function fold(state: State, group: FieldGroup, folded: boolean): State {
  const { choices } = state;
  if (choices.folded.includes(group) === folded) return state;
  const others = choices.folded.filter((name) => name !== group);
  return { ...state, choices: { ...choices, folded: folded ? [...others, group] : others } };
}
