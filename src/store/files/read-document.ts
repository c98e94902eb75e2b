import type { AsBuilt } from "../../instrument/as-built/as-built.ts";
import type { MeasurementKey } from "../../instrument/as-built/measurement-fields.ts";
import type { FieldPath } from "../../instrument/fields.ts";
import { fieldAt, isFieldPath } from "../../instrument/fields.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import type { Units } from "../../instrument/length.ts";
import { readInstrument } from "../../instrument/read-instrument.ts";
import { instrumentSchema } from "../../instrument/schema.ts";
import { textLimits } from "../../instrument/text-limits.ts";
import type { Comparison } from "../document/comparison.ts";
import { asJson, type Json } from "../document/json.ts";
import { hasPlan } from "../document/plan.ts";
import type { Document, History, TypedText } from "../document/state.ts";
import { type LeftOut, type Mended, readMended } from "./leave-out.ts";

/** How what is kept beside an instrument is read. */
export interface PartReader {
  readonly comparison: (json: unknown) => Mended<Comparison>;
  readonly record: (json: unknown) => Mended<AsBuilt>;
  readonly isKey: (key: string) => key is MeasurementKey;
}

/** What of a history can be read: a step that cannot is left out. */
export function readHistory(json: unknown, reader: PartReader): Mended<History> {
  const { past, future } = asJson(json);
  const [before, after] = [readSteps(past, reader, "past"), readSteps(future, reader, "future")];
  return {
    value: { past: before.value, future: after.value },
    leftOut: [...before.leftOut, ...after.leftOut],
  };
}

function readSteps(
  list: unknown,
  reader: PartReader,
  place: keyof History,
): Mended<readonly Document[]> {
  if (!Array.isArray(list)) return { value: [], leftOut: [] };
  const steps = list.map((one) => readDocument(asJson(one), reader));
  return {
    value: steps.flatMap((step) => step?.value ?? []),
    leftOut: steps.flatMap((step, i) => leftOutOfStep(step, `history.${place}.${i}`, list[i])),
  };
}

function leftOutOfStep(
  step: Mended<Document> | null,
  at: string,
  value: unknown,
): readonly LeftOut[] {
  if (step === null) return [{ path: at, reason: "This step of undo is no instrument.", value }];
  return step.leftOut.map((part) => ({ ...part, path: `${at}.${part.path}` }));
}

/** A document as it was stored, without the parts of it that cannot be read; null where there is no instrument with a plan. */
export function readDocument(kept: Json, reader: PartReader): Mended<Document> | null {
  const { instrument: stated, lastGood } = kept;
  const last = readGood(lastGood, stated);
  const good = last ?? readGood(stated, lastGood);
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
    ...readModel(kept),
  };
  const noLast = last === null && lastGood !== undefined;
  const own = [
    ...draft.leftOut,
    ...(draft.leftOut.length > 0 ? [] : good.leftOut),
    ...(noLast ? [{ path: "lastGood", reason: "This has no plan.", value: lastGood }] : []),
  ];
  return { value: document, leftOut: [...own, ...comparison.leftOut, ...record.leftOut] };
}

/** Whether it is a model, and which it was made from: what cannot be read of that is as if it were not said. */
export function readModel({ model, madeFrom }: Json): Pick<Document, "isModel" | "madeFrom"> {
  const { id, name } = asJson(madeFrom);
  const isNamed = typeof id === "string" && id !== "" && typeof name === "string";
  return {
    isModel: model === true,
    madeFrom: isNamed
      ? { id: id.slice(0, textLimits.id), name: name.slice(0, textLimits.name) }
      : null,
  };
}

/** Where a fault is one of the whole instrument. */
const isWhole = (path: string): boolean => ["format", "version", "id"].includes(path);

/** An instrument that has a plan. */
function readGood(json: unknown, beside: unknown): Mended<Instrument> | null {
  const read = readMended(
    json,
    (one) => {
      const result = readInstrument(one);
      return result.ok ? { ok: true, value: result.instrument } : result;
    },
    { beside, isWhole },
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
    { beside: base, isWhole },
  );
  const reason = "This is no instrument: the last that had a plan stands in its place.";
  return read ?? { value: base, leftOut: [{ path: "instrument", reason, value: json }] };
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
