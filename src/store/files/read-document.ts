import { type AsBuilt, emptyAsBuilt } from "../../instrument/as-built/as-built.ts";
import type { MeasurementKey } from "../../instrument/as-built/measurement-fields.ts";
import { writeField } from "../../instrument/field-value.ts";
import type { FieldPath } from "../../instrument/fields.ts";
import { fieldAt, fieldPaths, isFieldPath } from "../../instrument/fields.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import type { Units } from "../../instrument/length.ts";
import { readInstrument } from "../../instrument/read-instrument.ts";
import { instrumentSchema } from "../../instrument/schema.ts";
import type { Comparison } from "../document/comparison.ts";
import { asJson, type Json } from "../document/json.ts";
import { hasPlan } from "../document/plan.ts";
import type { Document, History, TypedText } from "../document/state.ts";

/** How what is kept beside an instrument is read. */
export interface PartReader {
  readonly comparison: (json: unknown) => Comparison;
  /** Null where it cannot be. */
  readonly record: (json: unknown) => AsBuilt | null;
  readonly isKey: (key: string) => key is MeasurementKey;
}

/** What of a history can be read: a step that cannot is left out. */
export function readHistory(json: unknown, reader: PartReader): History {
  const { past, future } = asJson(json);
  const documents = (list: unknown): readonly Document[] =>
    Array.isArray(list)
      ? list.map((one) => readDocument(asJson(one), reader)).filter((one) => one !== null)
      : [];
  return { past: documents(past), future: documents(future) };
}

export function readDocument(kept: Json, reader: PartReader): Document | null {
  const read = readInstrument(kept["lastGood"]);
  if (!read.ok || !hasPlan(read.instrument)) return null;
  return {
    instrument: readDraft(kept["instrument"], read.instrument),
    lastGood: read.instrument,
    texts: readTexts(kept["texts"], isFieldPath),
    lastNumbers: readNumbers(asJson(kept["setAside"]), read.instrument),
    comparison: reader.comparison(kept["comparison"]),
    asBuilt: reader.record(kept["asBuilt"]) ?? emptyAsBuilt,
    readingTexts: readTexts(kept["readingTexts"], reader.isKey),
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

function valueAt(json: unknown, path: FieldPath): unknown {
  return path.split(".").reduce<unknown>((node, part) => asJson(node)[part], json);
}
