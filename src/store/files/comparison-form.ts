import * as z from "zod/mini";
import { atMost } from "../../instrument/at-most.ts";
import { domeMethods } from "../../instrument/dome-fields.ts";
import type { FieldPath } from "../../instrument/fields.ts";
import { fieldPaths, fields } from "../../instrument/fields.ts";
import { targetKinds } from "../../instrument/outcome-fields.ts";
import type { Problem } from "../../instrument/problem.ts";
import { outcomeKeys } from "../../profile/comparison/outcomes.ts";
import { type MovedOutcome, movedOutcomes } from "../../profile/comparison/sensitivity.ts";
import { mostVariants } from "../../profile/comparison/variant.ts";
import {
  type Comparison,
  drawCounts,
  firstComparison,
  type Plots,
} from "../document/comparison.ts";
import { asJson } from "../document/json.ts";
import { type Mended, readMended } from "./leave-out.ts";

const text = z.string().check(atMost(200));
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

const variant = z.object({
  id: text,
  name: text,
  changes,
  target: z.exactOptional(target),
  method: z.exactOptional(z.enum(domeMethods)),
});

/** A comparison whole. */
export const comparisonSchema = z.object({
  variants: z.array(variant).check(atMost(mostVariants)),
  sweep: z.object({ path, outcome, hold }),
  map: z.object({ across: path, up: path, outcome, hold }),
  moved: z.enum(moved),
  sure: z.object({
    shape: z.enum(["normal", "rectangular"]),
    draws: z.literal([...drawCounts]),
    seed: z.int(),
  }),
}) satisfies z.ZodMiniType<Comparison>;

/** A comparison as it was stored: what is plotted is as at first where its form does not allow it, and a variant's part that cannot be read is left out. */
export function readComparison(json: unknown): Mended<Comparison> {
  if (json !== undefined && (asJson(json) !== json || Array.isArray(json))) {
    const reason = "This is no comparison.";
    return { value: firstComparison, leftOut: [{ path: "comparison", reason, value: json }] };
  }
  const { variants = [], ...plots } = asJson(json);
  const { variants: form, ...forms } = comparisonSchema.shape;
  const plotted = orFirst(z.object(forms), firstComparison).parse(plots) as Plots;
  const unplotted = Object.entries(forms)
    .filter(([key, part]) => Object.hasOwn(plots, key) && !part.safeParse(plots[key]).success)
    .map(([key]) => ({ path: key, reason: "This cannot be plotted.", value: plots[key] }));
  const read = readMended(
    { variants },
    (one) => {
      const parsed = z.object({ variants: form }).safeParse(one);
      return parsed.success
        ? { ok: true, value: parsed.data.variants }
        : { ok: false, problems: parsed.error.issues.flatMap(problemsOf) };
    },
    { isWhole: (one) => one === "variants" },
  );
  if (read !== null)
    return {
      value: { ...plotted, variants: read.value },
      leftOut: [...unplotted, ...read.leftOut],
    };
  const reason = "The variants are not what a comparison holds there.";
  return {
    value: { ...plotted, variants: [] },
    leftOut: [...unplotted, { path: "variants", reason, value: variants }],
  };
}

function problemsOf({ path, ...issue }: z.core.$ZodIssue): readonly Problem[] {
  const keys = issue.code === "unrecognized_keys" ? issue.keys : [];
  const places = keys.length === 0 ? [path] : keys.map((key) => [...path, key]);
  return places.map((place) => ({
    path: place.map(String).join("."),
    message: "This is not what a variant holds there.",
  }));
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
