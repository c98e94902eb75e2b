import {
  type AsBuilt,
  emptyAsBuilt,
  type FinishedInstrument,
} from "../../instrument/as-built/as-built.ts";
import { demoShelf } from "../../instrument/as-built/demo-shelf.ts";
import type { StepId } from "../../instrument/as-built/steps.ts";
import type { Goal } from "../../profile/bench/outlook.ts";
import type { RemedyId } from "../../profile/bench/remedy.ts";
import type { MeasurementTexts } from "./state.ts";

export const benchPanels = ["work", "corrections", "learning", "pull"] as const;
export type BenchPanel = (typeof benchPanels)[number];

/** What is known and chosen at the bench whichever instrument lies on it. Plain data. */
export interface Shop {
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

/** The shop with the open instrument's own record. */
export interface Bench extends Shop {
  /** By the instrument's id; nothing while nothing is put down of it. */
  readonly records: Readonly<Record<string, AsBuilt>>;
  readonly texts: Readonly<Record<string, MeasurementTexts>>;
}

export const firstShop: Shop = {
  finished: [],
  demo: true,
  panel: "work",
  step: "level",
  goal: null,
  shares: {},
};

export const firstBench: Bench = { ...firstShop, records: {}, texts: {} };

export const recordOn = (bench: Bench, id: string): AsBuilt => bench.records[id] ?? emptyAsBuilt;

export const textsOn = (bench: Bench, id: string): MeasurementTexts => bench.texts[id] ?? noTexts;
const noTexts: MeasurementTexts = {};

/** Everything there is to learn from, the invented first. */
export const learntFromOn = ({
  finished,
  demo,
}: Pick<Bench, "finished" | "demo">): readonly FinishedInstrument[] =>
  demo ? [...demoShelf, ...finished] : finished;
