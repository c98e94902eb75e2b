import { readField, writeField } from "../../instrument/field-value.ts";
import type { FieldPath } from "../../instrument/fields.ts";
import { fieldAt, isFieldPath } from "../../instrument/fields.ts";
import type { Instrument, Range } from "../../instrument/instrument.ts";
import { mm, type Phrase, phrase, roundedDown, roundedUp } from "../../instrument/phrase.ts";
import type { Problem } from "../../instrument/problem.ts";
import { relationProblems } from "../../instrument/relations.ts";
import { nearestWorking } from "../../profile/nearest.ts";
import type { Profile, ProfileResult, Refusal } from "../../profile/outcome.ts";
import { hasProfile, profileOf } from "../../profile/profile.ts";
import type { Document } from "./state.ts";

const known = new WeakMap<Instrument, ProfileResult>();

/** `profileOf`, remembered for each instrument. An instrument whose numbers do not go together is refused here. */
export function solvedPlan(instrument: Instrument): ProfileResult {
  const before = known.get(instrument);
  if (before !== undefined) return before;
  const refusal = unrelated(instrument);
  const plan: ProfileResult = refusal === null ? profileOf(instrument) : { ok: false, refusal };
  known.set(instrument, plan);
  return plan;
}

/** Whether `solvedPlan` gives a plan, found without working it out: a hundred times quicker. */
export const hasPlan = (instrument: Instrument): boolean =>
  relationProblems(instrument).length === 0 && hasProfile(instrument);

export interface ShownPlan {
  /** The instrument drawn, with its profile. */
  readonly instrument: Instrument;
  readonly profile: Profile;
  /** Why it is not the instrument the fields state; null when it is. */
  readonly refusal: Refusal | null;
}

const knownShown = new WeakMap<Instrument, ShownPlan>();

/**
 * What is drawn: the present instrument's plan, or the last one that worked; null only if that fails
 * too. The same object for the same two instruments, so that what is drawn need not be drawn again.
 */
export function shownPlan({
  instrument,
  lastGood,
}: Pick<Document, "instrument" | "lastGood">): ShownPlan | null {
  const plan = solvedPlan(instrument);
  const drawn = plan.ok ? instrument : lastGood;
  const before = knownShown.get(instrument);
  if (before?.instrument === drawn) return before;
  const drawnPlan = solvedPlan(drawn);
  if (!drawnPlan.ok) return null;
  const refusal = plan.ok ? null : plan.refusal;
  const shown = { instrument: drawn, profile: drawnPlan.profile, refusal };
  knownShown.set(instrument, shown);
  return shown;
}

/** Numbers that are each right alone but do not go together, in the form of a refusal. */
function unrelated(instrument: Instrument): Refusal | null {
  const problem = relationProblems(instrument)[0];
  if (problem === undefined || !isFieldPath(problem.path)) return null;
  return relationRefusal(instrument, problem.path, problem.range);
}

function relationRefusal(
  instrument: Instrument,
  field: FieldPath,
  range: Problem["range"],
): Refusal {
  const { tracing, tracingTreble } = instrument.body;
  const why =
    (tracing ?? tracingTreble) !== undefined && range !== undefined && field === "body.length"
      ? phrase`The traced outline is ${mm(range[0])} long, and the body with it. Take the tracing off in Rim to change it.`
      : field.startsWith("body.")
        ? phrase`Tail, lower bout, waist, upper bout and neck end must follow one another along the body.`
        : phrase`The most of a window must not be less than its least.`;
  if (range === undefined) return { field, why, nearest: null };
  const own = readField(instrument, field) ?? range[0];
  const moved = writeField(instrument, field, Math.min(range[1], Math.max(range[0], own)));
  const nearest = hasPlan(moved)
    ? readField(moved, field)
    : nearestWorking(moved, field, hasPlan, range);
  return { field, why, nearest };
}

/** "… to …", the ends rounded inward so that they can be typed as shown. */
export function rangePhrase({ target }: Instrument, field: FieldPath, [low, high]: Range): Phrase {
  const as = fieldAt(field, target.kind).quantity;
  return phrase`${roundedUp({ value: low, as })} to ${roundedDown({ value: high, as })}`;
}
