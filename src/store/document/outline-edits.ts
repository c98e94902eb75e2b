import { isWithin } from "../../instrument/field.ts";
import { fieldAt } from "../../instrument/fields.ts";
import { withVersion } from "../../instrument/file-version.ts";
import type { Body, Tracing } from "../../instrument/instrument.ts";
import { tracingFlaw } from "../../instrument/tracing.ts";
import { solvedPlan } from "./plan.ts";
import { type State, undoStep } from "./state.ts";

/** The halves of a body that are traced. No bass half: the stated widths. No treble half: the bass half's mirror. */
export interface TracedHalves {
  readonly bass: Tracing | null;
  readonly treble: Tracing | null;
}

/**
 * Lays the builder's own outline under the instrument, which becomes as long as it, or takes it off:
 * then the curves through the stated widths and places shape it again. Those are left as they are.
 */
export function traceOutline(state: State, { bass, treble }: TracedHalves): State {
  const { tracing: _, tracingTreble: __, ...bare } = state.instrument.body;
  const halves = [bass, treble].filter((half) => half !== null);
  const lengths = halves.map((half) => half.at(-1)?.[0] ?? 0);
  const [length = bare.length] = lengths;
  const isFit =
    halves.every((half) => tracingFlaw(half) === null) &&
    lengths.every((one) => one === length) &&
    isWithin(length, fieldAt("body.length", "shim"));
  if (!isFit) return state;
  const body = {
    ...bare,
    length,
    ...(bass === null ? {} : { tracing: bass }),
    ...(treble === null ? {} : { tracingTreble: treble }),
  };
  const { "body.length": ___, ...texts } = state.texts;
  return { ...withBody(state, body, "trace the outline"), texts };
}

/** Whether what is drawn and printed has the bass side where a left-handed player has it. */
export function setLeftHanded(state: State, on: boolean): State {
  const { leftHanded: _, ...bare } = state.instrument.body;
  return withBody(state, on ? { ...bare, leftHanded: true } : bare, "turn the drawings over");
}

function withBody(state: State, body: Body, step: string): State {
  const instrument = withVersion({ ...state.instrument, body });
  const lastGood = solvedPlan(instrument).ok ? instrument : state.lastGood;
  return { ...state, instrument, lastGood, lastChanged: null, undoStep: undoStep(step, "all") };
}
