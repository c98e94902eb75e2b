import { readField, writeField } from "../../instrument/field-value.ts";
import type { FieldPath } from "../../instrument/fields.ts";
import { fieldAt, fieldPaths } from "../../instrument/fields.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import { deg, mm, type Phrase, type Quantity } from "../../instrument/phrase.ts";
import { givensOf } from "../givens.ts";
import { type ChainKey, chainOnPart } from "../saddle-chain.ts";
import { slopeAt, stepOf } from "../uncertainty/perturbed-model.ts";
import { errorsActOn, tolerancesOf } from "../uncertainty/tolerances.ts";

/** How much one measure of the built instrument moves an outcome, the shim staying as it is. */
export interface Sensitivity {
  readonly path: FieldPath;
  readonly label: string;
  /** Change of the outcome for each mm or degree of the measure. */
  readonly slope: number;
  /** One of what a builder counts the measure in: 1 mm, 1 degree, or 1 ft of a radius. */
  readonly unit: Quantity;
  readonly byUnit: number;
  /** The measure's tolerance, and the change when it is that much more; 0 where none is stated. */
  readonly plusMinus: number;
  readonly byTolerance: number;
  /** The same in words. */
  readonly says: Phrase;
}

/** The outcomes a sensitivity is told of, and what they are called in a sentence. */
export const movedOutcomes = {
  saddleExposure: { name: "the saddle", show: mm },
  bridgeClearance: { name: "the fret plane over the bridge", show: mm },
  stringHeight: { name: "the strings over the top", show: mm },
  pitch: { name: "the pitch", show: deg },
  breakAngle: { name: "the break angle", show: deg },
} as const satisfies Partial<Record<ChainKey, { name: string; show: (value: number) => Quantity }>>;

export type MovedOutcome = keyof typeof movedOutcomes;

/**
 * Every measure that moves an outcome, the one whose tolerance moves it most first. The shim (or spacer) is fixed
 * at the planned one: what is measured wrong at the bench no longer changes it. Its own thickness is
 * among the measures, as `target.value`. Null where the instrument has no plan.
 */
export function sensitivitiesOf(
  instrument: Instrument,
  outcome: MovedOutcome,
): readonly Sensitivity[] | null {
  const built = errorsActOn(instrument);
  if (built === null || !givensOf(built).ok) return null;
  const plusMinus = new Map(tolerancesOf(built));
  return fieldPaths
    .flatMap((path) => sensitivityOf(built, path, outcome, plusMinus.get(path) ?? 0) ?? [])
    .sort(
      (a, b) =>
        Math.abs(b.byTolerance) - Math.abs(a.byTolerance) ||
        Math.abs(b.byUnit) - Math.abs(a.byUnit),
    );
}

/** Slopes below this are rounding: no measure that matters moves a height by so little. */
const nothing = 1e-10;

function sensitivityOf(
  built: Instrument,
  path: FieldPath,
  outcome: MovedOutcome,
  plusMinus: number,
): Sensitivity | null {
  const { label, quantity, usual } = fieldAt(path, built.target.kind);
  const value = readField(built, path);
  if (value === null || quantity === "count" || path.startsWith("windows.")) return null;
  const slope = slopeAt(
    (changed) => outcomeWith(built, path, changed, outcome),
    value,
    stepOf(path, value),
  );
  if (!(Math.abs(slope) > nothing)) return null;
  const unit: Quantity = { value: usual === "ft" ? 304.8 : 1, as: quantity };
  const byTolerance = slope * plusMinus;
  const off: Quantity = plusMinus > 0 ? { value: plusMinus, as: quantity } : unit;
  return {
    path,
    label,
    slope,
    unit,
    byUnit: slope * unit.value,
    plusMinus,
    byTolerance,
    says: sentence(label, off, outcome, slope * off.value),
  };
}

function outcomeWith(
  built: Instrument,
  path: FieldPath,
  value: number,
  outcome: MovedOutcome,
): number {
  const changed = writeField(built, path, value);
  const set = givensOf(changed);
  const chain = set.ok ? chainOnPart(set.givens, changed.target.value) : null;
  return chain === null ? Number.NaN : chain[outcome];
}

function sentence(label: string, off: Quantity, outcome: MovedOutcome, moved: number): Phrase {
  const { name, show } = movedOutcomes[outcome];
  const verb = moved > 0 ? "raises" : "lowers";
  const tiny = 0.01;
  return Math.abs(moved) < tiny / 2
    ? [label, " ", off, " more ", verb, ` ${name} by less than `, show(tiny), "."]
    : [label, " ", off, " more ", verb, ` ${name} by `, show(Math.abs(moved)), "."];
}
