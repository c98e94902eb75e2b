import type { DomeMethod } from "../../instrument/dome-fields.ts";
import { readField, writeField } from "../../instrument/field-value.ts";
import type { FieldPath } from "../../instrument/fields.ts";
import { fieldPaths, isFieldPath } from "../../instrument/fields.ts";
import type { Instrument, Target } from "../../instrument/instrument.ts";

/** Changed fields by path; null is the field's own "none". */
type Changes = Readonly<Partial<Record<FieldPath, number | null>>>;

/** A named set of changes to a base instrument. Plain data, kept with the instrument it varies. */
export interface Variant {
  readonly id: string;
  readonly name: string;
  readonly changes: Changes;
  /** What it aims for, where that is not the base's target. */
  readonly target?: Target;
  /** How its flat is made, where that is the base's other way. */
  readonly method?: DomeMethod;
}

/** As many as can be told apart side by side. */
export const mostVariants = 8;

/** Longest name, in UTF-16 units. */
export const longestVariantName = 60;

/** The instrument a variant stands for: the base with the variant's changes and its name. */
export function variantInstrument(base: Instrument, variant: Variant): Instrument {
  const { target = base.target, method = base.dome.method } = variant;
  const aimed = { ...base, target, dome: { ...base.dome, method } };
  return Object.entries(variant.changes).reduce<Instrument>(
    (changed, [path, value]) =>
      isFieldPath(path) && value !== undefined ? writeField(changed, path, value) : changed,
    { ...aimed, name: variant.name },
  );
}

/** What must change in `base` to make `other` of it, names, notes and tolerances apart. */
export function changesBetween(
  base: Instrument,
  other: Instrument,
): Pick<Variant, "changes" | "target" | "method"> {
  const changed = fieldPaths.flatMap((path) => {
    const value = readField(other, path);
    return path !== "target.value" && value !== readField(base, path)
      ? [[path, value] as const]
      : [];
  });
  const { kind, value } = base.target;
  const sameTarget = kind === other.target.kind && value === other.target.value;
  return {
    changes: Object.fromEntries(changed),
    ...(sameTarget ? {} : { target: other.target }),
    ...(base.dome.method === other.dome.method ? {} : { method: other.dome.method }),
  };
}

export interface Promoted {
  readonly base: Instrument;
  readonly variants: readonly Variant[];
}

/**
 * Makes one variant the base. The base keeps its name and id; what it was takes the variant's place
 * in the list, and every other variant still stands for the very same instrument.
 */
export function promote(
  base: Instrument,
  variants: readonly Variant[],
  id: string,
): Promoted | null {
  const chosen = variants.find((variant) => variant.id === id);
  if (chosen === undefined) return null;
  const next = { ...variantInstrument(base, chosen), name: base.name };
  const rebased = variants.map((variant): Variant => {
    if (variant.id === id) {
      return { id, name: nameBefore(chosen.name), ...changesBetween(next, base) };
    }
    const { name } = variant;
    return { id: variant.id, name, ...changesBetween(next, variantInstrument(base, variant)) };
  });
  return { base: next, variants: rebased };
}

const before = "Before ";

/** What the base is called that gave place to a variant of this name: the one that stood before it has its own name again. */
const nameBefore = (name: string): string =>
  name.startsWith(before)
    ? name.slice(before.length)
    : (before + name).slice(0, longestVariantName);
