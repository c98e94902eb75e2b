import { createStore, type StoreApi } from "zustand/vanilla";
import type { FinishedInstrument } from "../../instrument/as-built/as-built.ts";
import type { StepId } from "../../instrument/as-built/steps.ts";
import type { Goal } from "../../profile/bench/outlook.ts";
import type { RemedyId } from "../../profile/bench/remedy.ts";

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

export const firstShop: Shop = {
  finished: [],
  demo: true,
  panel: "work",
  step: "level",
  goal: null,
  shares: {},
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
