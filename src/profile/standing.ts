import type { Range } from "../instrument/instrument.ts";

/** A difference this small is rounding, mm or degrees: a target set at a limit is at it, not past it. */
export const hair = 1e-9;

/** How a value stands to the range a builder accepts: `close` is in it, but in the tenth next to an end. */
export type Standing = "within" | "close" | "outside";

export function standing(value: number, [low, high]: Range): Standing {
  if (value < low - hair || value > high + hair) return "outside";
  const margin = (high - low) / 10;
  return value < low + margin || value > high - margin ? "close" : "within";
}
