import { withVersion } from "../../instrument/file-version.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import { sayPhrase } from "../../instrument/phrase.ts";
import { type ReadInstrumentResult, readInstrument } from "../../instrument/read-instrument.ts";
import { instrumentSchema } from "../../instrument/schema.ts";
import { unknownKeys } from "../../instrument/unknown-keys.ts";
import { type Comparison, firstComparison } from "../document/comparison.ts";
import { asJson } from "../document/json.ts";
import { hasPlan, solvedPlan } from "../document/plan.ts";
import { type Document, newDocument } from "../document/state.ts";
import { readComparison } from "./comparison-form.ts";
import type { FilePiece } from "./file-text.ts";
import { type LeftOut, type Mended, readMended } from "./leave-out.ts";
import { readModel } from "./read-document.ts";
import { readRecord } from "./record-form.ts";
import { fileLimits } from "./shelf-file.ts";

/** A place in the file that could not be taken in, and why. */
export interface BadEntry {
  readonly path: string;
  readonly reason: string;
}

type Read<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly bad: readonly BadEntry[] };

/** Most groups, lists and names in one instrument's JSON, and most reasons given for one. */
const limits = { parts: 5_000, reasons: 50 } as const;

interface FileEntryRead {
  readonly document: Document;
  /** What could not be read and was left out: names that are no field's, and parts beside the measures. */
  readonly leftOut: readonly BadEntry[];
}

/** One instrument of a file with what belongs to it, or every reason why it cannot be taken in. */
export function readFileEntry({ path, text, bare }: FilePiece): Read<FileEntryRead> {
  if (text.length > fileLimits.instrument)
    return bad(path, "This holds too much for an instrument.");
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return bad(path, "This is no JSON text.");
  }
  if (holdsMore(json, limits.parts)) return bad(path, "This holds too much for an instrument.");
  const read = readParts(bare ? { instrument: json } : json, bare ? "" : `${path}.`);
  if (!read.ok) return { ok: false, bad: inShort(read.bad, path) };
  const instrument = bare ? json : asJson(json)["instrument"];
  const unknown = unknownIn(instrument, bare ? "" : `${path}.instrument`);
  const { document, leftOut } = read.value;
  return { ok: true, value: { document, leftOut: inShort([...unknown, ...leftOut], path) } };
}

const unknownIn = (instrument: unknown, place: string): readonly BadEntry[] =>
  unknownKeys(instrument).map(({ path, nearest }) => ({
    path: within(place, path),
    reason:
      nearest === null ? "No field has this name." : `No field has this name; ${nearest} is one.`,
  }));

/** One reason a place, and no more than anyone would read. */
function inShort(reasons: readonly BadEntry[], path: string): readonly BadEntry[] {
  const first = [...new Map(reasons.map((one) => [one.path, one])).values()];
  if (first.length <= limits.reasons) return first;
  const more = { path, reason: `And ${first.length - limits.reasons} more.` };
  return [...first.slice(0, limits.reasons), more];
}

function readParts(json: unknown, at: string): Read<FileEntryRead> {
  const { instrument, lastGood, comparison, asBuilt } = asJson(json);
  const stated = readStated(instrument, lastGood, at);
  if (!stated.ok) return stated;
  const compared = comparison === undefined ? noComparison : readComparison(comparison);
  const record = readRecord(asBuilt);
  const { document, leftOut } = stated.value;
  return {
    ok: true,
    value: {
      document: {
        ...withOwnVersions(document),
        comparison: compared.value,
        asBuilt: record.value,
        ...readModel(asJson(json)),
      },
      leftOut: [
        ...leftOut,
        ...named(compared.leftOut, `${at}comparison`),
        ...named(record.leftOut, `${at}asBuilt`),
      ],
    },
  };
}

