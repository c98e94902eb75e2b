import type { FinishedInstrument } from "../../instrument/as-built/as-built.ts";
import { fields } from "../../instrument/fields.ts";
import { type Learnt, learntFrom } from "./learning.ts";

/** What tells of settling, the longest under tension first: a year says more than the day of stringing. */
const tellOfSettling = ["year", "week", "stringHeight"] as const;

/**
 * The settling at the saddle that a learnt fall teaches, mm to a hundredth, to be stated as
 * `strings.settling`. Null where the fall cannot be told from none, where it is not of strung
 * instruments, or where it lies outside what the field takes.
 */
export function settlingOf({ kind, interval }: Learnt): number | null {
  if (kind === "gap" || interval === null || interval.low * interval.high <= 0) return null;
  const { min, max } = fields["strings.settling"];
  const settling = -Math.round(interval.mean * 100) / 100;
  return settling >= min && settling <= max ? settling : null;
}

/** What tells most of the settling of these instruments; null where nothing does yet. */
export function settlingLearnt(finished: readonly FinishedInstrument[]): Learnt | null {
  for (const kind of tellOfSettling) {
    const learnt = learntFrom(finished, kind);
    if (settlingOf(learnt) !== null) return learnt;
  }
  return null;
}
