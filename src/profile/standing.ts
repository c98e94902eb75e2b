import type { Range } from "../instrument/instrument.ts";

/** What is smaller than this, mm or degrees, is rounding and counts as nothing: a target set at a limit is at it, not past it. */
export const rounding = 1e-9;

/** A length below this, mm, shows as 0 in inches, half a thousandth: what is said or drawn of it is as of nothing. */
export const leastShown = 0.0127;

/**
 * How a value stands to the range a builder accepts: `close` is in it, but in the tenth next to an end.
 * Nothing is close to an end at 0: what just clears the bridge clears it, and is within.
 */
export type Standing = "within" | "close" | "outside";

export function standing(value: number, [low, high]: Range): Standing {
  if (value < low - rounding || value > high + rounding) return "outside";
  const margin = (high - low) / 10;
  const closeTo = (end: number): boolean => end !== 0 && Math.abs(value - end) < margin;
  return closeTo(low) || closeTo(high) ? "close" : "within";
}
