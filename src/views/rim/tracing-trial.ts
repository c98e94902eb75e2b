import type { FittedOutline } from "../../drawing/plan/tracing-plan.ts";
import { BoutOutline } from "../../geometry/outline/outline.ts";
import { TracedOutline } from "../../geometry/outline/traced-outline.ts";
import { framed, halvesIn, type TracingEnds } from "../../geometry/outline/tracing.ts";
import { guessedEnds } from "../../geometry/outline/tracing-ends.ts";
import { fitted } from "../../geometry/outline/tracing-fit.ts";
import type { Place } from "../../geometry/polyline.ts";
import type { Body, Tracing } from "../../instrument/instrument.ts";
import { mm, type Phrase, phrase } from "../../instrument/phrase.ts";
import { tracingFaultPhrase, tracingFlaw, tracingLimits } from "../../instrument/tracing.ts";
import type { TracedHalves } from "../../store/document/outline-edits.ts";

/** A drawing placed in the body's frame by its two ends, and what came of fitting it. */
export interface TracingTrial {
  /** y toward the bass side. */
  readonly drawn: readonly Place[];
  readonly length: number;
  readonly result: TrialResult;
}

/** The halves drawn, each fitted; `apart` is how far both lie apart. */
export type TrialResult =
  | ({ readonly ok: true; readonly error: number; readonly apart: number } & TracedHalves)
  | { readonly ok: false; readonly why: Phrase };

/** How a drawing is laid into the body's frame. */
export interface TracingPlacing {
  /** A guess where null. */
  readonly ends: TracingEnds | null;
  /** Whether the bass side lies to the right of the way from tail to neck end, by the drawing's own x and y. */
  readonly over: boolean;
  /** How near the curve must come to it, mm. */
  readonly error: number;
}

/** Places in mm, put into the body's frame and fitted. Null when tail and neck end are one place. */
export function tryTracing(
  places: readonly Place[],
  { ends, over, error }: TracingPlacing,
): TracingTrial | null {
  const placed = ends ?? guessedEnds(places);
  if (placed === null) return null;
  const length = rounded(
    Math.hypot(placed.neck[0] - placed.tail[0], placed.neck[1] - placed.tail[1]),
  );
  if (!(length > 0)) return null;
  const laid = framed(places, placed);
  const drawn = over ? laid.map(([x, y]): Place => [x, -y]) : laid;
  return { drawn, length, result: fitOf(drawn, length, error) };
}

function fitOf(drawn: readonly Place[], length: number, error: number): TrialResult {
  const { longest } = tracingLimits;
  if (length < 100 || length > longest) {
    return {
      ok: false,
      why: phrase`This is ${mm(length)} from tail to neck end; a body is ${mm(100)} to ${mm(longest)}. Look at the unit it is drawn in.`,
    };
  }
  const read = halvesIn(drawn, length, error);
  if (!read.ok) return { ok: false, why: tracingFaultPhrase(read.fault) };
  const { apart, ...halves } = read.halves;
  const [bass, treble] = [halves.bass, halves.treble].map((half) => half && fitOfHalf(half, error));
  const fault = [bass, treble].find((fit) => fit?.ok === false);
  if (fault?.ok === false) return fault;
  const tracingOf = (fit: typeof bass): Tracing | null => (fit?.ok ? fit.tracing : null);
  const errors = [bass, treble].map((fit) => (fit?.ok ? fit.error : 0));
  return {
    ok: true,
    bass: tracingOf(bass),
    treble: tracingOf(treble),
    error: Math.max(...errors),
    apart,
  };
}

type HalfFit =
  | { readonly ok: true; readonly tracing: Tracing; readonly error: number }
  | { readonly ok: false; readonly why: Phrase };

function fitOfHalf(half: readonly Place[], error: number): HalfFit {
  const fit = fitted(half, error, tracingLimits.most);
  const tracing = fit.places.map(([x, y]) => [rounded(x), rounded(y)] as const);
  if (fit.error > error) {
    return {
      ok: false,
      why: phrase`No smooth curve comes nearer to this than ${mm(fit.error)}. Allow that much, or draw it smoother.`,
    };
  }
  const flaw = tracingFlaw(tracing);
  return flaw === null
    ? { ok: true, tracing, error: fit.error }
    : { ok: false, why: [`A tracing needs ${flaw}.`] };
}

/** A kept tracing is given in thousandths of a millimetre. */
const rounded = (mm: number): number => Math.round(mm * 1000) / 1000;

/** What is made of the halves drawn: each on its side, one of them mirrored, or one beside the half there is. */
export type HalvesUse = "both" | "bass" | "treble" | "treble alone" | "bass alone";

/** The uses a drawing can be put to, the likeliest first; `now` is what the body has. */
export function usesOf(result: TrialResult, error: number, now: TracedHalves): HalvesUse[] {
  if (!result.ok) return [];
  if (result.bass !== null && result.treble !== null)
    return result.apart > error ? ["both", "bass", "treble"] : ["bass", "treble", "both"];
  const mirrored = result.bass !== null ? "bass" : "treble";
  return [mirrored, "treble alone", ...(now.treble === null ? [] : (["bass alone"] as const))];
}

/** A half that stands beside another may be this much longer or shorter, and is stretched to it, mm. */
const stretchable = 3;

/** The body's halves by such a use; null where the two are not as long as one another. */
export function halvesBy(
  use: HalvesUse,
  { bass, treble }: TracedHalves,
  now: TracedHalves,
): TracedHalves | null {
  const drawn = bass ?? treble;
  switch (use) {
    case "both":
      return { bass, treble };
    case "bass":
      return { bass, treble: null };
    case "treble":
      return { bass: treble, treble: null };
    case "treble alone": {
      const fit = drawn && stretched(drawn, now.bass);
      return fit === null ? null : { bass: now.bass, treble: fit };
    }
    case "bass alone": {
      const fit = drawn && stretched(drawn, now.treble);
      return fit === null ? null : { bass: fit, treble: now.treble };
    }
  }
}

/** A half made as long as the one it stands beside, where there is one. */
function stretched(half: Tracing, beside: Tracing | null): Tracing | null {
  const [own, wanted] = [half, beside ?? half].map((one) => one.at(-1)?.[0] ?? 0);
  if (own === undefined || wanted === undefined || own === wanted) return half;
  if (Math.abs(own - wanted) > stretchable) return null;
  return half.map(([x, y], i) => [i === half.length - 1 ? wanted : rounded((x * wanted) / own), y]);
}

/** The curves the halves make, as the body has them: stated widths where a half is not traced. */
export function outlinesOf(halves: TracedHalves, body: Body): FittedOutline {
  const bass = halves.bass === null ? new BoutOutline(body) : new TracedOutline(halves.bass);
  return { bass, treble: halves.treble === null ? bass : new TracedOutline(halves.treble) };
}
