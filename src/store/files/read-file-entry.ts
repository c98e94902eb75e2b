import { type AsBuilt, emptyAsBuilt } from "../../instrument/as-built/as-built.ts";
import { readAsBuilt } from "../../instrument/as-built/read-as-built.ts";
import { sayPhrase } from "../../instrument/phrase.ts";
import { type ReadInstrumentResult, readInstrument } from "../../instrument/read-instrument.ts";
import { instrumentSchema } from "../../instrument/schema.ts";
import { unknownKeys } from "../../instrument/unknown-keys.ts";
import { type Comparison, firstComparison } from "../document/comparison.ts";
import { asJson } from "../document/json.ts";
import { hasPlan, solvedPlan } from "../document/plan.ts";
import { type Document, newDocument } from "../document/state.ts";
import { comparisonSchema } from "./comparison-form.ts";
import type { FilePiece } from "./file-text.ts";
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
  /** Names in the instrument that are no field's, and were left out. */
  readonly unknown: readonly BadEntry[];
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
  return { ok: true, value: { document: read.value, unknown } };
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

function readParts(json: unknown, at: string): Read<Document> {
  const { instrument, lastGood, comparison, asBuilt } = asJson(json);
  const stated = readStated(instrument, lastGood, at);
  if (!stated.ok) return stated;
  const compared = readCompared(comparison, `${at}comparison`);
  if (!compared.ok) return compared;
  const record = readRecord(asBuilt, `${at}asBuilt`);
  if (!record.ok) return record;
  const document = { ...stated.value, comparison: compared.value, asBuilt: record.value };
  return { ok: true, value: document };
}

/** The instrument; one without a plan only beside the last that had one. */
function readStated(json: unknown, lastGood: unknown, at: string): Read<Document> {
  if (lastGood === undefined) return readSound(json, at === "" ? "" : `${at}instrument`);
  const draft = instrumentSchema.safeParse(json);
  if (!draft.success) return badInstrument(readInstrument(json), `${at}instrument`);
  const read = readSound(lastGood, `${at}lastGood`);
  if (!read.ok) return read;
  const { id } = read.value.instrument;
  return { ok: true, value: { ...read.value, instrument: { ...draft.data, id } } };
}

/** An instrument that has a plan. */
function readSound(json: unknown, place: string): Read<Document> {
  const read = readInstrument(json);
  if (!read.ok) return badInstrument(read, place);
  if (hasPlan(read.instrument)) return { ok: true, value: newDocument(read.instrument) };
  const plan = solvedPlan(read.instrument);
  if (plan.ok) return { ok: true, value: newDocument(read.instrument) };
  return bad(within(place, plan.refusal.field), sayPhrase(plan.refusal.why, "mm"));
}

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

function readCompared(json: unknown, path: string): Read<Comparison> {
  if (json === undefined) return { ok: true, value: firstComparison };
  const parsed = comparisonSchema.safeParse(json);
  if (parsed.success) return { ok: true, value: parsed.data };
  return {
    ok: false,
    bad: parsed.error.issues.map((issue) => ({
      path: within(path, issue.path.map(String).join(".")),
      reason: "This is not what a comparison holds there.",
    })),
  };
}

function readRecord(json: unknown, path: string): Read<AsBuilt> {
  if (json === undefined) return { ok: true, value: emptyAsBuilt };
  const read = readAsBuilt(json);
  if (read.ok) return { ok: true, value: read.asBuilt };
  return {
    ok: false,
    bad: read.problems.map((one) => ({
      path: within(path, one.path),
      reason: one.message,
    })),
  };
}

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
