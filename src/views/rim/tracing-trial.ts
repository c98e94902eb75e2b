import { framed, halfOf, type TracingEnds } from "../../geometry/outline/tracing.ts";
import { guessedEnds } from "../../geometry/outline/tracing-ends.ts";
import { fitted } from "../../geometry/outline/tracing-fit.ts";
import type { Place } from "../../geometry/polyline.ts";
import type { Tracing } from "../../instrument/instrument.ts";
import { mm, type Phrase, phrase } from "../../instrument/phrase.ts";
import { tracingFaultPhrase, tracingFlaw, tracingLimits } from "../../instrument/tracing.ts";

/** A drawing placed in the body's frame by its two ends, and what came of fitting it. */
export interface TracingTrial {
  readonly drawn: readonly Place[];
  readonly length: number;
  readonly result:
    | {
        readonly ok: true;
        readonly tracing: Tracing;
        readonly error: number;
        readonly apart: number;
      }
    | { readonly ok: false; readonly why: Phrase };
}

/**
 * Places in mm, put into the body's frame by `ends` (a guess where null) and fitted to within `error`
 * mm. Null when tail and neck end are one place.
 */
export function tryTracing(
  places: readonly Place[],
  ends: TracingEnds | null,
  error: number,
): TracingTrial | null {
  const placed = ends ?? guessedEnds(places);
  if (placed === null) return null;
  const length = rounded(
    Math.hypot(placed.neck[0] - placed.tail[0], placed.neck[1] - placed.tail[1]),
  );
  if (!(length > 0)) return null;
  const drawn = framed(places, placed);
  return { drawn, length, result: fitOf(drawn, length, error) };
}

function fitOf(drawn: readonly Place[], length: number, error: number): TracingTrial["result"] {
  const { longest } = tracingLimits;
  if (length < 100 || length > longest) {
    return {
      ok: false,
      why: phrase`This is ${mm(length)} from tail to neck end; a body is ${mm(100)} to ${mm(longest)}. Look at the unit it is drawn in.`,
    };
  }
  const half = halfOf(drawn, length, error);
  if (!half.ok) return { ok: false, why: tracingFaultPhrase(half.fault) };
  const fit = fitted(half.half.places, error, tracingLimits.most);
  const tracing = fit.places.map(([x, y]) => [rounded(x), rounded(y)] as const);
  if (fit.error > error) {
    return {
      ok: false,
      why: phrase`No smooth curve comes nearer to this than ${mm(fit.error)}. Allow that much, or draw it smoother.`,
    };
  }
  const flaw = tracingFlaw(tracing);
  return flaw === null
    ? { ok: true, tracing, error: fit.error, apart: half.half.apart }
    : { ok: false, why: [`A tracing needs ${flaw}.`] };
}

/** A kept tracing is given in thousandths of a millimetre. */
const rounded = (mm: number): number => Math.round(mm * 1000) / 1000;
