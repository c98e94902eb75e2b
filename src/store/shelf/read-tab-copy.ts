import { type AsBuilt, emptyAsBuilt } from "../../instrument/as-built/as-built.ts";
import type { MeasurementKey } from "../../instrument/as-built/measurement-fields.ts";
import { fieldGroups } from "../../instrument/fields.ts";
import { type Comparison, firstComparison } from "../document/comparison.ts";
import { readEditId } from "../document/edit-id.ts";
import { asJson, type Json } from "../document/json.ts";
import {
  type Choices,
  firstChoices,
  firstState,
  type State,
  stretches,
} from "../document/state.ts";
import { keptFromOne } from "../files/migrations.ts";
import { isUnits, type PartReader, readDocument, readHistory } from "../files/read-document.ts";
import type { TextStorage } from "./browser-storage.ts";
import { type LastShown, readLastShown } from "./last-shown.ts";
import { tabKey } from "./tab-copy.ts";

/** The state as last stored. Whatever of it cannot be read is left out; with nothing readable, the first state. */
export function readTabCopy(storage: TextStorage): State {
  try {
    const kept = keptIn(storage);
    const document = readDocument(kept, outerForms)?.value ?? null;
    if (document === null) return firstState;
    const previous = readDocument(asJson(kept["putAway"]), outerForms)?.value ?? null;
    const choices = readChoices(asJson(kept["choices"]));
    const editId = readEditId(kept["stamp"]);
    return {
      ...firstState,
      ...document,
      ...readHistory(kept["history"], outerForms).value,
      previous,
      choices,
      editId,
    };
  } catch {
    return firstState;
  }
}

/** What the tab's copy says was on screen when it was stored. */
export function shownInTabCopy(storage: TextStorage): LastShown | undefined {
  try {
    return readLastShown(asJson(JSON.parse(storage.getItem(tabKey) ?? "null"))["shown"]);
  } catch {
    return undefined;
  }
}

/** What is stored of the tab, in the names of version 2. Throws where it is no JSON. */
export function keptIn(storage: TextStorage): Json {
  const read = (one: string): Json => asJson(JSON.parse(storage.getItem(one) ?? "null"));
  const kept = read(tabKey);
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
    introduced: true,
    folded: fieldGroups.map(([group]) => group).filter((group) => groups.includes(group)),
  };
}

/**
 * The tab's own comparison and record are taken by their outer form: the first drawing does not wait
 * for what reads them through. `withValidParts` does that once the shelf opens.
 */
const outerForms: PartReader = {
  comparison: (json) => ({ value: isComparison(json) ? json : firstComparison, leftOut: [] }),
  record: (json) => ({ value: isRecord(json) ? json : emptyAsBuilt, leftOut: [] }),
  isKey: (_: string): _ is MeasurementKey => true,
};

function isComparison(json: unknown): json is Comparison {
  const { variants, sweep, map, sure } = asJson(json);
  return Array.isArray(variants) && [sweep, map, sure].every(isGroup);
}

function isRecord(json: unknown): json is AsBuilt {
  const { format, version, readings, done, notes, taken, strings } = asJson(json);
  const known = format === "rimwright-as-built" && version === 1;
  return known && [readings, done, notes].every(isGroup) && [taken, strings].every(Array.isArray);
}

const isGroup = (json: unknown): boolean => typeof json === "object" && json !== null;
