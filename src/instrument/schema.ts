import * as z from "zod/mini";
import { atMost } from "./at-most.ts";
import { bodyFields } from "./body-fields.ts";
import { domeFields, domeMethods, shimFields } from "./dome-fields.ts";
import { type Bounds, type Field, toleranceBounds } from "./field.ts";
import { defaultTolerances, type FieldPath, fieldAt, fieldPaths, fields } from "./fields.ts";
import { neckFields } from "./neck-fields.ts";
import { targetFields, targetKinds, type WindowKind, windowKinds } from "./outcome-fields.ts";
import { seatFields } from "./seat-fields.ts";
import { bridgeFields, stringFields } from "./string-fields.ts";
import { textLimits } from "./text-limits.ts";
import { tracingFlaw } from "./tracing.ts";

// Keeps zod from trying `new Function`, which the page's security policy forbids.
z.config({ jitless: true });

/** A number within a field's bounds. −0 would come back from a file as 0. */
const numberWithin = ({ quantity, min, max }: Bounds) =>
  (quantity === "count" ? z.int() : z.number()).check(
    z.minimum(min),
    z.maximum(max),
    z.overwrite((value) => value + 0),
  );

type NumberSchema = ReturnType<typeof numberWithin>;

type NameIn<Path, Group extends string> = Path extends `${Group}.${infer Name}` ? Name : never;

/** A group's numbers by name, each with its default, and null where its field has a word for that. */
type NumbersOf<Group extends string, Table> = {
  [Path in keyof Table as NameIn<Path, Group>]: z.ZodMiniDefault<
    Table[Path] extends { readonly nullWord: string }
      ? z.ZodMiniNullable<NumberSchema>
      : NumberSchema
  >;
};

function numbersOf<Group extends string, Table extends Readonly<Record<string, Field>>>(
  group: Group,
  table: Table,
): NumbersOf<Group, Table> {
  const numbers = Object.entries(table).map(([path, field]) => {
    const number = numberWithin(field);
    const stated = field.nullWord === undefined ? number : z.nullable(number);
    return [path.slice(group.length + 1), z._default(stated, field.default)] as const;
  });
  return Object.fromEntries(numbers) as NumbersOf<Group, Table>;
}

const text = (most: number) => z._default(z.string().check(atMost(most)), "");

const place = z.tuple([z.number(), z.number()]);

const tracing = z.array(place).check(z.refine((places) => tracingFlaw(places) === null));

const body = z.object({
  ...numbersOf("body", bodyFields),
  tracing: z.exactOptional(tracing),
  tracingTreble: z.exactOptional(tracing),
  leftHanded: z.exactOptional(z.literal(true)),
});

const dome = z.object({
  ...numbersOf("dome", domeFields),
  method: z._default(z.enum(domeMethods), "break"),
});

/** A kind without a value takes that kind's default; a value without a kind is a saddle exposure. */
const target = z.pipe(
  z.object({
    kind: z._default(z.enum(targetKinds), "saddleExposure"),
    value: z.optional(z.number().check(z.overwrite((value) => value + 0))),
  }),
  z.transform(({ kind, value }) => ({ kind, value: value ?? targetFields[kind].default })),
);

const window = (kind: WindowKind) => {
  const [low, high] = [fields[`windows.${kind}.0`], fields[`windows.${kind}.1`]];
  const ends = z.tuple([numberWithin(low), numberWithin(high)]);
  return z._default(ends, () => [low.default, high.default] as [number, number]);
};

const windows = z.object(
  Object.fromEntries(windowKinds.map((kind) => [kind, window(kind)])) as Record<
    WindowKind,
    ReturnType<typeof window>
  >,
);

/** The target's bounds here are the widest of any kind's; `relationProblems` knows the kind. */
const tolerances = z.strictObject(
  Object.fromEntries(
    fieldPaths.map((path) => [
      path,
      z.exactOptional(numberWithin(toleranceBounds(fieldAt(path, "shim")))),
    ]),
  ) as Record<FieldPath, z.ZodMiniExactOptional<NumberSchema>>,
);

/**
 * The file's form. Every number has a default at every level, so `{}` is an instrument; what it does
 * not know it leaves out. It checks each number alone: `readInstrument` checks those that depend on
 * one another, and puts what is wrong into words.
 */
export const instrumentSchema = z.object({
  format: z._default(z.literal("rimwright-instrument"), "rimwright-instrument"),
  version: z._default(z.union([z.literal(1), z.literal(2)]), 1),
  id: text(textLimits.id),
  name: text(textLimits.name),
  notes: text(textLimits.notes),
  body: z.prefault(body, {}),
  dome: z.prefault(dome, {}),
  shim: z.prefault(z.object(numbersOf("shim", shimFields)), {}),
  seat: z.prefault(z.object(numbersOf("seat", seatFields)), {}),
  neck: z.prefault(z.object(numbersOf("neck", neckFields)), {}),
  bridge: z.prefault(z.object(numbersOf("bridge", bridgeFields)), {}),
  strings: z.prefault(z.object(numbersOf("strings", stringFields)), {}),
  target: z.prefault(target, {}),
  windows: z.prefault(windows, {}),
  tolerances: z._default(tolerances, () => ({ ...defaultTolerances })),
});

/** What a schema yields, as data that nobody changes. */
export type DeepReadonly<T> = T extends object
  ? { readonly [K in keyof T]: DeepReadonly<T[K]> }
  : T;
