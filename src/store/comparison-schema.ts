import * as z from "zod/mini";
import type { FieldPath } from "../instrument/field.ts";
import { fieldPaths, fields } from "../instrument/fields.ts";
import { targetKinds } from "../instrument/instrument.ts";
import { type MovedOutcome, movedOutcomes } from "../profile/sensitivity.ts";
import { outcomeKeys } from "../profile/sweep-outcome.ts";
import { mostVariants } from "../profile/variant.ts";
import { drawCounts } from "./compare.ts";

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

const variant = z.object({
  id: text,
  name: text,
  changes,
  target: z.exactOptional(z.object({ kind: z.enum(targetKinds), value: number })),
});

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
});
