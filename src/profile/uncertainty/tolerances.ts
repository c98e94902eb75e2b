import { readField } from "../../instrument/field-value.ts";
import type { FieldPath } from "../../instrument/fields.ts";
import { appliesTo, fieldAt, fieldPaths } from "../../instrument/fields.ts";
import type { Instrument, Tolerances } from "../../instrument/instrument.ts";
import { anglePart } from "../../instrument/outcome-fields.ts";
import { contactOf, givensOf } from "../givens.ts";
import { solve } from "../solve.ts";

/**
 * The instrument as it is built: the shim (or spacer) is the planned one, cut and laid in place, and no
 * longer answers to what the other measures turn out to be. Its `target.value` is that part's thickness,
 * mm. Null where there is no plan.
 */
export function withPartFixed(instrument: Instrument): Instrument | null {
  const kind = anglePart[instrument.dome.method];
  if (instrument.target.kind === kind) return instrument;
  const set = givensOf(instrument);
  if (!set.ok) return null;
  const solution = solve(set.givens);
  if (!solution.ok) return null;
  return { ...instrument, target: { kind, value: solution.solution.part } };
}

/**
 * What errors act on: the instrument as it is built, its tail block deep enough for any of them. An
 * error in the contact is one in the place the rim rests on, which is as likely to come out nearer
 * as farther, also where that place is the block's own edge.
 */
export function errorsActOn(instrument: Instrument): Instrument | null {
  const built = withPartFixed(instrument);
  if (built === null) return null;
  const tailBlockDepth = fieldAt("shim.tailBlockDepth", "shim").max;
  return { ...built, shim: { contact: contactOf(built), tailBlockDepth } };
}

/** How closely a shim's or spacer's thickness is held unless stated otherwise, plus or minus mm; common practice, no source. */
const partTolerance = 0.1;

/** Whether errors in this field can move the saddle or the pitch of a built instrument. */
function perturbs(path: FieldPath, { dome }: Instrument): boolean {
  if (!appliesTo(path, dome.method)) return false;
  return !path.startsWith("windows.") && fieldAt(path, "shim").quantity !== "count";
}

/**
 * The plus-or-minus of every measure that has one, in a builder's order. `target.value` is the shim's or spacer's
 * thickness as built, mm, whatever the plan aims for.
 */
export function tolerancesOf(
  built: Instrument,
): readonly (readonly [path: FieldPath, plusMinus: number])[] {
  const stated: Tolerances = { "target.value": partTolerance, ...built.tolerances };
  return fieldPaths.flatMap((path) => {
    const plusMinus = stated[path] ?? 0;
    const has = perturbs(path, built) && readField(built, path) !== null;
    return has && plusMinus > 0 ? [[path, plusMinus] as const] : [];
  });
}

/**
 * ISO 2768-1, general tolerances for linear sizes, ± mm, by the size they hold up to (as in a
 * published extract; the rows under 6 mm and the coarser classes from memory).
 */
const general = {
  fine: [
    [6, 0.05],
    [30, 0.1],
    [120, 0.15],
    [400, 0.2],
    [1000, 0.3],
    [2000, 0.5],
  ],
  medium: [
    [6, 0.1],
    [30, 0.2],
    [120, 0.3],
    [400, 0.5],
    [1000, 0.8],
    [2000, 1.2],
  ],
} as const;

export type GeneralClass = keyof typeof general;

/** ISO 2768-1's plus-or-minus for a size in mm; null beyond 2 m, where its table for these classes is not for guitars. */
export function generalTolerance(size: number, name: GeneralClass): number | null {
  return general[name].find(([upTo]) => Math.abs(size) <= upTo)?.[1] ?? null;
}

/**
 * An instrument whose stated tolerances on lengths are those of an ISO 2768-1 class. Radii and angles
 * keep their own: the class speaks of linear sizes, and a dish is not cut to it.
 */
export function withGeneralTolerances(instrument: Instrument, name: GeneralClass): Instrument {
  const built = withPartFixed(instrument) ?? instrument;
  const changed = tolerancesOf(built).map(([path, plusMinus]) => {
    const size = readField(built, path) ?? 0;
    const linear = fieldAt(path, "shim").quantity === "length";
    return [path, (linear ? generalTolerance(size, name) : null) ?? plusMinus] as const;
  });
  return {
    ...instrument,
    tolerances: { ...instrument.tolerances, ...Object.fromEntries(changed) },
  };
}
