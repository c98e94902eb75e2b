import * as z from "zod/mini";
import { atMost } from "../at-most.ts";
import { isWithin } from "../field.ts";
import type { FieldPath } from "../fields.ts";
import { fieldAt, isFieldPath } from "../fields.ts";
import { type Problem, problem, said } from "../problem.ts";
import { type AsBuilt, noteLimit } from "./as-built.ts";
import { isMeasurementKey, measurementField } from "./measurement-fields.ts";
import { isStepId } from "./steps.ts";

z.config({ jitless: true });

export type ReadAsBuiltResult =
  | { readonly ok: true; readonly asBuilt: AsBuilt }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Longest list. */
const listLimit = 100;

const note = z.string().check(atMost(noteLimit));
const date = z.iso.date();
const size = (most: number) =>
  z.number().check(
    z.minimum(-most),
    z.maximum(most),
    z.overwrite((value) => value + 0),
  );

const measurement = z.object({
  value: size(10_000),
  date: z._default(date, "1970-01-01"),
  note: z._default(note, ""),
});

/** Each key known, each value within its field's limits. */
const measurements = z.record(z.string(), measurement).check(({ value, issues }) => {
  for (const [key, { value: measured }] of Object.entries(value)) {
    if (!isMeasurementKey(key)) issues.push({ code: "custom", path: [key], input: key });
    else if (!isWithin(measured, measurementField(key)))
      issues.push({ code: "custom", path: [key, "value"], input: measured });
  }
});

const byStep = <Text extends typeof date | typeof note>(text: Text) =>
  z._default(
    z.record(z.string(), text).check(({ value, issues }) => {
      for (const key of Object.keys(value))
        if (!isStepId(key)) issues.push({ code: "custom", path: [key], input: key });
    }),
    () => ({}),
  );

/** `target.value` is the shim. */
const change = z
  .object({
    path: z.custom<FieldPath>((path) => typeof path === "string" && isFieldPath(path)),
    value: size(1e9),
  })
  .check(({ value: { path, value }, issues }) => {
    if (!isWithin(value, fieldAt(path, "shim")))
      issues.push({ code: "custom", path: ["value"], input: value });
  });

const taken = z.object({
  remedy: z.string().check(atMost(100)),
  date,
  changes: z.array(change).check(atMost(listLimit)),
  offsets: z.object({
    shim: size(1000),
    fretPlane: size(1000),
    stringHeight: size(1000),
    saddleExposure: size(1000),
  }),
  replaced: z._default(measurements, () => ({})),
});

const pulled = z.object({
  note: z._default(z.string().check(atMost(20)), ""),
  unitWeight: z._default(z.nullable(z.number().check(z.minimum(0), z.maximum(1))), null),
  diameter: z._default(z.nullable(z.number().check(z.minimum(0), z.maximum(10))), null),
});

/** Every part has a default, so `{}` is a record with nothing in it. */
export const asBuiltSchema = z.object({
  format: z._default(z.literal("rimwright-as-built"), "rimwright-as-built"),
  version: z._default(z.literal(1), 1),
  readings: z._default(measurements, () => ({})),
  done: byStep(date),
  notes: byStep(note),
  taken: z._default(z.array(taken).check(atMost(listLimit)), () => []),
  strings: z._default(z.array(pulled).check(atMost(listLimit)), () => []),
  finished: z._default(z.nullable(date), null),
});

/** The one door for as-built records. Takes any JSON value and never throws. */
export function readAsBuilt(json: unknown): ReadAsBuiltResult {
  const parsed = asBuiltSchema.safeParse(json);
  if (parsed.success) return { ok: true, asBuilt: parsed.data };
  return { ok: false, problems: parsed.error.issues.map((issue) => problemOf(issue.path, json)) };
}

function problemOf(path: readonly PropertyKey[], json: unknown): Problem {
  const place = path.map(String).join(".");
  const value = path.reduce<unknown>(
    (node, key) =>
      typeof node === "object" && node !== null && Object.hasOwn(node, key)
        ? (node as Record<PropertyKey, unknown>)[key]
        : undefined,
    json,
  );
  if (place === "")
    return { path: "", message: `An as-built record is a JSON object; this is ${said(json)}.` };
  if (place === "format")
    return { path: place, message: `This is no as-built record: its format is ${said(value)}.` };
  if (place === "version") return problem(place, "1", value);
  const key = String(path[1]);
  if (path[0] === "readings" && path[2] === "value" && isMeasurementKey(key)) {
    const { min, max } = measurementField(key);
    return problem(place, `between ${min} and ${max} mm`, value, [min, max]);
  }
  return problem(place, "what an as-built record holds there", value);
}
