import type { AsBuilt } from "../../instrument/as-built/as-built.ts";
import type { MeasurementKey } from "../../instrument/as-built/measurement-fields.ts";
import { fieldGroups } from "../../instrument/fields.ts";
import { type Comparison, firstComparison } from "../document/comparison.ts";
import { readEditId } from "../document/edit-id.ts";
import { asJson, type Json } from "../document/json.ts";
import { newId } from "../document/new-id.ts";
import {
  type Choices,
  firstChoices,
  firstState,
  type History,
  type State,
  stretches,
} from "../document/state.ts";
import { makeStore, type Store } from "../document/store.ts";
import { documentIn } from "../document/undo.ts";
import { keptFromOne } from "../files/migrations.ts";
import {
  documentForm,
  historyForm,
  isUnits,
  type PartReader,
  readDocument,
  readHistory,
} from "../files/read-document.ts";
import type { TextStorage } from "./browser-storage.ts";

const key = "rimwright";

/** Steps of undo stored each way, to be taken back after a reload. */
const storedSteps = 40;

export const storedHistory = ({ past, future }: History): History => ({
  past: past.slice(-storedSteps),
  future: future.slice(0, storedSteps),
});

/** Stores the state: without its history where there is no room for that. A browser that refuses to store anything is no fault of the page's. */
export function writeTabCopy(storage: TextStorage, state: State): boolean {
  const { previous, choices, editId } = state;
  const kept = {
    version: 2,
    ...documentForm(documentIn(state)),
    putAway: previous === null ? null : documentForm(previous),
    choices,
    stamp: editId,
  };
  return [{ ...kept, history: historyForm(storedHistory(state)) }, kept].some((one) => {
    try {
      storage.setItem(key, JSON.stringify(one));
      return true;
    } catch {
      return false;
    }
  });
}

/** The state as last stored. Whatever of it cannot be read is left out; with nothing readable, the first state. */
export function readTabCopy(storage: TextStorage): State {
  try {
    const kept = keptIn(storage);
    const document = readDocument(kept, outerForms);
    if (document === null) return firstState;
    const previous = readDocument(asJson(kept["putAway"]), outerForms);
    const choices = readChoices(asJson(kept["choices"]));
    const editId = readEditId(kept["stamp"]);
    return {
      ...firstState,
      ...document,
      ...readHistory(kept["history"], outerForms),
      previous,
      choices,
      editId,
    };
  } catch {
    return firstState;
  }
}

function keptIn(storage: TextStorage): Json {
  const read = (one: string): Json => asJson(JSON.parse(storage.getItem(one) ?? "null"));
  const kept = read(key);
  return kept["version"] === 2
    ? kept
    : keptFromOne(kept, read("rimwright-compare"), read("rimwright-bench"));
}

function readChoices({ units, stretch, turned, folded }: Json): Choices {
  const groups = Array.isArray(folded) ? folded : firstChoices.folded;
  return {
    units: isUnits(units) ? units : firstChoices.units,
    stretch: stretches.find((one) => one === stretch) ?? firstChoices.stretch,
    turned: turned === true,
    folded: fieldGroups.map(([group]) => group).filter((group) => groups.includes(group)),
  };
}

/**
 * The tab's own comparison and record are taken by their outer form: the first drawing does not wait
 * for what reads them through. `withValidParts` does that once the shelf opens.
 */
const outerForms: PartReader = {
  comparison: (json) => (isComparison(json) ? json : firstComparison),
  record: (json) => (isRecord(json) ? json : null),
  isKey: (_: string): _ is MeasurementKey => true,
};

function isComparison(json: unknown): json is Comparison {
  const { variants, sweep, map, sure, family } = asJson(json);
  return Array.isArray(variants) && [sweep, map, sure, family].every(isGroup);
}

function isRecord(json: unknown): json is AsBuilt {
  const { format, version, readings, done, notes, taken, strings } = asJson(json);
  const known = format === "rimwright-as-built" && version === 1;
  return known && [readings, done, notes].every(isGroup) && [taken, strings].every(Array.isArray);
}

const isGroup = (json: unknown): boolean => typeof json === "object" && json !== null;

/** How long edits must rest before they are stored, and the longest that any waits, ms. */
const rest = 300;
const longest = 450;

/** A store of the open document that goes on where the last visit stopped, and is stored once its edits rest. */
export function openTabStore(storage: TextStorage, page: EventTarget): Store {
  const stored = readTabCopy(storage);
  const store = makeStore({ ...stored, run: newId(), initialEditId: stored.editId });
  let since = 0;
  let waiting: ReturnType<typeof setTimeout> | null = null;
  const storeNow = (): void => {
    if (waiting === null) return;
    clearTimeout(waiting);
    waiting = null;
    writeTabCopy(storage, store.getState());
  };
  store.subscribe(() => {
    const now = performance.now();
    if (waiting === null) since = now;
    else clearTimeout(waiting);
    waiting = setTimeout(storeNow, Math.min(rest, since + longest - now));
  });
  page.addEventListener("pagehide", storeNow);
  page.addEventListener("visibilitychange", storeNow);
  return store;
}
