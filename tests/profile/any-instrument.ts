import fc from "fast-check";
import type { Field } from "../../src/instrument/field.ts";
import { fieldPaths, fields } from "../../src/instrument/fields.ts";
import {
  type Instrument,
  type TargetKind,
  targetKinds,
  windowKinds,
} from "../../src/instrument/instrument.ts";
import { targetFields } from "../../src/instrument/outcome-fields.ts";
import { readInstrument } from "../../src/instrument/read-instrument.ts";

/*
 * Any instrument a file can hold, drawn from the table of fields: every limit, null where it may be,
 * all sizes between. Were every field drawn so, nearly none would solve: each instrument has its own
 * share of such fields, and its others lie near their defaults.
 */

const unit = fc.double({ min: 0, max: 1, noNaN: true });

/** Its limits, anything between, and anything by order of size, either sign. */
function anyIn({ min, max, quantity }: Field): fc.Arbitrary<number> {
  if (quantity === "count") return fc.integer({ min, max });
  const bySize = (share: number, sign: number): number =>
    Math.min(max, Math.max(min, sign * 1e-3 * (max / 1e-3) ** share));
  return fc.oneof(
    fc.constantFrom(min, max),
    fc.double({ min, max, noNaN: true }),
    fc.tuple(unit, fc.constantFrom(1, -1)).map(([share, sign]) => bySize(share, sign)),
  );
}

const near = ({ min, max, quantity, default: usual }: Field): fc.Arbitrary<number> =>
  quantity === "count"
    ? fc.integer({ min: usual - 1, max: usual + 1 })
    : unit.map((share) => Math.min(max, Math.max(min, usual * (0.85 + 0.3 * share))));

/** `daring`, 0 to 99, is how often a field of this instrument leaves its default's neighbourhood. */
type Draw = (daring: number) => number | null;

function drawOf(field: Field): fc.Arbitrary<Draw> {
  const wild = anyIn(field);
  const free = field.nullWord === undefined ? wild : fc.option(wild, { freq: 2 });
  return fc.tuple(fc.nat({ max: 99 }), near(field), free).map(
    ([dared, calm, other]) =>
      (daring: number) =>
        dared < daring ? other : calm,
  );
}

const drawn = fc.tuple(...Object.values(fields).map(drawOf)) as fc.Arbitrary<readonly Draw[]>;

const targetDraws = fc.record(
  Object.fromEntries(targetKinds.map((kind) => [kind, drawOf(targetFields[kind])])),
) as fc.Arbitrary<Record<TargetKind, Draw>>;

/** Sums and differences of such lengths are exact, so that places 1 mm apart stay so. */
const onGrid = (length: number): number => Math.round(length * 1024) / 1024;

/** Lower bout, waist and upper bout where they may stand, by three shares of the room. */
function placesIn(length: number, shares: readonly [number, number, number]) {
  const lowerBoutAt = onGrid(1 + shares[0] * (length - 4));
  const waistAt = onGrid(lowerBoutAt + 1 + shares[1] * (length - 3 - lowerBoutAt));
  const upperBoutAt = onGrid(waistAt + 1 + shares[2] * (length - 2 - waistAt));
  return { lowerBoutAt, waistAt, upperBoutAt };
}

const usualPlaces = [0.25, 0.42, 0.5] as const;
const anyPlaces = fc.tuple(unit, unit, unit);

type Json = Record<string, Record<string, unknown>>;

export const anyInstrument: fc.Arbitrary<Instrument> = fc
  .record({
    daring: fc.constantFrom(0, 1, 2, 3, 5, 10, 20, 60, 99),
    draws: drawn,
    places: fc.tuple(fc.nat({ max: 99 }), anyPlaces),
    kind: fc.constantFrom(...targetKinds),
    targets: targetDraws,
  })
  .map(({ daring, draws, places: [dared, shares], kind, targets }) => {
    const json: Json = { target: { kind, value: targets[kind](daring) } };
    fieldPaths
      .filter((path) => path !== "target.value")
      .forEach((path, i) => {
        const [group = "", name = "", end] = path.split(".");
        const value = draws[i]?.(daring) ?? null;
        json[group] ??= {};
        const fieldsOf = json[group];
        if (end === undefined) fieldsOf[name] = value;
        else fieldsOf[name] = [...((fieldsOf[name] as unknown[] | undefined) ?? []), value];
      });
    return read(withRelations(json, dared < daring ? shares : usualPlaces));
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
