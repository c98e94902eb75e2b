import { dequal as equal } from "dequal/lite";
import type { AsBuilt, Measurement, PulledString } from "../../instrument/as-built/as-built.ts";
import { emptyAsBuilt, noteLimit } from "../../instrument/as-built/as-built.ts";
import { isDay } from "../../instrument/as-built/day.ts";
import {
  type MeasurementKey,
  measurementField,
} from "../../instrument/as-built/measurement-fields.ts";
import { readAsBuilt } from "../../instrument/as-built/read-as-built.ts";
import type { StepId } from "../../instrument/as-built/steps.ts";
import { isWithin } from "../../instrument/field.ts";
import { fieldFigure, parseField } from "../../instrument/field-text.ts";
import type { Units } from "../../instrument/length.ts";
import { type Phrase, phrase } from "../../instrument/phrase.ts";
import {
  type MeasurementTexts,
  type State,
  type TypedText,
  type UndoStep,
  undoStep,
} from "./state.ts";
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
  if (value === null || isWithin(value, field)) return { ok: true, value };
  const ends = [field.min, field.max].map((end) => ({ value: end, as: field.quantity }) as const);
  const [low, high] = ends;
  return low === undefined || high === undefined
    ? { ok: true, value }
    : { ok: false, why: phrase`This must be from ${low} to ${high}.` };
}

/** Whether anything has been put down of the instrument. */
export const isBegun = ({ asBuilt }: Pick<State, "asBuilt">): boolean =>
  !equal(asBuilt, emptyAsBuilt);

/** Keeps the text as typed; where it says a value, that is what was measured, on `today` if it is new. */
export function typeMeasurement(
  state: State,
  key: MeasurementKey,
  typed: TypedText,
  today: string,
): State {
  const read = readMeasurement(key, typed);
  const asBuilt = read.ok ? withValue(state.asBuilt, key, read.value, today) : state.asBuilt;
  const readingTexts = { ...state.readingTexts, [key]: typed };
  return { ...state, asBuilt, readingTexts, undoStep: undoStep("type a measurement", key) };
}

/** Puts down a value as read off, to the round figures of the field. */
export function putMeasurement(
  state: State,
  key: MeasurementKey,
  value: number,
  units: Units,
  today: string,
): State {
  return withReadOff(state, key, snapped(value, measurementField(key), units), today);
}

/** Moves a measured value by whole steps; one not measured yet starts at what is expected. */
export function stepMeasurement(
  state: State,
  key: MeasurementKey,
  steps: number,
  expected: number,
  units: Units,
  today: string,
): State {
  const before = state.asBuilt.readings[key];
  if (before === undefined) return putMeasurement(state, key, expected, units, today);
  const value = stepped(before.value, measurementField(key), units, steps);
  return withReadOff(state, key, value, today);
}

/** What a measurement's field shows. */
export function measurementText(
  { asBuilt, readingTexts }: Pick<State, "asBuilt" | "readingTexts">,
  key: MeasurementKey,
  units: Units,
): string {
  const typed = readingTexts[key];
  const measurement = asBuilt.readings[key];
  const asTyped =
    typed?.units === units || (typed !== undefined && !readMeasurement(key, typed).ok);
  if (typed !== undefined && asTyped) return typed.text;
  return measurement === undefined
    ? ""
    : fieldFigure(measurement.value, measurementField(key), units);
}

/** Puts another day to a measurement; what is no day changes nothing. */
export const dateMeasurement = (state: State, key: MeasurementKey, date: string): State => {
  if (!isDay(date)) return state;
  return withMeasurement(state, key, undoStep("date a measurement", key), (measurement) => ({
    ...measurement,
    date,
  }));
};

export const noteMeasurement = (state: State, key: MeasurementKey, note: string): State =>
  withMeasurement(state, key, undoStep("note to a measurement", key), (measurement) => ({
    ...measurement,
    note: note.slice(0, noteLimit),
  }));

/** A step of the work done on a day, in any order; null opens it again. */
export function markStep(state: State, step: StepId, date: string | null): State {
  if (date !== null && !isDay(date)) return state;
  const { [step]: _, ...others } = state.asBuilt.done;
  const done = date === null ? others : { ...others, [step]: date };
  return withRecord(state, { done }, undoStep("mark a step"));
}

export function noteStep(state: State, step: StepId, note: string): State {
  const notes = { ...state.asBuilt.notes, [step]: note.slice(0, noteLimit) };
  return withRecord(state, { notes }, undoStep("note to a step", step));
}

/** The record as a correction leaves it, if a file can hold it; texts of measurements it leaves out go with them. */
export function replaceRecord(state: State, asBuilt: AsBuilt): State {
  if (!readAsBuilt(asBuilt).ok) return state;
  const texts = Object.entries(state.readingTexts).filter(
    ([key]) => key in asBuilt.readings || !(key in state.asBuilt.readings),
  );
  const readingTexts: MeasurementTexts = Object.fromEntries(texts);
  return { ...state, asBuilt, readingTexts, undoStep: undoStep("take a correction") };
}

/** States more of one of the strings shown: their notes, weights and diameters. What a file cannot hold changes nothing. */
export function changeString(
  state: State,
  shown: readonly PulledString[],
  at: number,
  part: Partial<PulledString>,
): State {
  const strings = shown.map((one, i) => (i === at ? { ...one, ...part } : one));
  if (!readAsBuilt({ strings }).ok) return state;
  const place = `${at} ${Object.keys(part).join(" ")}`;
  return withRecord(state, { strings }, undoStep("change a string", place));
}

/** Calls the instrument finished. */
export const finish = (state: State, today: string): State =>
  withRecord(state, { finished: today }, undoStep("finish"));

/** Opens a finished instrument again. */
export const unfinish = (state: State): State =>
  withRecord(state, { finished: null }, undoStep("unfinish"));

/** A value that is not typed: the field shows it as it is. */
function withReadOff(state: State, key: MeasurementKey, value: number, today: string): State {
  if (!isWithin(value, measurementField(key))) return state;
  const { [key]: _, ...readingTexts } = state.readingTexts;
  const asBuilt = withValue(state.asBuilt, key, value, today);
  return { ...state, asBuilt, readingTexts, undoStep: undoStep("set a measurement", key) };
}

function withValue(
  record: AsBuilt,
  key: MeasurementKey,
  value: number | null,
  today: string,
): AsBuilt {
  const { [key]: before, ...others } = record.readings;
  if (value === null) return { ...record, readings: others };
  const kept = before ?? { date: today, note: "" };
  return { ...record, readings: { ...record.readings, [key]: { ...kept, value } } };
}

function withMeasurement(
  state: State,
  key: MeasurementKey,
  step: UndoStep,
  edit: (measurement: Measurement) => Measurement,
): State {
  const { readings } = state.asBuilt;
  const measurement = readings[key];
  if (measurement === undefined) return state;
  return withRecord(state, { readings: { ...readings, [key]: edit(measurement) } }, step);
}

const withRecord = (state: State, part: Partial<AsBuilt>, step: UndoStep): State => ({
  ...state,
  asBuilt: { ...state.asBuilt, ...part },
  undoStep: step,
});
