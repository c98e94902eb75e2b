import type { DomeMethod } from "../../instrument/dome-fields.ts";
import { isWithin } from "../../instrument/field.ts";
import { readField, writeField } from "../../instrument/field-value.ts";
import type { FieldPath } from "../../instrument/fields.ts";
import { fieldAt } from "../../instrument/fields.ts";
import { withVersion } from "../../instrument/file-version.ts";
import type { Instrument, Target, TargetKind } from "../../instrument/instrument.ts";
import { anglePart } from "../../instrument/outcome-fields.ts";
import { textLimits } from "../../instrument/text-limits.ts";
import type { Variant } from "../../profile/comparison/variant.ts";
import { type Profile, targetIn } from "../../profile/outcome.ts";
import { readText } from "./field-view.ts";
import { hasPlan, shownPlan, solvedPlan } from "./plan.ts";
import { newDocument, type State, type UndoStep, undoStep } from "./state.ts";
import { stepped } from "./step.ts";
import { beganAt, documentIn } from "./undo.ts";

/*
 * An edit to what an instrument's file could not hold is none: the state is given back as it was. Fields say so
 * beside themselves before it comes to that.
 */

/** Keeps the text as typed, and takes its value into the instrument where it states one. */
export function typeField(state: State, path: FieldPath, text: string): State {
  const typed = { text, units: state.choices.units };
  const read = readText(path, state.instrument.target.kind, typed);
  const step = undoStep("type", path);
  const after = read.ok ? withChange(state, path, read.value, step) : state;
  return {
    ...after,
    texts: { ...after.texts, [path]: typed },
    lastChanged: path,
    undoStep: step,
  };
}

/** Moves a number by whole steps, to round figures in the units shown. A field that is null stays so. */
export function stepField(state: State, path: FieldPath, steps: number): State {
  const { instrument, choices } = state;
  const value = readField(instrument, path);
  if (value === null) return state;
  const field = fieldAt(path, instrument.target.kind);
  return setField(state, path, stepped(value, field, choices.units, steps), undoStep("step", path));
}

export function setField(
  state: State,
  path: FieldPath,
  value: number | null,
  step: UndoStep = undoStep("set", path),
): State {
  if (!fieldTakes(path, state.instrument.target.kind, value)) return state;
  return asSet(withChange(state, path, value, step), path, step);
}

/** Sets a field and nothing that goes with it. */
export const setFieldAlone = (
  state: State,
  path: FieldPath,
  value: number | null,
  step: UndoStep,
): State =>
  fieldTakes(path, state.instrument.target.kind, value)
    ? asSet(withValue(state, path, value), path, step)
    : state;

const asSet = (after: State, path: FieldPath, step: UndoStep): State => ({
  ...after,
  texts: without(after.texts, path),
  lastChanged: path,
  undoStep: step,
});

/** Makes a field null ("none", "flat"), or gives it back the number it had. */
export function setNone(state: State, path: FieldPath, none: boolean): State {
  const field = fieldAt(path, state.instrument.target.kind);
  return setField(state, path, none ? null : (state.lastNumbers[path] ?? field.default));
}

/** Aims for another outcome, at the value it has now: the design stays where it is. */
export function switchTarget(state: State, kind: TargetKind): State {
  if (kind === state.instrument.target.kind) return state;
  const plan = shownPlan(state);
  if (plan === null) return state;
  const value = targetIn(plan.profile, kind);
  return value === null ? state : setTarget(state, kind, value);
}

/**
 * Makes the seat flat the other way. What the shim or the spacer was stated for is no target of it: the
 * saddle is then, as it stands, so that both ways are asked for the same.
 */
export function switchMethod(state: State, method: DomeMethod): State {
  const { instrument } = state;
  if (method === instrument.dome.method) return state;
  const target = targetAcross(instrument, shownPlan(state)?.profile ?? null);
  const after = withMethod({ ...state, instrument: { ...instrument, target } }, method);
  return {
    ...after,
    comparison: { ...after.comparison, variants: after.comparison.variants.map(asBase) },
    texts: without(state.texts, "target.value"),
    lastChanged: "target.value",
    undoStep: undoStep("change the method"),
  };
}

/** What an instrument aims for once its flat is made the other way; `profile` is the one it has, null for none. */
export function targetAcross({ dome, target }: Instrument, profile: Profile | null): Target {
  const isPart = target.kind === anglePart[dome.method];
  return isPart && profile !== null
    ? { kind: "saddleExposure", value: profile.saddleExposure }
    : target;
}

