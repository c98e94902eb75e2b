import type { AsBuilt } from "../../instrument/as-built/as-built.ts";
import type { MeasurementKey } from "../../instrument/as-built/measurement-fields.ts";
import { fieldGroups } from "../../instrument/fields.ts";
import { type Comparison, firstComparison } from "../document/comparison.ts";
import { asJson, type Json } from "../document/json.ts";
import { readStamp } from "../document/stamp.ts";
import {
  type Choices,
  firstChoices,
  firstState,
  type History,
  type State,
  stretches,
} from "../document/state.ts";
import { workIn } from "../document/undo.ts";
import { keptFromOne } from "../files/migrations.ts";
import { type BesideReader, isUnits, readHistory, readWork } from "../files/read-document.ts";

/** What the browser keeps between visits; `Storage` is one. */
export interface Keeper {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
}

const key = "rimwright";

/** Acts kept each way, to be taken back after a reload. */
const keptActs = 40;

export const keptHistory = ({ past, future }: History): History => ({
  past: past.slice(-keptActs),
  future: future.slice(0, keptActs),
});

/** Writes the state down: without its history where there is no room for that. A browser that refuses to keep anything is no fault of the page's. */
export function keep(keeper: Keeper, state: State): boolean {
  const { putAway, choices, stamp } = state;
  const kept = { version: 2, ...workIn(state), putAway, choices, stamp };
  return [{ ...kept, history: keptHistory(state) }, kept].some((one) => {
    try {
      keeper.setItem(key, JSON.stringify(one));
      return true;
    } catch {
      return false;
    }
  });
}

/** The state as last kept. Whatever of it cannot be read is left out; with nothing readable, the first state. */
export function recall(keeper: Keeper): State {
  try {
    const kept = keptIn(keeper);
    const work = readWork(kept, onTrust);
    if (work === null) return firstState;
    const putAway = readWork(asJson(kept["putAway"]), onTrust);
    const choices = readChoices(asJson(kept["choices"]));
    const stamp = readStamp(kept["stamp"]);
    return {
      ...firstState,
      ...work,
      ...readHistory(kept["history"], onTrust),
      putAway,
      choices,
      stamp,
    };
  } catch {
    return firstState;
  }
}

function keptIn(keeper: Keeper): Json {
  const read = (one: string): Json => asJson(JSON.parse(keeper.getItem(one) ?? "null"));
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
 * for what reads them through. `withSoundBeside` does that once the shelf opens.
 */
const onTrust: BesideReader = {
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
