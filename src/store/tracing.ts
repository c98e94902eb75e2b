import type { Body, Tracing } from "../instrument/instrument.ts";
import { planOf } from "./plan.ts";
import type { State } from "./state.ts";

/**
 * Lays the builder's own outline under the instrument, with the widths and places it comes to, or
 * takes it off again: then the four curves through those widths stand in for it. `body` holds what changes.
 */
export function traceOutline(
  state: State,
  tracing: Tracing | null,
  body: Partial<Omit<Body, "tracing">> = {},
): State {
  const { tracing: _, ...bare } = state.instrument.body;
  const next = { ...bare, ...body, ...(tracing === null ? {} : { tracing }) };
  const instrument = { ...state.instrument, body: next };
  const texts = Object.fromEntries(
    Object.entries(state.texts).filter(([path]) => !path.startsWith("body.")),
  );
  const lastGood = planOf(instrument).ok ? instrument : state.lastGood;
  return { ...state, instrument, lastGood, texts, lastChanged: null, gesture: "trace the outline" };
}
