import * as z from "zod/mini";
import type { Field } from "../../instrument/field.ts";
import type { FieldPath } from "../../instrument/fields.ts";
import { fieldPaths, fields, isFieldPath } from "../../instrument/fields.ts";
import type { Target } from "../../instrument/instrument.ts";
import { targetKinds } from "../../instrument/outcome-fields.ts";
import { type OutcomeKey, outcomeKeys } from "../../profile/comparison/outcomes.ts";
import { type MovedOutcome, movedOutcomes } from "../../profile/comparison/sensitivity.ts";
import { mostVariants, type Variant } from "../../profile/comparison/variant.ts";
import { type Comparison, drawCounts, firstComparison } from "../document/comparison.ts";
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

/** A comparison as the page kept it: what cannot be read of it is as it is at first. */
export function readComparison(json: unknown): Comparison {
  const first = firstComparison;
  const { variants, sweep, map, moved, sure, family } = asJson(json);
  return {
    variants: readVariants(variants),
    sweep: {
      path: oneOf(asJson(sweep)["path"], isPath, first.sweep.path),
      outcome: oneOf(asJson(sweep)["outcome"], isOutcome, first.sweep.outcome),
      hold: asJson(sweep)["hold"] === "target" ? "target" : "shim",
    },
    map: {
      across: oneOf(asJson(map)["across"], isPath, first.map.across),
      up: oneOf(asJson(map)["up"], isPath, first.map.up),
      outcome: oneOf(asJson(map)["outcome"], isOutcome, first.map.outcome),
      hold: asJson(map)["hold"] === "target" ? "target" : "shim",
    },
    moved: oneOf(moved, isMoved, first.moved),
    sure: {
      shape: asJson(sure)["shape"] === "rectangular" ? "rectangular" : "normal",
      draws: drawCounts.find((count) => count === asJson(sure)["draws"]) ?? first.sure.draws,
      seed: oneOf(asJson(sure)["seed"], isWhole, first.sure.seed),
    },
    family: {
      chosen: readTexts(asJson(family)["chosen"]),
      contact: asJson(family)["contact"] === "best" ? "best" : "own",
      shim: oneOf(asJson(family)["shim"], isNumber, null),
    },
  };
}

function readVariants(json: unknown): readonly Variant[] {
  if (!Array.isArray(json)) return [];
  return json.slice(0, mostVariants).flatMap((one) => {
    const { id, name, changes, target } = asJson(one);
    if (typeof id !== "string" || typeof name !== "string") return [];
    const read = Object.entries(asJson(changes)).filter(
      ([path, value]) => isFieldPath(path) && path !== "target.value" && fits(value, fields[path]),
    );
    const aim = readTarget(target);
    const variant: Variant = { id, name, changes: Object.fromEntries(read) };
    return [aim === null ? variant : { ...variant, target: aim }];
  });
}

/** A value the field itself can have; whether it goes together with the rest is for the core to say. */
function fits(value: unknown, { min, max, nullWord, quantity }: Field): boolean {
  if (value === null) return nullWord !== undefined;
  const whole = quantity !== "count" || Number.isInteger(value);
  return isNumber(value) && min <= value && value <= max && whole;
}

function readTarget(json: unknown): Target | null {
  const { kind, value } = asJson(json);
  const known = targetKinds.find((one) => one === kind);
  return known !== undefined && isNumber(value) ? { kind: known, value } : null;
}

function readTexts(json: unknown): readonly string[] | null {
  return Array.isArray(json) ? json.filter((one) => typeof one === "string") : null;
}

function oneOf<Known, Else>(
  value: unknown,
  isKnown: (value: unknown) => value is Known,
  otherwise: Else,
): Known | Else {
  return isKnown(value) ? value : otherwise;
}

// Named again, and held to the profile's own lists by their types: the first view need not load those.
const outcomes: Readonly<Record<OutcomeKey, true>> = {
  shim: true,
  tailDrop: true,
  pitch: true,
  heelAngle: true,
  flatGap: true,
  projection: true,
  bridgeClearance: true,
  stringHeight: true,
  saddleExposure: true,
  breakAngle: true,
  overrunLength: true,
  overrunDepth: true,
  cleanShim: true,
  rimOffset: true,
  maxRemoval: true,
  stockWidth: true,
  dishNeeded: true,
};
const moves: Readonly<Record<MovedOutcome, true>> = {
  saddleExposure: true,
  bridgeClearance: true,
  stringHeight: true,
  pitch: true,
  breakAngle: true,
};

const isPath = (value: unknown): value is FieldPath =>
  typeof value === "string" && isFieldPath(value);
const isNumber = (value: unknown): value is number =>
  typeof value === "number" && Number.isFinite(value);
const isWhole = (value: unknown): value is number => Number.isInteger(value);
const isOutcome = (value: unknown): value is OutcomeKey =>
  typeof value === "string" && Object.hasOwn(outcomes, value);
const isMoved = (value: unknown): value is MovedOutcome =>
  typeof value === "string" && Object.hasOwn(moves, value);
