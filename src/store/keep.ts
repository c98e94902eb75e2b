import { emptyAsBuilt, readAsBuilt } from "../instrument/as-built.ts";
import { isReadingKey } from "../instrument/as-built-fields.ts";
import type { FieldPath } from "../instrument/field.ts";
import { writeField } from "../instrument/field-path.ts";
import { fieldAt, fieldGroups, fieldPaths, isFieldPath } from "../instrument/fields.ts";
import type { Instrument } from "../instrument/instrument.ts";
import type { Units } from "../instrument/length.ts";
import { readInstrument } from "../instrument/read-instrument.ts";
import { instrumentSchema } from "../instrument/schema.ts";
import { asJson, type Json } from "./json.ts";
import { keptFromOne } from "./migrations.ts";
import { planOf } from "./plan.ts";
import { readComparison } from "./read-comparison.ts";
import { readStamp } from "./stamp.ts";
import {
  type Choices,
  firstChoices,
  firstState,
  type History,
  type State,
  stretches,
  type TypedText,
  type Work,
} from "./state.ts";
import { workIn } from "./undo.ts";

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
    const work = readWork(kept);
    if (work === null) return firstState;
    const putAway = readWork(asJson(kept["putAway"]));
    const choices = readChoices(asJson(kept["choices"]));
    const stamp = readStamp(kept["stamp"]);
    return { ...firstState, ...work, ...readHistory(kept["history"]), putAway, choices, stamp };
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

/** What of a history can be read: a step that cannot is left out. */
export function readHistory(json: unknown): History {
  const { past, future } = asJson(json);
  return { past: readWorks(past), future: readWorks(future) };
}

const readWorks = (json: unknown): readonly Work[] =>
  Array.isArray(json) ? json.map((one) => readWork(asJson(one))).filter((one) => one !== null) : [];

export function readWork(kept: Json): Work | null {
  const [read, record] = [readInstrument(kept["lastGood"]), readAsBuilt(kept["asBuilt"])];
  if (!read.ok || !planOf(read.instrument).ok) return null;
  return {
    instrument: readDraft(kept["instrument"], read.instrument),
    lastGood: read.instrument,
    texts: readTexts(kept["texts"], isFieldPath),
    setAside: readNumbers(asJson(kept["setAside"]), read.instrument),
    comparison: readComparison(kept["comparison"]),
    asBuilt: record.ok ? record.asBuilt : emptyAsBuilt,
    readingTexts: readTexts(kept["readingTexts"], isReadingKey),
  };
}

/** An instrument whose numbers may not go together: each is taken where it is right alone. */
function readDraft(json: unknown, base: Instrument): Instrument {
  const whole = instrumentSchema.safeParse(json);
  if (whole.success) return whole.data;
  const { target, name, notes } = asJson(json);
  const named = readInstrument({
    ...base,
    ...(typeof name === "string" ? { name } : {}),
    ...(typeof notes === "string" ? { notes } : {}),
    target,
  });
  return fieldPaths.reduce(
    (draft, path) => {
      const value = valueAt(json, path);
      return fits(value, path, draft) ? writeField(draft, path, value) : draft;
    },
    named.ok ? named.instrument : base,
  );
}

function fits(value: unknown, path: FieldPath, { target }: Instrument): value is number | null {
  const { min, max, nullWord, quantity } = fieldAt(path, target.kind);
  if (value === null) return nullWord !== undefined;
  return (
    typeof value === "number" &&
    min <= value &&
    value <= max &&
    (quantity !== "count" || Number.isInteger(value))
  );
}

function readTexts<Key extends string>(
  json: unknown,
  isKey: (key: string) => key is Key,
): Readonly<Partial<Record<Key, TypedText>>> {
  const texts: Partial<Record<Key, TypedText>> = {};
  for (const [key, typed] of Object.entries(asJson(json))) {
    const { text, units } = asJson(typed);
    if (isKey(key) && typeof text === "string" && isUnits(units)) texts[key] = { text, units };
  }
  return texts;
}

function readNumbers(json: Json, instrument: Instrument): Work["setAside"] {
  const numbers = Object.entries(json).filter(
    ([path, value]) => value !== null && isFieldPath(path) && fits(value, path, instrument),
  );
  return Object.fromEntries(numbers);
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

function isUnits(value: unknown): value is Units {
  return value === "mm" || value === "in" || value === "in-fraction";
}

function valueAt(json: unknown, path: FieldPath): unknown {
  return path.split(".").reduce<unknown>((node, part) => asJson(node)[part], json);
}
