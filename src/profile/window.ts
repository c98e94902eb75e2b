import type { Range } from "../instrument/instrument.ts";

/** How a value stands to the range a builder accepts: `near` is within it, but in the tenth next to an end. */
export type Standing = "in" | "near" | "out";

export function standing(value: number, [low, high]: Range): Standing {
  if (value < low || value > high) return "out";
  const margin = (high - low) / 10;
  return value < low + margin || value > high - margin ? "near" : "in";
}
