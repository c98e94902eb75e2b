import type { AsBuilt } from "../../instrument/as-built/as-built.ts";
import type { MeasurementKey } from "../../instrument/as-built/measurement-fields.ts";
import type { FieldPath } from "../../instrument/fields.ts";
import { fieldAt, isFieldPath } from "../../instrument/fields.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import type { Units } from "../../instrument/length.ts";
import { readInstrument } from "../../instrument/read-instrument.ts";
import { instrumentSchema } from "../../instrument/schema.ts";
import type { Comparison } from "../document/comparison.ts";
import { asJson, type Json } from "../document/json.ts";
import { hasPlan } from "../document/plan.ts";
import type { Document, History, TypedText } from "../document/state.ts";
import { type Mended, readMended } from "./leave-out.ts";

/** How what is kept beside an instrument is read. */
export interface PartReader {
  readonly comparison: (json: unknown) => Mended<Comparison>;
  readonly record: (json: unknown) => Mended<AsBuilt>;
  readonly isKey: (key: string) => key is MeasurementKey;
}

/** What of a history can be read: a step that cannot is left out. */
export function readHistory(json: unknown, reader: PartReader): History {
  const { past, future } = asJson(json);
  const documents = (list: unknown): readonly Document[] =>
    Array.isArray(list)
      ? list.flatMap((one) => readDocument(asJson(one), reader)?.value ?? [])
      : [];
  return { past: documents(past), future: documents(future) };
}

/** A document as it was stored, without the parts of it that cannot be read; null where there is no instrument with a plan. */
export function readDocument(kept: Json, reader: PartReader): Mended<Document> | null {
  const { instrument: stated, lastGood } = kept;
  const good = readGood(lastGood, stated) ?? readGood(stated, lastGood);
  if (good === null) return null;
  const draft = readDraft(stated, good.value);
  const comparison = reader.comparison(kept["comparison"]);
  const record = reader.record(kept["asBuilt"]);
  const document = {
    instrument: draft.value,
    lastGood: good.value,
    texts: readTexts(kept["texts"], isFieldPath),
    lastNumbers: readNumbers(asJson(kept["setAside"]), good.value),
    comparison: comparison.value,
    asBuilt: record.value,
    readingTexts: readTexts(kept["readingTexts"], reader.isKey),
  };
  const own = draft.leftOut.length > 0 ? draft.leftOut : good.leftOut;
  return { value: document, leftOut: [...own, ...comparison.leftOut, ...record.leftOut] };
}

/** Where a fault is one of the whole instrument. */
const whole = ["format", "version", "id"];

/** An instrument that has a plan. */
function readGood(json: unknown, beside: unknown): Mended<Instrument> | null {
  const read = readMended(
    json,
    (one) => {
      const result = readInstrument(one);
      return result.ok ? { ok: true, value: result.instrument } : result;
    },
    { beside, whole },
  );
  return read !== null && hasPlan(read.value) ? read : null;
}

/** An instrument whose numbers may not go together: each is taken where it is right alone. */
function readDraft(json: unknown, base: Instrument): Mended<Instrument> {
  const read = readMended(
    json,
    (one) => {
      const parsed = instrumentSchema.safeParse(one);
      if (parsed.success) return { ok: true, value: parsed.data };
      const result = readInstrument(one);
      return { ok: false, problems: result.ok ? [] : result.problems };
    },
    { beside: base, whole },
  );
  return read ?? { value: base, leftOut: [] };
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
  const texts: Readonly<Partial<Record<string, TypedText>>> = Object.fromEntries(
    Object.entries(asJson(json)).flatMap(([key, typed]) => {
      const { text, units } = asJson(typed);
      return isKey(key) && typeof text === "string" && isUnits(units)
        ? [[key, { text, units }] as const]
        : [];
    }),
  );
  return texts as Readonly<Partial<Record<Key, TypedText>>>;
}

function readNumbers(json: Json, instrument: Instrument): Document["lastNumbers"] {
  const numbers = Object.entries(json).filter(
    ([path, value]) => value !== null && isFieldPath(path) && fits(value, path, instrument),
  );
  return Object.fromEntries(numbers);
}

export function isUnits(value: unknown): value is Units {
  return value === "mm" || value === "in" || value === "in-fraction";
}
