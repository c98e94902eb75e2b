import { useMemo, useState } from "react";
import type { Instrument } from "../../instrument/instrument.ts";
import { type Variant, variantInstrument } from "../../profile/comparison/variant.ts";
import type { ProfileResult } from "../../profile/outcome.ts";
import type { Comparison } from "../../store/document/comparison.ts";
import { solvedPlan } from "../../store/document/plan.ts";
import { useRimwright } from "../store-context.ts";

/** What of an instrument its plan does not follow from. */
const besides: readonly string[] = ["name", "notes"] satisfies readonly (keyof Instrument)[];

function sameNumbers(a: Instrument, b: Instrument): boolean {
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]) as Set<keyof Instrument>;
  return [...keys].every((key) => besides.includes(key) || a[key] === b[key]);
}

/** The same object while only its name or its notes change, so that work on it is not begun anew. */
export function useNumbers(instrument: Instrument): Instrument {
  const [kept, setKept] = useState(instrument);
  if (kept === instrument || sameNumbers(kept, instrument)) return kept;
  setKept(instrument);
  return instrument;
}

/** The open instrument's variants, and what is plotted of them. */
export const useComparison = (): Comparison => useRimwright((state) => state.comparison);

/** The base or one variant, with its plan. */
export interface Compared {
  /** Null for the base. */
  readonly variant: Variant | null;
  readonly name: string;
  readonly instrument: Instrument;
  readonly plan: ProfileResult;
}

/** The base first, then its variants; each the same object while nothing of it changes, so that its plan is found once. */
export function useCompared(): readonly Compared[] {
  const base = useNumbers(useRimwright((state) => state.instrument));
  const { variants } = useComparison();
  return useMemo(
    () => [
      { variant: null, name: "Base", instrument: base, plan: solvedPlan(base) },
      ...variants.map((variant) => comparedOf(base, variant)),
    ],
    [base, variants],
  );
}

const known = new WeakMap<Instrument, WeakMap<Variant, Compared>>();

function comparedOf(base: Instrument, variant: Variant): Compared {
  const ofBase = known.get(base) ?? new WeakMap<Variant, Compared>();
  known.set(base, ofBase);
  const before = ofBase.get(variant);
  if (before !== undefined) return before;
  const instrument = variantInstrument(base, variant);
  const name = variant.name === "" ? "Unnamed" : variant.name;
  const compared = { variant, name, instrument, plan: solvedPlan(instrument) };
  ofBase.set(variant, compared);
  return compared;
}
