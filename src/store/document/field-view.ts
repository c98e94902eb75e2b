import { type Field, isWithin } from "../../instrument/field.ts";
import { fieldFigure, parseField } from "../../instrument/field-text.ts";
import { readField } from "../../instrument/field-value.ts";
import type { FieldPath } from "../../instrument/fields.ts";
import { fieldAt, isFieldPath } from "../../instrument/fields.ts";
import type { TargetKind } from "../../instrument/instrument.ts";
import type { Units } from "../../instrument/length.ts";
import { type Phrase, phrase } from "../../instrument/phrase.ts";
import type { Refusal } from "../../profile/outcome.ts";
import { solvedPlan } from "./plan.ts";
import type { State, TypedText } from "./state.ts";

export type Read =
  | { readonly ok: true; readonly value: number | null }
  | { readonly ok: false; readonly why: Phrase };

/** What a text states in a field of an instrument. */
export const readText = (path: FieldPath, kind: TargetKind, typed: TypedText): Read =>
  readTyped(fieldAt(path, kind), typed);

/** What a text states as a field's, or why it states nothing: unreadable, or beyond the field's own limits. */
export function readTyped(field: Field, typed: TypedText): Read {
  const parsed = parseField(typed.text, field, typed.units);
  if (!parsed.ok) return { ok: false, why: [parsed.why] };
  const { value } = parsed;
  if (value === null || isWithin(value, field)) return { ok: true, value };
  const as = field.quantity;
  const [low, high] = [
    { value: field.min, as },
    { value: field.max, as },
  ];
  return { ok: false, why: phrase`This must be from ${low} to ${high}.` };
}

/** What a field shows: the text as typed, or its value where there is none or the text would now be read otherwise. */
export function shownText({ instrument, texts, choices }: State, path: FieldPath): string {
  const { kind } = instrument.target;
  const typed = texts[path];
  if (typed !== undefined && readsAlike(path, kind, typed, choices.units)) return typed.text;
  return fieldFigure(readField(instrument, path), fieldAt(path, kind), choices.units);
}

function readsAlike(path: FieldPath, kind: TargetKind, typed: TypedText, units: Units): boolean {
  if (typed.units === units) return true;
  const then = readText(path, kind, typed);
  const now = readText(path, kind, { text: typed.text, units });
  return then.ok === now.ok && (!then.ok || !now.ok || then.value === now.value);
}

/**
 * Why a field's text is not in the instrument, or why there is no plan where this field is to blame
 * or was changed last; null when all is well. The same object while nothing of it changes.
 */
export function fieldTrouble(
  { instrument, texts, lastChanged }: State,
  path: FieldPath,
): Refusal | null {
  const typed = texts[path];
  const unread = typed === undefined ? null : unreadTrouble(path, instrument.target.kind, typed);
  if (unread !== null) return unread;
  const plan = solvedPlan(instrument);
  return !plan.ok && (plan.refusal.field === path || lastChanged === path) ? plan.refusal : null;
}

const unreadKnown = new WeakMap<TypedText, Refusal>();

function unreadTrouble(path: FieldPath, kind: TargetKind, typed: TypedText): Refusal | null {
  const before = unreadKnown.get(typed);
  if (before !== undefined) return before;
  const read = readText(path, kind, typed);
  if (read.ok) return null;
  const trouble = { field: path, why: read.why, nearest: null };
  unreadKnown.set(typed, trouble);
  return trouble;
}

const unreadFieldsKnown = new WeakMap<State["texts"], readonly FieldPath[]>();

/** The fields whose text states nothing, so that the instrument still has their last readable value. */
export function unreadFields({ texts, instrument }: State): readonly FieldPath[] {
  const before = unreadFieldsKnown.get(texts);
  if (before !== undefined) return before;
  const unread = Object.keys(texts)
    .filter(isFieldPath)
    .filter((path) => {
      const typed = texts[path];
      return typed !== undefined && !readText(path, instrument.target.kind, typed).ok;
    });
  unreadFieldsKnown.set(texts, unread);
  return unread;
}
