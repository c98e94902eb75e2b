import { fieldAt } from "../../instrument/fields.ts";
import type { TargetKind } from "../../instrument/instrument.ts";
import { targetIn } from "../../profile/outcome.ts";
import { setField, setTarget } from "./edits.ts";
import { shownPlan, solvedPlan } from "./plan.ts";
import { type State, undoStep } from "./state.ts";
import { snapped, stepped } from "./step.ts";

/** Drags the break to a place from the tail: the flat's length follows, in round figures. `drag` tells one drag from the next. */
export function dragBreak(state: State, fromTail: number, drag: string): State {
  const { instrument, choices } = state;
  const path = "dome.flatLength";
  const flat = snapped(
    instrument.body.length - fromTail,
    fieldAt(path, instrument.target.kind),
    choices.units,
  );
  return withPlan(state, setField(state, path, flat, undoStep("drag", drag)));
}

/** Drags an outcome, which becomes the target, to a round figure. */
export function dragTarget(state: State, kind: TargetKind, value: number, drag: string): State {
  const aim = snapped(value, fieldAt("target.value", kind), state.choices.units);
  return withPlan(state, setTarget(state, kind, aim, undoStep("drag", drag)));
}

/** Moves an outcome, which becomes the target, by whole steps from what it is now. */
export function stepTarget(state: State, kind: TargetKind, steps: number): State {
  const plan = shownPlan(state);
  if (plan === null) return state;
  const field = fieldAt("target.value", kind);
  const now = targetIn(plan.profile, kind);
  if (now === null) return state;
  const aim = stepped(now, field, state.choices.units, steps);
  return withPlan(state, setTarget(state, kind, aim, undoStep("step", kind)));
}

/** The state after a move by hand. Where that has no plan: the nearest that has one, or no move. */
function withPlan(before: State, after: State): State {
  const plan = solvedPlan(after.instrument);
  if (plan.ok) return after;
  const { field, nearest } = plan.refusal;
  if (field !== after.lastChanged || nearest === null) return before;
  const held = { ...setField(after, field, nearest), undoStep: after.undoStep };
  return solvedPlan(held.instrument).ok ? held : before;
}
