import { createStore, type StoreApi } from "zustand/vanilla";
import { type FinishedInstrument, readAsBuilt } from "../instrument/as-built.ts";
import { isReadingKey } from "../instrument/as-built-fields.ts";
import { readInstrument } from "../instrument/read-instrument.ts";
import { isStepId } from "../instrument/steps.ts";
import { goals } from "../profile/outlook.ts";
import { remedyIds } from "../profile/remedy.ts";
import { type Bench, benchPanels, firstBench, type ReadingTexts } from "./bench.ts";
import { asJson } from "./json.ts";
import type { Keeper } from "./keep.ts";

export type BenchStore = StoreApi<Bench>;

const key = "rimwright-bench";

/** A store of what was done at the bench that goes on where the last visit stopped. */
export function makeBenchStore(keeper: Keeper): BenchStore {
  const store = createStore<Bench>(() => recalled(keeper));
  store.subscribe((bench) => {
    try {
      keeper.setItem(key, JSON.stringify(bench));
    } catch {
      // A browser that refuses to keep anything is no fault of the page's.
    }
  });
  return store;
}

function recalled(keeper: Keeper): Bench {
  try {
    return readBench(JSON.parse(keeper.getItem(key) ?? "null"));
  } catch {
    return firstBench;
  }
}

/** What was kept, from any JSON value: whatever cannot be read of it is as it is at first. */
export function readBench(json: unknown): Bench {
  const { records, texts, finished, demo, panel, step, goal, shares } = asJson(json);
  return {
    records: Object.fromEntries(
      Object.entries(asJson(records)).flatMap(([id, one]) => {
        const read = readAsBuilt(one);
        return read.ok ? [[id, read.asBuilt]] : [];
      }),
    ),
    texts: Object.fromEntries(
      Object.entries(asJson(texts)).map(([id, one]) => [id, readTexts(one)]),
    ),
    finished: Array.isArray(finished) ? finished.flatMap(readFinished) : [],
    demo: demo !== false,
    panel: benchPanels.find((one) => one === panel) ?? firstBench.panel,
    step: typeof step === "string" && isStepId(step) ? step : firstBench.step,
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

function readTexts(json: unknown): ReadingTexts {
  return Object.fromEntries(
    Object.entries(asJson(json)).flatMap(([name, typed]) => {
      const { text, units } = asJson(typed);
      return isReadingKey(name) && typeof text === "string" && isUnits(units)
        ? [[name, { text, units }]]
        : [];
    }),
  );
}

const isUnits = (value: unknown) => value === "mm" || value === "in" || value === "in-fraction";
