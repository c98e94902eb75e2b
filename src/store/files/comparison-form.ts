import * as z from "zod/mini";
import type { FieldPath } from "../../instrument/fields.ts";
import { fieldPaths, fields } from "../../instrument/fields.ts";
import { targetKinds } from "../../instrument/outcome-fields.ts";
import { outcomeKeys } from "../../profile/comparison/outcomes.ts";
import { type MovedOutcome, movedOutcomes } from "../../profile/comparison/sensitivity.ts";
import { mostVariants, type Variant } from "../../profile/comparison/variant.ts";
import {
  type Comparison,
  drawCounts,
  firstComparison,
  type Plots,
} from "../document/comparison.ts";
import { asJson } from "../document/json.ts";

const text = z.string().check(z.maxLength(200));
const path = z.enum(fieldPaths);
const outcome = z.enum(outcomeKeys);
const hold = z.enum(["target", "shim"]);
const number = z.number().check(z.overwrite((value) => value + 0));

const moved = Object.keys(movedOutcomes) as readonly MovedOutcome[];

const change = (of: Exclude<FieldPath, "target.value">) => {
  const { min, max, quantity, nullWord } = fields[of];
  const kind = quantity === "count" ? z.int() : number;
  const bounded = kind.check(z.minimum(min), z.maximum(max));
  return z.exactOptional(nullWord === undefined ? bounded : z.nullable(bounded));
};

/** A variant's changed fields, each within its own limits. Its target stands apart. */
const changes = z.strictObject(
  Object.fromEntries(
    fieldPaths.flatMap((of) => (of === "target.value" ? [] : [[of, change(of)] as const])),
  ),
);

const target = z.object({ kind: z.enum(targetKinds), value: number });

const variant = z.object({ id: text, name: text, changes, target: z.exactOptional(target) });

/** A comparison in a file: refused where the page itself would make do with what it can read. */
export const comparisonSchema = z.object({
  variants: z.array(variant).check(z.maxLength(mostVariants)),
  sweep: z.object({ path, outcome, hold }),
  map: z.object({ across: path, up: path, outcome, hold }),
  moved: z.enum(moved),
  sure: z.object({
    shape: z.enum(["normal", "rectangular"]),
    draws: z.literal([...drawCounts]),
    seed: z.int(),
  }),
  family: z.object({
    chosen: z.nullable(z.array(text).check(z.maxLength(20_000))),
    contact: z.enum(["own", "best"]),
    shim: z.nullable(number),
  }),
}) satisfies z.ZodMiniType<Comparison>;

/** A comparison as the page stored it: what its form does not allow is as it is at first. */
export function readComparison(json: unknown): Comparison {
  const { variants, ...plots } = asJson(json);
  const { variants: _, ...forms } = comparisonSchema.shape;
  const read = orFirst(z.object(forms), firstComparison).parse(plots);
  return { ...(read as Plots), variants: readVariants(variants) };
}

/** A form each part of which is the first one's where it does not fit. */
function orFirst(form: z.core.$ZodType, first: unknown): z.ZodMiniType {
  if (!(form instanceof z.ZodMiniObject)) return z.catch(form, first);
  const shape: Readonly<Record<string, z.core.$ZodType>> = form.shape;
  const parts = Object.entries(shape).map(
    ([key, part]) => [key, orFirst(part, asJson(first)[key])] as const,
  );
  return z.catch(z.object(Object.fromEntries(parts)), { ...asJson(first) });
}

/** The variants that can be read, without the changes and the target that cannot. */
function readVariants(json: unknown): readonly Variant[] {
  if (!Array.isArray(json)) return [];
  return json.slice(0, mostVariants).flatMap((one) => {
    const { id, name, changes: stated, target: aim } = asJson(one);
    const own = Object.entries(asJson(stated)).filter(
      ([path, value]) => changes.safeParse({ [path]: value }).success,
    );
    const aimed = target.safeParse(aim).success ? { target: aim } : {};
    const read = variant.safeParse({ id, name, changes: Object.fromEntries(own), ...aimed });
    return read.success ? [read.data] : [];
  });
}
