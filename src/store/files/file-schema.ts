import * as z from "zod/mini";
import { measurementField, measurementKeys } from "../../instrument/as-built/measurement-fields.ts";
import { asBuiltSchema } from "../../instrument/as-built/read-as-built.ts";
import { stepIds } from "../../instrument/as-built/steps.ts";
import type { Bounds } from "../../instrument/field.ts";
import { fieldAt, fieldPaths } from "../../instrument/fields.ts";
import { targetFields, targetKinds } from "../../instrument/outcome-fields.ts";
import { instrumentSchema } from "../../instrument/schema.ts";
import { comparisonSchema } from "./comparison-form.ts";
import { fileLimits, fileVersion, shelfFormat } from "./shelf-file.ts";
import { mostSticks, stickSchema } from "./sticks-form.ts";

const fileEntry = z.object({
  instrument: instrumentSchema,
  lastGood: z.exactOptional(instrumentSchema),
  comparison: z.exactOptional(comparisonSchema),
  asBuilt: z.exactOptional(asBuiltSchema),
  model: z.exactOptional(z.literal(true)),
  madeFrom: z.exactOptional(z.object({ id: z.string(), name: z.string() })),
});

const shelfFile = z.object({
  format: z.literal(shelfFormat),
  version: z.literal(fileVersion),
  sticks: z.exactOptional(z.array(stickSchema).check(z.maxLength(mostSticks))),
  instruments: z.array(fileEntry).check(z.maxLength(fileLimits.instruments)),
});

type Schema = z.core.JSONSchema.BaseSchema;

/**
 * The form of a file as JSON Schema (draft 2020-12), for others' programs. What it cannot say is
 * checked when a file is imported.
 */
export function fileJsonSchema() {
  const named = z.registry<{ id: string }>();
  named.add(shelfFile, { id: "shelf" });
  named.add(instrumentSchema, { id: "instrument" });
  named.add(comparisonSchema, { id: "comparison" });
  named.add(asBuiltSchema, { id: "asBuilt" });
  const form = z.union([shelfFile, instrumentSchema]);
  const schema = z.toJSONSchema(form, { io: "input", unrepresentable: "any", metadata: named });
  const [instrument, asBuilt] = [
    part(schema, "$defs", "instrument"),
    part(schema, "$defs", "asBuilt"),
  ];
  limitTarget(part(instrument, "properties", "target"));
  limitMeasurements(part(asBuilt, "properties", "readings"));
  const taken = part(asBuilt, "properties", "taken", "items", "properties");
  limitMeasurements(part(taken, "replaced"));
  limitChange(part(taken, "changes", "items"));
  for (const byStep of ["done", "notes"])
    Object.assign(part(asBuilt, "properties", byStep), { propertyNames: { enum: [...stepIds] } });
  return {
    ...schema,
    title: "Rimwright file",
    description:
      "A whole shelf, or one instrument alone. Lengths in millimetres, angles in degrees; every number left out takes its default. Beyond this form, the low end of a window is no higher than its high end, numbers fit one another (the waist lies between the bouts, the saddle between tail and break), the target is one that this instrument can be given unless `lastGood` stands beside it, and a text's length is counted in UTF-16 units.",
  };
}

/** The part of a schema that is reached by these keys. */
function part(schema: Schema, ...keys: readonly string[]): Schema {
  return keys.reduce<Schema>((node, key) => {
    const next = node[key];
    if (typeof next !== "object" || next === null) throw new Error(`The schema has no ${key}.`);
    return next as Schema;
  }, schema);
}

const within = ({ min, max }: Bounds) => ({ type: "number", minimum: min, maximum: max });

/** A target's limits are those of its kind; without one it is the default kind. */
function limitTarget(target: Schema): void {
  const { kind } = target.properties ?? {};
  const usual = part({ kind }, "kind").default;
  target.anyOf = targetKinds.map((one) => ({
    type: "object",
    properties: { kind: { const: one }, value: within(targetFields[one]) },
    ...(one === usual ? {} : { required: ["kind"] }),
  })) as Schema[];
}

/** A measurement's limits are its field's. */
function limitMeasurements(measurements: Schema): void {
  const any = part(measurements, "additionalProperties");
  measurements.properties = Object.fromEntries(
    measurementKeys.map((key) => [
      key,
      { ...any, properties: { ...any.properties, value: within(measurementField(key)) } },
    ]),
  ) as Record<string, Schema>;
  measurements.additionalProperties = false;
  delete measurements.propertyNames;
}

/** A change's limits are its field's; `target.value` is the shim. */
function limitChange(change: Schema): void {
  change.anyOf = fieldPaths.map((path) => ({
    type: "object",
    properties: { path: { const: path }, value: within(fieldAt(path, "shim")) },
    required: ["path", "value"],
  })) as Schema[];
}
