import type * as z from "zod/mini";
import type { DeepReadonly, instrumentSchema } from "./schema.ts";

/**
 * What a builder states about one instrument, exactly as its file holds it; what each number is, its
 * field says. Lengths in millimetres and angles in degrees throughout. Distances called `…At` run along
 * the centreline from the tail end. A null radius is flat, or no dome.
 */
export type Instrument = DeepReadonly<z.output<typeof instrumentSchema>>;

/** The outline and the depth of the sides. Where there is a tracing, the widths and places shape nothing. */
export type Body = Instrument["body"];

/**
 * Half an outline: distance from the tail, from 0 to the body's length, and half width there. The distance rises but where
 * a cutaway's edge runs back.
 */
export type Tracing = Required<Body>["tracing"];

export type Target = Instrument["target"];
export type TargetKind = Target["kind"];
export type WindowKind = keyof Instrument["windows"];

/** A closed range, low end first. */
export type Range = Instrument["windows"][WindowKind];

/** Plus-or-minus by field path, such as `"dome.flatLength": 0.5`. */
export type Tolerances = Instrument["tolerances"];
