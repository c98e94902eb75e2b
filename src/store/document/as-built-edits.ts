import type { AsBuilt, Measurement, PulledString } from "../../instrument/as-built/as-built.ts";
import { noteLimit } from "../../instrument/as-built/as-built.ts";
import {
  type MeasurementKey,
  measurementField,
} from "../../instrument/as-built/measurement-fields.ts";
import type { StepId } from "../../instrument/as-built/steps.ts";
import { fieldFigure, parseField } from "../../instrument/field-text.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import type { Units } from "../../instrument/length.ts";
import { type Phrase, phrase } from "../../instrument/phrase.ts";
import { type Bench, recordOn, textsOn } from "./bench.ts";
import type { TypedText } from "./state.ts";
import { snapped, stepped } from "./step.ts";

type ReadMeasurementResult =
  | { readonly ok: true; readonly value: number | null }
  | { readonly ok: false; readonly why: Phrase };

/** What a text says was measured; null for an empty one: nothing was. */
export function readMeasurement(
  key: MeasurementKey,
  { text, units }: TypedText,
): ReadMeasurementResult {
  if (text.trim() === "") return { ok: true, value: null };
  const field = measurementField(key);
  const parsed = parseField(text, field, units);
  if (!parsed.ok) return { ok: false, why: [parsed.why] };
  const { value } = parsed;
  if (value === null || (field.min <= value && value <= field.max)) return { ok: true, value };
  const ends = [field.min, field.max].map((end) => ({ value: end, as: field.quantity }) as const);
  const [low, high] = ends;
  return low === undefined || high === undefined
    ? { ok: true, value }
    : { ok: false, why: phrase`This must be from ${low} to ${high}.` };
}

/** Keeps the text as typed; where it says a value, that is what was measured, on `today` if it is new. */
export function typeMeasurement(
  bench: Bench,
  id: string,
  key: MeasurementKey,
  typed: TypedText,
  today: string,
): Bench {
  const read = readMeasurement(key, typed);
  const after = read.ok ? withValue(bench, id, key, read.value, today) : bench;
  return { ...after, texts: { ...after.texts, [id]: { ...textsOn(after, id), [key]: typed } } };
}

/** Puts down a value as read off, to the round figures of the field. */
export function putMeasurement(
  bench: Bench,
  id: string,
  key: MeasurementKey,
  value: number,
  units: Units,
  today: string,
): Bench {
  return bare(
    withValue(bench, id, key, snapped(value, measurementField(key), units), today),
    id,
    key,
  );
}

/** Moves a measured value by whole steps; one not measured yet starts at what is expected. */
export function stepMeasurement(
  bench: Bench,
  id: string,
  key: MeasurementKey,
  steps: number,
  expected: number,
  units: Units,
  today: string,
): Bench {
  const before = recordOn(bench, id).readings[key];
  if (before === undefined) return putMeasurement(bench, id, key, expected, units, today);
  const value = stepped(before.value, measurementField(key), units, steps);
  return bare(withValue(bench, id, key, value, today), id, key);
}

/** What a measurement's field shows. */
export function measurementText(
  bench: Bench,
  id: string,
  key: MeasurementKey,
  units: Units,
): string {
  const typed = textsOn(bench, id)[key];
  const measurement = recordOn(bench, id).readings[key];
  const asTyped =
    typed?.units === units || (typed !== undefined && !readMeasurement(key, typed).ok);
  if (typed !== undefined && asTyped) return typed.text;
  return measurement === undefined
    ? ""
    : fieldFigure(measurement.value, measurementField(key), units);
}

export const dateMeasurement = (
  bench: Bench,
  id: string,
  key: MeasurementKey,
  date: string,
): Bench => withMeasurement(bench, id, key, (measurement) => ({ ...measurement, date }));

export const noteMeasurement = (
  bench: Bench,
  id: string,
  key: MeasurementKey,
  note: string,
): Bench =>
  withMeasurement(bench, id, key, (measurement) => ({
    ...measurement,
    note: note.slice(0, noteLimit),
  }));

/** A step done on a day, in any order; null opens it again. */
export function markStep(bench: Bench, id: string, step: StepId, date: string | null): Bench {
  return withRecord(bench, id, (record) => {
    const { [step]: _, ...others } = record.done;
    return { ...record, done: date === null ? others : { ...others, [step]: date } };
  });
}

export const noteStep = (bench: Bench, id: string, step: StepId, note: string): Bench =>
  withRecord(bench, id, (record) => ({
    ...record,
    notes: { ...record.notes, [step]: note.slice(0, noteLimit) },
  }));

/** The record as a correction leaves it; texts of measurements it sets aside go with them. */
export function replaceRecord(bench: Bench, id: string, record: AsBuilt): Bench {
  const texts = Object.fromEntries(
    Object.entries(textsOn(bench, id)).filter(
      ([key]) => key in record.readings || !(key in recordOn(bench, id).readings),
    ),
  );
  return {
    ...withRecord(bench, id, () => record),
    texts: { ...bench.texts, [id]: texts },
  };
}

export const setStrings = (bench: Bench, id: string, strings: readonly PulledString[]): Bench =>
  withRecord(bench, id, (record) => ({ ...record, strings }));

/** Calls an instrument finished: it is put among those learnt from, as it is today. */
export function finish(bench: Bench, instrument: Instrument, today: string): Bench {
  const { id } = instrument;
  const asBuilt = { ...recordOn(bench, id), finished: today };
  const others = bench.finished.filter((one) => one.instrument.id !== id);
  return {
    ...bench,
    records: { ...bench.records, [id]: asBuilt },
    finished: [...others, { instrument, asBuilt, invented: false }],
  };
}

/** Takes an instrument from those learnt from; its record stays. */
export function unfinish(bench: Bench, id: string): Bench {
  const finished = bench.finished.filter((one) => one.instrument.id !== id);
  return { ...withRecord(bench, id, (record) => ({ ...record, finished: null })), finished };
}

function withValue(
  bench: Bench,
  id: string,
  key: MeasurementKey,
  value: number | null,
  today: string,
): Bench {
  return withRecord(bench, id, (record) => {
    const { [key]: before, ...others } = record.readings;
    if (value === null) return { ...record, readings: others };
    const kept = before ?? { date: today, note: "" };
    return { ...record, readings: { ...record.readings, [key]: { ...kept, value } } };
  });
}

const withMeasurement = (
  bench: Bench,
  id: string,
  key: MeasurementKey,
  edit: (measurement: Measurement) => Measurement,
): Bench =>
  withRecord(bench, id, (record) => {
    const measurement = record.readings[key];
    if (measurement === undefined) return record;
    return { ...record, readings: { ...record.readings, [key]: edit(measurement) } };
  });

const withRecord = (bench: Bench, id: string, edit: (record: AsBuilt) => AsBuilt): Bench => ({
  ...bench,
  records: { ...bench.records, [id]: edit(recordOn(bench, id)) },
});

/** Without the text as typed: the field shows its value again. */
function bare(bench: Bench, id: string, key: MeasurementKey): Bench {
  const { [key]: _, ...texts } = textsOn(bench, id);
  return { ...bench, texts: { ...bench.texts, [id]: texts } };
}
