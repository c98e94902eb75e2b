import type { FinishedInstrument } from "../../instrument/as-built/as-built.ts";
import { readAsBuilt } from "../../instrument/as-built/read-as-built.ts";
import { isStepId } from "../../instrument/as-built/steps.ts";
import { readInstrument } from "../../instrument/read-instrument.ts";
import { goals } from "../../profile/bench/outlook.ts";
import { remedyNames } from "../../profile/bench/remedy.ts";
import { asJson } from "../document/json.ts";
import type { State } from "../document/state.ts";
import type { Store } from "../document/store.ts";
import { readSticks, stickSchema } from "../files/sticks-form.ts";
import type { TextStorage } from "./browser-storage.ts";
import {
  benchPanels,
  editShop,
  firstShop,
  firstTrial,
  learnFrom,
  type OwnedSticks,
  type Shop,
  type ShopStore,
  type StickTrial,
  stickSources,
} from "./shop.ts";

const key = "rimwright-shop";

/** Until version 2 the shop was stored with the records, under this key. */
const keyBefore = "rimwright-bench";

/** A stick that is dragged is stored once the hand rests, ms: the shop may hold hundreds of records. */
const rest = 300;

/**
 * Has the shop go on where the last visit stopped, be stored with each change, learn from what is finished on
 * `page`, and follow what other tabs store, of which `tabs` tells (the window, by its storage event).
 */
export function openShop(
  shop: ShopStore,
  storage: TextStorage,
  page: Store,
  tabs: EventTarget,
): void {
  shop.setState(loadShop(storage), true);
  let isFollowing = false;
  let waiting: ReturnType<typeof setTimeout> | undefined;
  const store = (): void => {
    clearTimeout(waiting);
    waiting = undefined;
    try {
      storage.setItem(key, JSON.stringify(shop.getState()));
    } catch {
      // A browser that refuses to store anything is no fault of the page's.
    }
  };
  tabs.addEventListener("storage", (event) => {
    isFollowing = true;
    followTab(shop, event as StorageEvent);
    isFollowing = false;
  });
  tabs.addEventListener("pagehide", () => {
    if (waiting !== undefined) store();
  });
  shop.subscribe((after, before) => {
    // What another tab has stored is not stored back, or two tabs would go on for ever.
    if (isFollowing) return;
    clearTimeout(waiting);
    if (isTrialAlone(after, before)) waiting = setTimeout(store, rest);
    else store();
  });
  page.subscribe((after, before) => followFinish(shop, after, before));
}

/** Whether nothing but what is tried on which stick is another. */
const isTrialAlone = (after: Shop | null, before: Shop | null): boolean =>
  after !== null &&
  before !== null &&
  (Object.keys(after) as (keyof Shop)[]).every(
    (part) => part === "trial" || after[part] === before[part],
  );

/** Another tab's sticks, and what it learns from, are this one's too; what is chosen stays each tab's own. */
function followTab(shop: ShopStore, { key: changed, newValue }: StorageEvent): void {
  const json = changed === key && newValue !== null ? jsonIn(newValue) : null;
  if (json === null) return;
  const { sticks, finished } = readShop(json);
  editShop(shop, (all) => ({ ...all, sticks, finished }));
}

/** Finished or opened again, by hand, by undo or in another tab: it is learnt from, or no more. */
function followFinish(shop: ShopStore, after: State, before: State): void {
  const { instrument, lastGood, asBuilt } = after;
  if (instrument.id !== before.instrument.id) return;
  if (asBuilt.finished === before.asBuilt.finished) return;
  editShop(shop, (all) => learnFrom(all, { instrument: lastGood, asBuilt, invented: false }));
}

function loadShop(storage: TextStorage): Shop {
  try {
    return readShop(jsonIn(storage.getItem(key) ?? storage.getItem(keyBefore) ?? ""));
  } catch {
    return firstShop;
  }
}

function jsonIn(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

/** What was stored, from any JSON value: whatever cannot be read of it is as it is at first. */
export function readShop(json: unknown): Shop {
  const { finished, demo, panel, step, goal, shares, sticks, trial } = asJson(json);
  return {
    finished: Array.isArray(finished) ? finished.flatMap(readFinished) : [],
    demo: demo !== false,
    panel: benchPanels.find((one) => one === panel) ?? firstShop.panel,
    step: typeof step === "string" && isStepId(step) ? step : firstShop.step,
    goal: goals.find((one) => one === goal) ?? null,
    shares: Object.fromEntries(
      Object.keys(remedyNames).flatMap((id) => {
        const share = asJson(shares)[id];
        return typeof share === "number" && share >= 0 && share <= 100 ? [[id, share]] : [];
      }),
    ),
    sticks: readOwned(sticks),
    trial: readTrial(trial),
  };
}

function readOwned(json: unknown): OwnedSticks {
  const { owned, past, future } = asJson(json);
  const steps = (list: unknown) =>
    Array.isArray(list) ? list.map((one) => readSticks(one).value) : [];
  const { value } = readSticks(owned ?? undefined);
  return { owned: value, past: steps(past), future: steps(future), step: null };
}

function readTrial(json: unknown): StickTrial {
  const { stick, source, ticked } = asJson(json);
  const read = stickSchema.safeParse({ id: "", name: "", ...asJson(stick) });
  const { thickness, width } = read.success ? read.data : firstTrial.stick;
  return {
    stick: { thickness, width },
    source: stickSources.find((one) => one === source) ?? firstTrial.source,
    ticked: Array.isArray(ticked) ? ticked.filter((id) => typeof id === "string") : null,
  };
}

function readFinished(json: unknown): readonly FinishedInstrument[] {
  const { instrument, asBuilt } = asJson(json);
  const [stated, record] = [readInstrument(instrument), readAsBuilt(asBuilt)];
  return stated.ok && record.ok
    ? [{ instrument: stated.instrument, asBuilt: record.asBuilt, invented: false }]
    : [];
}
