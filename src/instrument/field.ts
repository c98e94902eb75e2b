import type {
  Body,
  Bridge,
  DomeShape,
  Neck,
  ShimPlace,
  Strings,
  WindowKind,
} from "./instrument.ts";

type PathsIn<Group extends string, Shape> = `${Group}.${Extract<keyof Shape, string>}`;

export type BodyPath = PathsIn<"body", Omit<Body, "tracing">>;
export type DomePath = PathsIn<"dome", DomeShape>;
export type ShimPath = PathsIn<"shim", ShimPlace>;
export type NeckPath = PathsIn<"neck", Neck>;
export type BridgePath = PathsIn<"bridge", Bridge>;
export type StringsPath = PathsIn<"strings", Strings>;
/** `.0` is the low end of a window, `.1` the high end. */
export type WindowPath = `windows.${WindowKind}.${0 | 1}`;

/** Where a number stands in an instrument, such as `"dome.flatLength"`. */
export type FieldPath =
  | BodyPath
  | DomePath
  | ShimPath
  | NeckPath
  | BridgePath
  | StringsPath
  | "target.value"
  | WindowPath;

/** One number a builder states: what it is called, what it may be, and how to measure it. mm and degrees. */
export interface Field {
  /** The trade's word for it. */
  readonly label: string;
  readonly quantity: "length" | "angle" | "count";
  /** Wide physical limits, both included. What fits one instrument is narrower, and for the core to say. */
  readonly min: number;
  readonly max: number;
  readonly default: number;
  /** One press of a stepper. */
  readonly step: number;
  /** Present where the field may be null: the word that null is shown as. */
  readonly nullWord?: string;
  /** The inch unit a builder quotes it in, where that is not plain inches. */
  readonly usual?: "ft";
  readonly howTo: string;
}
