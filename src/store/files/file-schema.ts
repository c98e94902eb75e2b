import * as z from "zod/mini";
import { asBuiltSchema } from "../../instrument/as-built/read-as-built.ts";
import { instrumentSchema } from "../../instrument/schema.ts";
import { comparisonSchema } from "./comparison-form.ts";
import { fileLimits, fileVersion } from "./shelf-file.ts";

const fileEntry = z.object({
  instrument: instrumentSchema,
  lastGood: z.exactOptional(instrumentSchema),
  comparison: z.exactOptional(comparisonSchema),
  asBuilt: z.exactOptional(asBuiltSchema),
});

const shelfFile = z.object({
  format: z.literal("rimwright-shelf"),
  version: z.literal(fileVersion),
  instruments: z.array(fileEntry).check(z.maxLength(fileLimits.instruments)),
});

/**
 * The form of a file as JSON Schema (draft 2020-12), for others' programs. What it cannot say, such as
 * that the waist lies between the bouts, is checked when a file is taken in.
 */
export function fileJsonSchema() {
  const named = z.registry<{ id: string }>();
  named.add(shelfFile, { id: "shelf" });
  named.add(instrumentSchema, { id: "instrument" });
  named.add(comparisonSchema, { id: "comparison" });
  named.add(asBuiltSchema, { id: "asBuilt" });
  const form = z.union([shelfFile, instrumentSchema]);
  return {
    ...z.toJSONSchema(form, { io: "input", unrepresentable: "any", metadata: named }),
    title: "Rimwright file",
    description:
      "A whole shelf, or one instrument alone. Lengths in millimetres, angles in degrees; every number left out takes its default.",
  };
}
