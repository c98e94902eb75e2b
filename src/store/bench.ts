import type { AsBuilt, FinishedInstrument } from "../instrument/as-built.ts";
import { emptyAsBuilt } from "../instrument/as-built.ts";
import type { ReadingKey } from "../instrument/as-built-fields.ts";
import { demoShelf } from "../instrument/record-demo.ts";
import type { StepId } from "../instrument/steps.ts";
import type { Goal } from "../profile/outlook.ts";
import type { RemedyId } from "../profile/remedy.ts";
import type { TypedText } from "./state.ts";

export const benchPanels = ["work", "corrections", "learning", "pull"] as const;
export type BenchPanel = (typeof benchPanels)[number];

export type ReadingTexts = Readonly<Partial<Record<ReadingKey, TypedText>>>;

/** What is known and chosen at the bench. Plain data, kept beside the instruments. */
export interface Bench {
  /** By the instrument's id. */
  readonly records: Readonly<Record<string, AsBuilt>>;
  /** What was typed into a record's fields, readable or not. */
  readonly texts: Readonly<Record<string, ReadingTexts>>;
  /** The builder's own, to be learnt from. */
  readonly finished: readonly FinishedInstrument[];
  /** Whether the invented shelf is shown among them. */
  readonly demo: boolean;
  readonly panel: BenchPanel;
  readonly step: StepId;
  /** Null: what the plan aims for. */
  readonly goal: Goal | null;
  /** How much each remedy may take in a combined one, mm at the saddle. */
  readonly shares: Readonly<Partial<Record<RemedyId, number>>>;
}

export const firstBench: Bench = {
  records: {},
  texts: {},
  finished: [],
  demo: true,
  panel: "work",
  step: "level",
  goal: null,
  shares: {},
};

export const recordOn = (bench: Bench, id: string): AsBuilt => bench.records[id] ?? emptyAsBuilt;

export const textsOn = (bench: Bench, id: string): ReadingTexts => bench.texts[id] ?? noTexts;
const noTexts: ReadingTexts = {};

/** Everything there is to learn from, the invented first. */
export const learntFromOn = ({
  finished,
  demo,
}: Pick<Bench, "finished" | "demo">): readonly FinishedInstrument[] =>
  demo ? [...demoShelf, ...finished] : finished;
