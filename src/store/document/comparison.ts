import type { FieldPath } from "../../instrument/field.ts";
import { readField } from "../../instrument/fields.ts";
import type { Instrument, Target } from "../../instrument/instrument.ts";
import type { OutcomeKey } from "../../profile/comparison/outcomes.ts";
import type { MovedOutcome } from "../../profile/comparison/sensitivity.ts";
import { mostVariants, type Variant } from "../../profile/comparison/variant.ts";
import type { Shape } from "../../profile/uncertainty/monte-carlo.ts";

/** What stays as it is while inputs vary: the plan's target, met anew by another shim, or the shim itself. */
type Hold = "target" | "shim";

/** All that is chosen in the Compare view for one instrument. Plain data, to be kept beside it. */
export interface Comparison {
  readonly variants: readonly Variant[];
  readonly sweep: { readonly path: FieldPath; readonly outcome: OutcomeKey; readonly hold: Hold };
  readonly map: {
    readonly across: FieldPath;
    readonly up: FieldPath;
    readonly outcome: OutcomeKey;
    readonly hold: Hold;
  };
  readonly moved: MovedOutcome;
  readonly sure: { readonly shape: Shape; readonly draws: number; readonly seed: number };
  readonly family: {
    /** Ids of the instruments chosen; null is all there are. */
    readonly chosen: readonly string[] | null;
    readonly contact: "own" | "best";
    /** The shim at hand, mm. */
    readonly shim: number | null;
  };
}

export const firstComparison: Comparison = {
  variants: [],
  sweep: { path: "target.value", outcome: "saddleExposure", hold: "shim" },
  map: { across: "target.value", up: "dome.dishRadius", outcome: "saddleExposure", hold: "shim" },
  moved: "saddleExposure",
  sure: { shape: "normal", draws: 100_000, seed: 1 },
  family: { chosen: null, contact: "own", shim: null },
};

export const drawCounts = [10_000, 100_000, 1_000_000, 5_000_000] as const;

/** Adds a variant that changes nothing yet; none beyond the most that can be told apart. */
export function addVariant(comparison: Comparison, id: string): Comparison {
  const { variants } = comparison;
  if (variants.length >= mostVariants) return comparison;
  const taken = new Set(variants.map(({ name }) => name));
  const name = letters.map((letter) => `Variant ${letter}`).find((free) => !taken.has(free)) ?? "";
  return { ...comparison, variants: [...variants, { id, name, changes: {} }] };
}

const letters = [..."ABCDEFGHI"];

export function removeVariant(comparison: Comparison, id: string): Comparison {
  return { ...comparison, variants: comparison.variants.filter((variant) => variant.id !== id) };
}

/** Puts a removed variant back where it stood. */
export function restoreVariant(comparison: Comparison, variant: Variant, at: number): Comparison {
  const { variants } = comparison;
  if (variants.length >= mostVariants) return comparison;
  return { ...comparison, variants: [...variants.slice(0, at), variant, ...variants.slice(at)] };
}

export const nameVariant = (comparison: Comparison, id: string, name: string): Comparison =>
  edited(comparison, id, (variant) => ({ ...variant, name: name.slice(0, longestName) }));

const longestName = 60;

/** Sets a field of one variant; at the base's own value it is no change. */
export function changeVariant(
  comparison: Comparison,
  base: Instrument,
  id: string,
  path: FieldPath,
  value: number | null,
): Comparison {
  return edited(comparison, id, (variant) => {
    const { [path]: _, ...rest } = variant.changes;
    const same = readField(base, path) === value;
    return { ...variant, changes: same ? rest : { ...rest, [path]: value } };
  });
}

/** Lets one variant aim for something else than the base; null: for the same. */
export const aimVariant = (comparison: Comparison, id: string, target: Target | null): Comparison =>
  edited(comparison, id, ({ target: _, ...variant }) =>
    target === null ? variant : { ...variant, target },
  );

function edited(
  comparison: Comparison,
  id: string,
  edit: (variant: Variant) => Variant,
): Comparison {
  const variants = comparison.variants.map((variant) =>
    variant.id === id ? edit(variant) : variant,
  );
  return { ...comparison, variants };
}