/** A file states the version that its variants need too; in a document each instrument has its own. */
function withOwnVersions(document: Document): Document {
  const instrument = withVersion(document.instrument);
  const isSame = document.lastGood === document.instrument;
  return {
    ...document,
    instrument,
    lastGood: isSame ? instrument : withVersion(document.lastGood),
  };
}

const noComparison: Mended<Comparison> = { value: firstComparison, leftOut: [] };

const named = (leftOut: readonly LeftOut[], place: string): readonly BadEntry[] =>
  leftOut.map(({ path, reason }) => ({ path: within(place, path), reason }));

/** The instrument; one without a plan only beside the last that had one. */
function readStated(json: unknown, lastGood: unknown, at: string): Read<FileEntryRead> {
  if (lastGood === undefined) return readSound(json, at === "" ? "" : `${at}instrument`);
  const draft = withoutTolerances(json, (one) => {
    const parsed = instrumentSchema.safeParse(one);
    return parsed.success ? { ok: true, instrument: parsed.data } : problemsIn(one);
  });
  if (draft === null) return badInstrument(readInstrument(json), `${at}instrument`);
  const read = readSound(lastGood, `${at}lastGood`);
  if (!read.ok) return read;
  const { document, leftOut } = read.value;
  const instrument = { ...draft.value, id: document.instrument.id };
  const own = named(draft.leftOut, `${at}instrument`);
  return {
    ok: true,
    value: { document: { ...document, instrument }, leftOut: [...own, ...leftOut] },
  };
}

const problemsIn = (json: unknown): ReadInstrumentResult => {
  const read = readInstrument(json);
  return read.ok ? { ok: false, problems: [] } : read;
};

/** An instrument that has a plan. */
function readSound(json: unknown, place: string): Read<FileEntryRead> {
  const read = withoutTolerances(json, readInstrument);
  if (read === null) return badInstrument(readInstrument(json), place);
  const instrument = read.value;
  const plan = hasPlan(instrument) ? { ok: true as const } : solvedPlan(instrument);
  if (!plan.ok) return bad(within(place, plan.refusal.field), sayPhrase(plan.refusal.why, "mm"));
  return {
    ok: true,
    value: { document: newDocument(instrument), leftOut: named(read.leftOut, place) },
  };
}

/**
 * An instrument without those of its tolerances that cannot be read. Its measures are all there or it is none:
 * another's in their place would be a guitar that nobody stated.
 */
const withoutTolerances = (
  json: unknown,
  read: (json: unknown) => ReadInstrumentResult,
): Mended<Instrument> | null =>
  readMended(
    json,
    (one) => {
      const result = read(one);
      return result.ok ? { ok: true, value: result.instrument } : result;
    },
    { isWhole: (path) => !path.startsWith("tolerances.") },
  );

function badInstrument(read: ReadInstrumentResult, place: string): Read<never> {
  const problems = read.ok ? [] : read.problems;
  const reasons = problems.map(({ path, message }) => ({
    path: within(place, path),
    reason: message,
  }));
  return { ok: false, bad: reasons };
}

const within = (place: string, path: string): string =>
  [place, path].filter((part) => part !== "").join(".");

const bad = (path: string, reason: string): { ok: false; bad: readonly BadEntry[] } => ({
  ok: false,
  bad: [{ path, reason }],
});

/** Whether a value has more than so many groups, lists and names in it. Texts and numbers in a list cost nothing to look at. */
function holdsMore(json: unknown, most: number): boolean {
  const waiting: object[] = isGroup(json) ? [json] : [];
  let count = 0;
  for (let one = waiting.pop(); one !== undefined; one = waiting.pop()) {
    const parts: readonly unknown[] = Object.values(one);
    const groups = parts.filter(isGroup);
    count += 1 + (Array.isArray(one) ? 0 : parts.length);
    if (count + waiting.length + groups.length > most) return true;
    for (const group of groups) waiting.push(group);
  }
  return false;
}

const isGroup = (value: unknown): value is object => typeof value === "object" && value !== null;
