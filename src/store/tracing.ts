import type { Tracing } from "../instrument/instrument.ts";
import { planOf } from "./plan.ts";
import type { State } from "./state.ts";

/**
 * Lays the builder's own outline under the instrument, which becomes as long as it, or takes it off:
 * then the curves through the stated widths and places shape it again. Those are left as they are.
 */
export function traceOutline(state: State, tracing: Tracing | null): State {
  const { tracing: _, ...bare } = state.instrument.body;
  const length = tracing?.at(-1)?.[0] ?? bare.length;
  const body = { ...bare, length, ...(tracing === null ? {} : { tracing }) };
  const instrument = { ...state.instrument, body };
  const { "body.length": __, ...texts } = state.texts;
  const lastGood = planOf(instrument).ok ? instrument : state.lastGood;
  return { ...state, instrument, lastGood, texts, lastChanged: null, gesture: "trace the outline" };
}
