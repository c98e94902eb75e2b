import fc from "fast-check";
import type { Field } from "../../src/instrument/field.ts";
import { fieldPaths, fields } from "../../src/instrument/fields.ts";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { targetFields, targetKindsOf, windowKinds } from "../../src/instrument/outcome-fields.ts";
import { readInstrument } from "../../src/instrument/read-instrument.ts";
import { even } from "../geometry/even.ts";

/*
 * Any instrument a file can hold, drawn from the table of fields: every limit, null where it may be,
 * all sizes between. Were every field drawn so, nearly none would solve: each instrument has its own
 * share of such fields, and its others lie near their defaults.
 */

const unit = even(0, 1);

/** Its limits, anything between, and anything by order of size, either sign; null as often as all of these. */
function anyIn({ min, max, nullWord }: Field, share: number): number | null {
  if (nullWord !== undefined) return share < 0.5 ? null : plainIn(min, max, 2 * share - 1);
  return plainIn(min, max, share);
}

function plainIn(min: number, max: number, share: number): number {
  if (share < 0.15) return min;
  if (share < 0.3) return max;
  if (share < 0.6) return min + (max - min) * ((share - 0.3) / 0.3);
  const sign = share < 0.8 ? 1 : -1;
  const order = (share < 0.8 ? share - 0.6 : share - 0.8) / 0.2;
  return Math.min(max, Math.max(min, sign * 1e-3 * (max / 1e-3) ** order));
}

const nearTo = ({ min, max, default: usual }: Field, share: number): number =>
  Math.min(max, Math.max(min, usual * (0.95 + 0.1 * share)));

/** `daring`, 0 to 1, is how often a field of this instrument leaves its default's neighbourhood. */
function randomValue(field: Field, daring: number, share: number): number | null {
  const value =
    share < daring ? anyIn(field, share / daring) : nearTo(field, (share - daring) / (1 - daring));
  return value === null || field.quantity !== "count" ? value : Math.round(value);
}

const paths = fieldPaths.filter((path) => path !== "target.value");
const shares = fc.array(unit, { minLength: paths.length, maxLength: paths.length });

/** Sums and differences of such lengths are exact, so that places 1 mm apart stay so. */
const onGrid = (length: number): number => Math.round(length * 1024) / 1024;

/** Ends included: then two places stand as close as they may. */
const placeShare = fc.oneof(fc.constantFrom(0, 1), unit);

/** Lower bout, waist and upper bout where they may stand, by three shares of the room. */
function placesIn(length: number, shares: readonly [number, number, number]) {
  const lowerBoutAt = onGrid(1 + shares[0] * (length - 4));
  const waistAt = onGrid(lowerBoutAt + 1 + shares[1] * (length - 3 - lowerBoutAt));
  const upperBoutAt = onGrid(waistAt + 1 + shares[2] * (length - 2 - waistAt));
  return { lowerBoutAt, waistAt, upperBoutAt };
}

const usualPlaces = [0.25, 0.42, 0.5] as const;

type Json = Record<string, Record<string, unknown>>;

export const anyInstrument: fc.Arbitrary<Instrument> = fc
  .record({
    daring: fc.constantFrom(0, 0.01, 0.02, 0.03, 0.05, 0.1, 0.2, 0.6, 0.99),
    values: shares,
    target: unit,
    method: fc.constantFrom("break" as const, "break" as const, "seat" as const),
    kinds: unit,
    dared: unit,
    places: fc.tuple(placeShare, placeShare, placeShare),
  })
  .map(({ daring, values, target, method, kinds, dared, places }) => {
    const aims = targetKindsOf(method);
    const kind = aims[Math.floor(kinds * aims.length)] ?? "pitch";
    const json: Json = { target: { kind, value: randomValue(targetFields[kind], daring, target) } };
    paths.forEach((path, i) => {
      const [group = "", name = "", end] = path.split(".");
      const value = randomValue(fields[path], daring, values[i] ?? 0);
      json[group] ??= {};
      const stated = json[group];
      stated[name] = end === undefined ? value : [...((stated[name] ?? []) as unknown[]), value];
    });
    json["dome"] = { ...json["dome"], method };
    return read(withRelations(json, dared < daring ? places : usualPlaces));
  });

/** What the fields of one instrument must be to one another: places in order, windows low end first. */
function withRelations(json: Json, shares: readonly [number, number, number]): Json {
  const length = onGrid(Number(json["body"]?.["length"]));
  const windows = Object.fromEntries(
    windowKinds.map((kind) => {
      const ends = json["windows"]?.[kind] as number[];
      return [kind, [Math.min(...ends), Math.max(...ends)]];
    }),
  );
  return { ...json, body: { ...json["body"], length, ...placesIn(length, shares) }, windows };
}

function read(json: Json): Instrument {
  const reading = readInstrument(json);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.instrument;
}
