import type { DomeMethod } from "../../instrument/dome-fields.ts";
import { readField } from "../../instrument/field-value.ts";
import type { FieldPath } from "../../instrument/fields.ts";
import { isFieldPath } from "../../instrument/fields.ts";
import type { Target } from "../../instrument/instrument.ts";
import {
  longestVariantName,
  mostVariants,
  promote,
  type Variant,
  variantInstrument,
} from "../../profile/comparison/variant.ts";
import type { Comparison, Plots } from "./comparison.ts";
import { fieldTakes, setFieldAlone, setTarget, targetAcross, withMethod } from "./edits.ts";
import { solvedPlan } from "./plan.ts";
import { type State, type UndoStep, undoStep } from "./state.ts";

/** Adds a variant that changes nothing yet; none beyond the most that can be told apart. */
export function addVariant(state: State, id: string): State {
  const { variants } = state.comparison;
  if (variants.length >= mostVariants) return state;
  const taken = new Set(variants.map(({ name }) => name));
  const name = letters.map((letter) => `Variant ${letter}`).find((free) => !taken.has(free)) ?? "";
  return withVariants(state, [...variants, { id, name, changes: {} }], undoStep("add a variant"));
}

const letters = [..."ABCDEFGHI"];

export function removeVariant(state: State, id: string): State {
  const others = state.comparison.variants.filter((variant) => variant.id !== id);
  return withVariants(state, others, undoStep("remove a variant"));
}

/** Puts a removed variant back where it stood. */
export function restoreVariant(state: State, variant: Variant, at: number): State {
  const { variants } = state.comparison;
  if (variants.length >= mostVariants) return state;
  const all = [...variants.slice(0, at), variant, ...variants.slice(at)];
  return withVariants(state, all, undoStep("restore a variant"));
}

export const nameVariant = (state: State, id: string, name: string): State =>
  withVariant(state, id, undoStep("name a variant", id), (variant) => ({
    ...variant,
    name: name.slice(0, longestVariantName),
  }));

/** Sets a field of one variant; at the base's own value it is no change. Braces arched as the dish go with it. */
export function changeVariant(
  state: State,
  id: string,
  path: FieldPath,
  value: number | null,
): State {
  const { kind } = state.instrument.target;
  if (path === "target.value" || !fieldTakes(path, kind, value)) return state;
  const changed = (variant: Variant, at: FieldPath): Variant => {
    const { [at]: _, ...rest } = variant.changes;
    const same = readField(state.instrument, at) === value;
    return { ...variant, changes: same ? rest : { ...rest, [at]: value } };
  };
  return withVariant(state, id, undoStep("change a variant", `${id} ${path}`), (variant) => {
    const { dishRadius, braceRadius } = variantInstrument(state.instrument, variant).dome;
    const together = path === "dome.dishRadius" && braceRadius === dishRadius;
    return changed(together ? changed(variant, "dome.braceRadius") : variant, path);
  });
}

/** Lets one variant aim for something else than the base; null: for the same. */
export function aimVariant(state: State, id: string, target: Target | null): State {
  if (target !== null && !fieldTakes("target.value", target.kind, target.value)) return state;
  return withVariant(state, id, undoStep("aim a variant", id), ({ target: _, ...variant }) =>
    target === null ? variant : { ...variant, target },
  );
}

/** Makes the flat of one variant the other way, asked for the same saddle where it aimed for a part that this way has not. */
export function switchVariantMethod(state: State, id: string, method: DomeMethod): State {
  const { instrument: base } = state;
  return withVariant(state, id, undoStep("change a variant's method", id), (variant) => {
    const instrument = variantInstrument(base, variant);
    if (instrument.dome.method === method) return variant;
    const plan = solvedPlan(instrument);
    const across = targetAcross(instrument, plan.ok ? plan.profile : null);
    const { method: _, target: __, ...rest } = variant;
    return {
      ...rest,
      ...(across === base.target ? {} : { target: across }),
      ...(method === base.dome.method ? {} : { method }),
    };
  });
}

/** Makes one variant the base; what the base was takes its place in the list. */
export function makeBase(state: State, id: string): State {
  const { instrument, comparison } = state;
  const promoted = promote(instrument, comparison.variants, id);
  const chosen = comparison.variants.find((variant) => variant.id === id);
  if (promoted === null || chosen === undefined) return state;
  const step = undoStep("make a variant the base");
  const changed = Object.entries(chosen.changes).reduce(
    (so, [path, value]) =>
      isFieldPath(path) && value !== undefined ? setFieldAlone(so, path, value, step) : so,
    withMethod(state, promoted.base.dome.method),
  );
  const { kind, value } = promoted.base.target;
  return withVariants(setTarget(changed, kind, value, step), promoted.variants, step);
}

/** Changes what is plotted. That is no edit: undo leaves it as it is. */
export const plot = (state: State, change: (plots: Plots) => Partial<Plots>): State => ({
  ...state,
  comparison: { ...state.comparison, ...change(state.comparison) },
});

function withVariant(
  state: State,
  id: string,
  step: UndoStep,
  edit: (variant: Variant) => Variant,
): State {
  const variants = state.comparison.variants.map((one) => (one.id === id ? edit(one) : one));
  return withVariants(state, variants, step);
}

const withVariants = (state: State, variants: Comparison["variants"], step: UndoStep): State => ({
  ...state,
  comparison: { ...state.comparison, variants },
  undoStep: step,
});
