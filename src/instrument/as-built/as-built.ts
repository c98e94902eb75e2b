import type { FieldPath } from "../fields.ts";
import type { Instrument } from "../instrument.ts";
import type { MeasurementKey } from "./measurement-fields.ts";
import type { StepId } from "./steps.ts";

/** One measured value, mm, with its day (`2026-05-14`) and what the builder noted. */
export interface Measurement {
  readonly value: number;
  readonly date: string;
  readonly note: string;
}

export type Measurements = Readonly<Partial<Record<MeasurementKey, Measurement>>>;

/** A number set anew in the plan; `target.value` is the shim, which then is the target. */
export interface Change {
  readonly path: FieldPath;
  readonly value: number;
}

/** By how much the instrument stood off the geometry when a correction was worked out, mm: it goes on doing so. */
export interface Offsets {
  /** Shim as measured, less the one the measured gap speaks for. */
  readonly shim: number;
  /** Fret plane at the saddle line, measured less predicted. */
  readonly fretPlane: number;
  readonly stringHeight: number;
  readonly saddleExposure: number;
}

/** A correction the builder took: what it changed, and the measurements it put out of date. */
export interface Taken {
  readonly remedy: string;
  readonly date: string;
  readonly changes: readonly Change[];
  readonly offsets: Offsets;
  readonly replaced: Measurements;
}

/** A string of which the pull is asked: its note (`E2`), and its weight per length or its diameter if it is plain steel. */
export interface PulledString {
  readonly note: string;
  /** lb/in, as string makers print it; null when not known. */
  readonly unitWeight: number | null;
  /** mm; null when it is not plain steel. */
  readonly diameter: number | null;
}

/** What became of one instrument, exactly as its file holds it. Lengths in mm. */
export interface AsBuilt {
  readonly format: "rimwright-as-built";
  readonly version: 1;
  readonly readings: Measurements;
  /** Steps done, each with its day. */
  readonly done: Readonly<Partial<Record<StepId, string>>>;
  /** Notes to a step. */
  readonly notes: Readonly<Partial<Record<StepId, string>>>;
  /** In the order they were taken. */
  readonly taken: readonly Taken[];
  readonly strings: readonly PulledString[];
  /** The day it was called finished; null while it is not. */
  readonly finished: string | null;
}

/** Longest note, in UTF-16 units. */
export const noteLimit = 2000;

/** A record with nothing in it. */
export const emptyAsBuilt: AsBuilt = {
  format: "rimwright-as-built",
  version: 1,
  readings: {},
  done: {},
  notes: {},
  taken: [],
  strings: [],
  finished: null,
};

/** An instrument that is done, with what was measured on the way: what is learnt from. */
export interface FinishedInstrument {
  readonly instrument: Instrument;
  readonly asBuilt: AsBuilt;
  /** Made up, to show the tool at work. */
  readonly invented: boolean;
}

export const measured = (readings: Measurements, key: MeasurementKey): number | null =>
  readings[key]?.value ?? null;
