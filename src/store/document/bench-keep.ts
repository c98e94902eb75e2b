import { createStore } from "zustand/vanilla";
import {
  type AsBuilt,
  emptyAsBuilt,
  type FinishedInstrument,
} from "../../instrument/as-built/as-built.ts";
import { readAsBuilt } from "../../instrument/as-built/read-as-built.ts";
import { isStepId } from "../../instrument/as-built/steps.ts";
import { readInstrument } from "../../instrument/read-instrument.ts";
import { goals } from "../../profile/bench/outlook.ts";
import { remedyIds } from "../../profile/bench/remedy.ts";
import type { Keeper } from "../shelf/keep.ts";
import { type Bench, benchPanels, firstShop, recordOn, type Shop, textsOn } from "./bench.ts";
import { besideEditor } from "./beside.ts";
import { measurementTextsGesture, recordGesture } from "./gesture.ts";
import { asJson } from "./json.ts";
import { type Part, partOf, remembered } from "./part.ts";
import type { MeasurementTexts, State } from "./state.ts";
import { makeStore, type Store } from "./store.ts";

export type BenchStore = Part<Bench>;

const key = "rimwright-shop";

/** Until version 2 the shop was kept with the records, under this key. */
const keyBefore = "rimwright-bench";

/**
 * The bench as its view reads and edits it: the shop, which goes on where the last visit stopped, and
 * the record of the instrument open on `page`, which is kept with that. What is done to the record can
 * be taken back.
 */
export function makeBenchStore(keeper: Keeper, page: Store = makeStore()): BenchStore {
  const shop = createStore<Shop>(() => recalled(keeper));
  shop.subscribe((after) => {
    try {
      keeper.setItem(key, JSON.stringify(after));
    } catch {
      // A browser that refuses to keep anything is no fault of the page's.
    }
  });
  page.subscribe((after, before) => followFinish(shop, after, before));
  const edit = besideEditor(page);
  const bench = remembered(benchOf);
  const read = (): Bench => {
    const { instrument, asBuilt, readingTexts } = page.getState();
    return bench(shop.getState(), instrument.id, asBuilt, readingTexts);
  };
  return partOf([page, shop], read, (before, after) => {
    const { records: _, texts: __, ...rest } = after;
    if (shopKeys.some((one) => before[one] !== after[one])) shop.setState(rest, true);
    editRecord(edit, before, after, page.getState().instrument.id);
  });
}

const shopKeys = Object.keys(firstShop) as readonly (keyof Shop)[];

function benchOf(shop: Shop, id: string, asBuilt: AsBuilt, typed: MeasurementTexts): Bench {
  const begun = JSON.stringify(asBuilt) !== JSON.stringify(emptyAsBuilt);
  return { ...shop, records: begun ? { [id]: asBuilt } : {}, texts: { [id]: typed } };
}

function editRecord(
  edit: (change: (state: State) => State) => void,
  before: Bench,
  after: Bench,
  id: string,
): void {
  const [was, asBuilt] = [recordOn(before, id), recordOn(after, id)];
  const [wasTyped, readingTexts] = [textsOn(before, id), textsOn(after, id)];
  if (asBuilt === was && readingTexts === wasTyped) return;
  const gesture = measurementTextsGesture(wasTyped, readingTexts) || recordGesture(was, asBuilt);
  edit((state) => ({ ...state, asBuilt, readingTexts, gesture }));
}

/** Finished or opened again, by hand, by undo or in another tab: it is learnt from, or no more. */
function followFinish(
  shop: { setState(edit: (shop: Shop) => Shop): void },
  after: State,
  before: State,
): void {
  const { instrument, lastGood, asBuilt } = after;
  if (instrument.id !== before.instrument.id) return;
  if (asBuilt.finished === before.asBuilt.finished) return;
  shop.setState((state) => learning(state, { instrument: lastGood, asBuilt, invented: false }));
}

/** The shop learning from an instrument if it is finished, in place of what it had of the same. */
export function learning<Of extends Shop>(shop: Of, one: FinishedInstrument): Of {
  const others = shop.finished.filter(({ instrument }) => instrument.id !== one.instrument.id);
  return { ...shop, finished: one.asBuilt.finished === null ? others : [...others, one] };
}

function recalled(keeper: Keeper): Shop {
  try {
    return readShop(JSON.parse(keeper.getItem(key) ?? keeper.getItem(keyBefore) ?? "null"));
  } catch {
    return firstShop;
  }
}

/** What was kept, from any JSON value: whatever cannot be read of it is as it is at first. */
export function readShop(json: unknown): Shop {
  const { finished, demo, panel, step, goal, shares } = asJson(json);
  return {
    finished: Array.isArray(finished) ? finished.flatMap(readFinished) : [],
    demo: demo !== false,
    panel: benchPanels.find((one) => one === panel) ?? firstShop.panel,
    step: typeof step === "string" && isStepId(step) ? step : firstShop.step,
    goal: goals.find((one) => one === goal) ?? null,
    shares: Object.fromEntries(
      remedyIds.flatMap((id) => {
        const share = asJson(shares)[id];
        return typeof share === "number" && share >= 0 && share <= 100 ? [[id, share]] : [];
      }),
    ),
  };
}

function readFinished(json: unknown): readonly FinishedInstrument[] {
  const { instrument, asBuilt } = asJson(json);
  const [stated, record] = [readInstrument(instrument), readAsBuilt(asBuilt)];
  return stated.ok && record.ok
    ? [{ instrument: stated.instrument, asBuilt: record.asBuilt, invented: false }]
    : [];
}
