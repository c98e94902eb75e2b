import type { FieldPath } from "../../instrument/fields.ts";
import type { OutcomeKey } from "../../profile/comparison/outcomes.ts";
import type { MovedOutcome } from "../../profile/comparison/sensitivity.ts";
import type { Variant } from "../../profile/comparison/variant.ts";
import type { Shape } from "../../profile/uncertainty/monte-carlo.ts";

/** What stays as it is while inputs vary: the plan's target, met anew by another shim, or the shim itself. */
type Hold = "target" | "shim";

/** What is plotted in the Compare view. */
export interface Plots {
  readonly sweep: { readonly path: FieldPath; readonly outcome: OutcomeKey; readonly hold: Hold };
  readonly map: {
    readonly across: FieldPath;
    readonly up: FieldPath;
    readonly outcome: OutcomeKey;
    readonly hold: Hold;
  };
  readonly moved: MovedOutcome;
  readonly sure: { readonly shape: Shape; readonly draws: number; readonly seed: number };
}

/** An instrument's variants, and what is plotted of them. Plain data, part of its document. */
export interface Comparison extends Plots {
  readonly variants: readonly Variant[];
}

export const firstComparison: Comparison = {
  variants: [],
  sweep: { path: "target.value", outcome: "saddleExposure", hold: "shim" },
  map: { across: "target.value", up: "dome.dishRadius", outcome: "saddleExposure", hold: "shim" },
  moved: "saddleExposure",
  sure: { shape: "normal", draws: 100_000, seed: 1 },
};

export const drawCounts = [10_000, 100_000, 1_000_000, 5_000_000] as const;
