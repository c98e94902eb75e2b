import { createStore, type StoreApi } from "zustand/vanilla";
import type { FinishedInstrument } from "../../instrument/as-built/as-built.ts";
import type { StepId } from "../../instrument/as-built/steps.ts";
import type { Goal } from "../../profile/bench/outlook.ts";
import type { RemedyId } from "../../profile/bench/remedy.ts";
import type { Stick } from "../../profile/sticks/on-stick.ts";
import type { OwnedStick } from "../files/sticks-form.ts";

export const benchPanels = ["work", "corrections", "learning", "pull"] as const;
export type BenchPanel = (typeof benchPanels)[number];

/** The shop's sticks, with the steps that can be taken back and done again. */
export interface OwnedSticks {
  readonly owned: readonly OwnedStick[];
  /** Those owned before each step, oldest first. */
  readonly past: readonly (readonly OwnedStick[])[];
  /** Those owned before each step back, the next to be done again first. */
  readonly future: readonly (readonly OwnedStick[])[];
  /** What the last edit was; null where none can be joined. */
  readonly step: string | null;
}

/** Where the instruments laid on the sticks come from. */
export const stickSources = ["both", "presets", "shelf"] as const;
export type StickSource = (typeof stickSources)[number];

/** What is laid on which stick. */
export interface StickTrial {
  readonly stick: Stick;
  readonly source: StickSource;
  /** Ids of the instruments ticked; null: all there are. */
  readonly ticked: readonly string[] | null;
}

/** What is known and chosen in the shop whichever instrument is open. Plain data. */
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
  readonly sticks: OwnedSticks;
  readonly trial: StickTrial;
}

/** A stick of 7.5 mm is tried first: what many shops own; common practice, no source. */
export const firstTrial: StickTrial = {
  stick: { thickness: 7.5, width: null },
  source: "both",
  ticked: null,
};

export const firstShop: Shop = {
  finished: [],
  demo: true,
  panel: "work",
  step: "level",
  goal: null,
  shares: {},
  sticks: { owned: [], past: [], future: [], step: null },
  trial: firstTrial,
};

/** The page's shop; null until it has been read from the browser. */
export type ShopStore = StoreApi<Shop | null>;

export const makeShopStore = (): ShopStore => createStore<Shop | null>(() => null);

/** Changes the shop; one that has not been read yet is left alone. */
export const editShop = (store: ShopStore, edit: (shop: Shop) => Shop): void =>
  store.setState((shop) => (shop === null ? null : edit(shop)), true);

/** Learns from an instrument if it is finished, in place of what was learnt from the same before. */
export function learnFrom(shop: Shop, one: FinishedInstrument): Shop {
  const others = learntWithout(shop, one.instrument.id);
  return { ...shop, finished: one.asBuilt.finished === null ? others : [...others, one] };
}

/** Learns no more from an instrument. */
export const forget = (shop: Shop, id: string): Shop => ({
  ...shop,
  finished: learntWithout(shop, id),
});

const learntWithout = ({ finished }: Shop, id: string): Shop["finished"] =>
  finished.filter(({ instrument }) => instrument.id !== id);
