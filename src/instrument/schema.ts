import * as z from "zod/mini";
import type { BodyPath, DomePath, FieldPath, NeckPath } from "./field.ts";
import { defaultTolerances, fields, isFieldPath } from "./fields.ts";
import { type Instrument, targetKinds, type WindowKind } from "./instrument.ts";
import { targetFields } from "./outcome-fields.ts";
import { tracingFlaw } from "./tracing.ts";

// Keeps zod from trying `new Function`, which the page's security policy forbids.
z.config({ jitless: true });

/** Lengths of the texts, in UTF-16 units. */
export const textLimits = { id: 100, name: 200, notes: 10_000 } as const;

type PlainPath = Exclude<FieldPath, "target.value" | NullablePath>;
type NullablePath = Extract<BodyPath | DomePath | NeckPath, `${string}Radius`>;

const bounded = (path: Exclude<FieldPath, "target.value">) => {
  const { quantity, min, max } = fields[path];
  const number = quantity === "count" ? z.int() : z.number();
  // −0 would come back from a file as 0.
  return number.check(
    z.minimum(min),
    z.maximum(max),
    z.overwrite((value) => value + 0),
  );
};

const number = (path: PlainPath) => z._default(bounded(path), fields[path].default);

const numberOrNull = (path: NullablePath) =>
  z._default(z.nullable(bounded(path)), fields[path].default);

// Not z.maxLength: that one looks at `length` before it is known that there is a text.
const text = (most: number) =>
  z._default(z.string().check(z.refine((value) => value.length <= most)), "");

const place = z.tuple([z.number(), z.number()]);

const tracing = z.array(place).check(z.refine((places) => tracingFlaw(places) === null));

const body = z.object({
  length: number("body.length"),
  lowerBoutWidth: number("body.lowerBoutWidth"),
  lowerBoutAt: number("body.lowerBoutAt"),
  waistWidth: number("body.waistWidth"),
  waistAt: number("body.waistAt"),
  upperBoutWidth: number("body.upperBoutWidth"),
  upperBoutAt: number("body.upperBoutAt"),
  neckEndWidth: number("body.neckEndWidth"),
  depthTail: number("body.depthTail"),
  depthNeck: number("body.depthNeck"),
  backRadius: numberOrNull("body.backRadius"),
  soundholeAt: number("body.soundholeAt"),
  soundholeDiameter: number("body.soundholeDiameter"),
  tracing: z.exactOptional(tracing),
});

const dome = z.object({
  dishRadius: numberOrNull("dome.dishRadius"),
  dishDiameter: number("dome.dishDiameter"),
  braceRadius: numberOrNull("dome.braceRadius"),
  flatLength: number("dome.flatLength"),
  tailExtra: number("dome.tailExtra"),
  blendLength: number("dome.blendLength"),
});

const shim = z.object({
  contact: number("shim.contact"),
  tailBlockDepth: number("shim.tailBlockDepth"),
});

const neck = z.object({
  scale: number("neck.scale"),
  joinFret: number("neck.joinFret"),
  lastFret: number("neck.lastFret"),
  fingerboardOverhang: number("neck.fingerboardOverhang"),
  fingerboardThickness: number("neck.fingerboardThickness"),
  fretHeight: number("neck.fretHeight"),
  fingerboardRadius: numberOrNull("neck.fingerboardRadius"),
  neckTilt: number("neck.neckTilt"),
  relief: number("neck.relief"),
  heelLength: number("neck.heelLength"),
});

const bridge = z.object({
  thickness: number("bridge.thickness"),
  compensation: number("bridge.compensation"),
  pinDistance: number("bridge.pinDistance"),
  pinRamp: number("bridge.pinRamp"),
});

const strings = z.object({
  count: number("strings.count"),
  spreadNut: number("strings.spreadNut"),
  spreadSaddle: number("strings.spreadSaddle"),
  nutClearance: number("strings.nutClearance"),
  actionBass: number("strings.actionBass"),
  actionTreble: number("strings.actionTreble"),
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
  const [low, high] = [`windows.${kind}.0`, `windows.${kind}.1`] as const;
  const ends = z.tuple([bounded(low), bounded(high)]);
  return z._default(ends, () => [fields[low].default, fields[high].default] as [number, number]);
};

const windows = z.object({
  bridgeClearance: window("bridgeClearance"),
  saddleExposure: window("saddleExposure"),
  stringHeight: window("stringHeight"),
  breakAngle: window("breakAngle"),
  pitch: window("pitch"),
});

/** The widest plus-or-minus that can be stated. */
export const widestTolerance = 1e9;

const tolerances = z
  .record(
    z.string(),
    z.number().check(
      z.minimum(0),
      z.maximum(widestTolerance),
      z.overwrite((value) => value + 0),
    ),
  )
  .check(({ value, issues }) => {
    for (const path of Object.keys(value).filter((key) => !isFieldPath(key)))
      issues.push({ code: "custom", path: [path], input: path });
  });

/**
 * The file's form. Every number has a default at every level, so `{}` is an instrument; what it does
 * not know it leaves out. It checks each number alone: `readInstrument` checks those that depend on
 * one another, and puts what is wrong into words.
 */
export const instrumentSchema = z.object({
  format: z._default(z.literal("rimwright-instrument"), "rimwright-instrument"),
  version: z._default(z.literal(1), 1),
  id: text(textLimits.id),
  name: text(textLimits.name),
  notes: text(textLimits.notes),
  body: z.prefault(body, {}),
  dome: z.prefault(dome, {}),
  shim: z.prefault(shim, {}),
  neck: z.prefault(neck, {}),
  bridge: z.prefault(bridge, {}),
  strings: z.prefault(strings, {}),
  target: z.prefault(target, {}),
  windows: z.prefault(windows, {}),
  tolerances: z._default(tolerances, () => ({ ...defaultTolerances })),
});

/** Every field's default: an invented orchestra-size guitar, 14 frets to the body. */
export const defaultInstrument: Instrument = instrumentSchema.parse({
  id: "orchestra-size",
  name: "Orchestra size",
  notes: "Invented for Rimwright, to show the tool at work. It is nobody's guitar.",
});
