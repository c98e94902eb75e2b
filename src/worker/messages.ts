import type { Instrument } from "../instrument/instrument.ts";
import type { TracingFileResult } from "../instrument/tracing-file.ts";
import type { InputMap, MapAsked } from "../profile/comparison/map.ts";
import type { OnStickResult, Stick } from "../profile/sticks/on-stick.ts";
import type { SharedShim } from "../profile/sticks/shared-shim.ts";
import type { FieldChange, MemberChange } from "../profile/sticks/shared-shim-changes.ts";
import type { StickPlan } from "../profile/sticks/stick-plan.ts";
import type { StickWants } from "../profile/sticks/wanted-stick.ts";
import type { Uncertainty, UncertaintyRequest } from "../profile/uncertainty/uncertainty.ts";

/** Computations too long for the page itself. */
export type Job =
  | UncertaintyJob
  | MapJob
  | SharedShimJob
  | OnStickJob
  | StickWantsJob
  | StickPlanJob
  | StickChangesJob
  | TracingJob;

export interface UncertaintyJob {
  readonly kind: "uncertainty";
  readonly asked: UncertaintyRequest;
  readonly draws: number;
}

export interface MapJob {
  readonly kind: "map";
  readonly instrument: Instrument;
  readonly asked: MapAsked;
}

export interface SharedShimJob {
  readonly kind: "shared-shim";
  readonly instruments: readonly Instrument[];
  /** Each its own contact, or the one that leaves the most room. */
  readonly contact: "own" | "best";
  /** The least contact the best may have: the narrowest stick there is, mm. */
  readonly leastContact: number;
  /** The shim at hand, mm; null asks for the best one only. */
  readonly shim: number | null;
}

/** What one stick gives of each instrument. */
export interface OnStickJob {
  readonly kind: "on-stick";
  readonly instruments: readonly Instrument[];
  readonly stick: Stick;
}

/** What each instrument wants of sticks. */
export interface StickWantsJob {
  readonly kind: "stick-wants";
  readonly instruments: readonly Instrument[];
  readonly owned: readonly Stick[];
}

/** Which sticks would serve instruments that want this of them. */
export interface StickPlanJob {
  readonly kind: "stick-plan";
  readonly wants: readonly StickWants[];
}

/** The cheapest change that lets each instrument lie on a stick. */
export interface StickChangesJob {
  readonly kind: "stick-changes";
  readonly asked: readonly { readonly instrument: Instrument; readonly stick: Stick }[];
}

/** A stranger's drawing to be read. */
interface TracingJob {
  readonly kind: "tracing";
  readonly text: string;
}

export interface SharedShimAnswer {
  readonly sharedShim: SharedShim;
  /** What would let one shim serve, where none does. */
  readonly changes: readonly MemberChange[];
  /** For the shim at hand, what to change on each member; empty where it serves. */
  readonly forShim: readonly (readonly FieldChange[])[];
}

export interface Answers {
  readonly "on-stick": readonly OnStickResult[];
  readonly "stick-wants": readonly StickWants[];
  readonly "stick-plan": StickPlan;
  readonly "stick-changes": readonly (FieldChange | null)[];
  readonly uncertainty: Uncertainty | null;
  readonly map: InputMap | null;
  readonly "shared-shim": SharedShimAnswer;
  readonly tracing: TracingFileResult | null;
}

export type JobKind = Job["kind"];

/** How far a job is, 0 to 1, and what it has so far; done at 1. Null: there is nothing yet, or the instrument has no plan. */
export interface Progress<Kind extends JobKind = JobKind> {
  readonly share: number;
  readonly answer: Answers[Kind];
}

/** To the worker: a job to do, in place of any of its kind, or one to stop. */
export type Request =
  | { readonly id: number; readonly job: Job }
  | { readonly id: number; readonly stop: true };

/** From the worker. */
export interface Report {
  readonly id: number;
  readonly progress: Progress;
}