/** A variant of the way that its base goes now states it no more; one that went with its base and aims for the part of the former aims for what its base does. */
function asBase(variant: Variant): Variant {
  const { target, method, ...rest } = variant;
  if (method !== undefined) return target === undefined ? rest : { ...rest, target };
  return target?.kind === "shim" || target?.kind === "spacer" ? rest : variant;
}

/** Makes the flat the other way, and changes nothing with it. */
export const withMethod = (state: State, method: DomeMethod): State =>
  withInstrument(state, {
    ...state.instrument,
    dome: { ...state.instrument.dome, method },
  });

/** Aims for `value` of an outcome. */
export function setTarget(
  state: State,
  kind: TargetKind,
  value: number,
  step: UndoStep = undoStep("aim for", kind),
): State {
  if (!fieldTakes("target.value", kind, value)) return state;
  return {
    ...withInstrument(state, { ...state.instrument, target: { kind, value } }),
    texts: without(state.texts, "target.value"),
    lastChanged: "target.value",
    undoStep: step,
  };
}

export function rename(state: State, name: string): State {
  const kept = name.slice(0, textLimits.name);
  return {
    ...withInstrument(state, { ...state.instrument, name: kept }),
    undoStep: undoStep("rename", "all"),
  };
}

export function writeNotes(state: State, notes: string): State {
  const kept = notes.slice(0, textLimits.notes);
  return {
    ...withInstrument(state, { ...state.instrument, notes: kept }),
    undoStep: undoStep("write the notes", "all"),
  };
}

/** Makes the open instrument a design to make others from, or one instrument again. */
export const markModel = (state: State, isModel: boolean): State => ({
  ...state,
  isModel,
  undoStep: undoStep(isModel ? "mark as a model" : "no longer a model"),
});

/** Opens another instrument, under an id of its own; what was open can be put back. */
export function startFrom(state: State, instrument: Instrument, id: string): State {
  const next = withVersion({ ...instrument, id });
  if (!solvedPlan(next).ok) return state;
  return {
    ...state,
    ...newDocument(next),
    previous: documentIn(state),
    lastChanged: null,
    undoStep: undoStep("open", id),
  };
}

export function reopenPrevious(state: State): State {
  if (state.previous === null) return state;
  return {
    ...state,
    ...state.previous,
    previous: documentIn(state),
    lastChanged: null,
    undoStep: undoStep("put back"),
  };
}

/** Whether a field may hold a value, of an instrument whose target is of `kind`. */
export function fieldTakes(path: FieldPath, kind: TargetKind, value: number | null): boolean {
  const field = fieldAt(path, kind);
  return value === null ? field.nullWord !== undefined : isWithin(value, field);
}

/**
 * A field as a builder changes it: braces arched as the dish when this step began go with it. Where
 * that gives no plan because of the dish, or the dish alone gives one, they stay as they were: then
 * the dish is refused alone, and what is said to work in it does.
 */
function withChange(state: State, path: FieldPath, value: number | null, step: UndoStep): State {
  const alone = withValue(state, path, value);
  const { dishRadius, braceRadius } = beganAt(state, step).lastGood.dome;
  if (path !== "dome.dishRadius" || braceRadius !== dishRadius) return alone;
  const both = withValue(alone, "dome.braceRadius", value);
  const plan = solvedPlan(both.instrument);
  const spheres = ["dome.dishRadius", "dome.braceRadius"];
  const refused = !plan.ok && (spheres.includes(plan.refusal.field) || hasPlan(alone.instrument));
  return refused ? alone : { ...both, texts: without(both.texts, "dome.braceRadius") };
}

function withValue(state: State, path: FieldPath, value: number | null): State {
  const before = readField(state.instrument, path);
  const after = withInstrument(state, writeField(state.instrument, path, value));
  return value === null && before !== null
    ? { ...after, lastNumbers: { ...after.lastNumbers, [path]: before } }
    : after;
}

function withInstrument(state: State, changed: Instrument): State {
  const instrument = withVersion(changed);
  const lastGood = solvedPlan(instrument).ok ? instrument : state.lastGood;
  return { ...state, instrument, lastGood };
}

function without(texts: State["texts"], path: FieldPath): State["texts"] {
  if (texts[path] === undefined) return texts;
  const { [path]: _, ...rest } = texts;
  return rest;
}
