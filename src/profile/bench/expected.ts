import { type AsBuilt, type Measurements, measured } from "../../instrument/as-built/as-built.ts";
import {
  type MeasurementKey,
  measurementField,
  measurementKeys,
} from "../../instrument/as-built/measurement-fields.ts";
import { readField, writeField } from "../../instrument/field-value.ts";
import { isFieldPath } from "../../instrument/fields.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import type { Profile, ProfileResult } from "../outcome.ts";
import { profileOf } from "../profile.ts";
import type { SaddleHeights } from "../saddle.ts";
import { cutOf } from "../seat.ts";
import { madeOf, noOffsets } from "./made-instrument.ts";
import { type Outlook, outlookOf } from "./outlook.ts";
import { clearanceAlongFrets, reliefBeside } from "./straightedge.ts";

export interface Expected {
  /** mm. */
  readonly value: number;
  /** Plus or minus, mm. */
  readonly within: number;
}

/** Where each side depth is measured: the station of that name. */
const stationsNamed: Readonly<Partial<Record<MeasurementKey, string>>> = {
  depthTail: "tail",
  depthLowerBout: "lower bout",
  depthWaist: "waist",
  depthBreak: "break",
  depthUpperBout: "upper bout",
  depthNeckEnd: "neck end",
};

/** A side depth after the dish: the one before it, and the station both are measured at. */
const afterDish: Readonly<
  Partial<Record<MeasurementKey, { readonly before: MeasurementKey; readonly station: string }>>
> = {
  breakAfterDish: { before: "breakBeforeDish", station: "break" },
  tailAfterDish: { before: "tailBeforeDish", station: "tail" },
};

/** Medium tolerance of ISO 2768-1 for 30 to 120 mm. */
const depthWithin = 0.3;
/** Calipers on a shim or a thickness; common practice, no source. */
const caliperWithin = 0.1;
const overrunWithin = 5;

const heightRead: Readonly<Partial<Record<MeasurementKey, keyof SaddleHeights & string>>> = {
  gapBefore: "flatGap",
  gapAfter: "flatGap",
  bridgeClearance: "bridgeClearance",
  weekClearance: "bridgeClearance",
  yearClearance: "bridgeClearance",
  saddleExposure: "saddleExposure",
  stringHeight: "stringHeight",
};

/** What was stated for the strings on the day is what is expected a week and a year later. */
const settled: Readonly<Partial<Record<MeasurementKey, MeasurementKey>>> = {
  weekActionBass: "actionBass",
  weekActionTreble: "actionTreble",
  weekRelief: "relief",
  yearActionBass: "actionBass",
  yearActionTreble: "actionTreble",
  yearRelief: "relief",
};

/**
 * What a measurement should come to, from all that is measured before it in the order of work; null
 * when nothing can be expected because those do not go together.
 */
export function expectedOf(
  instrument: Instrument,
  asBuilt: AsBuilt,
  key: MeasurementKey,
  planned: ProfileResult = profileOf(instrument),
): Expected | null {
  const before = { ...asBuilt, readings: earlier(asBuilt.readings, key) };
  const result = outlookOf(instrument, before, planned);
  if (!result.ok) return null;
  const value = valueFrom(result.outlook, before.readings, key);
  return value === null ? null : { value, within: withinOf(result.outlook, key) };
}

function valueFrom(outlook: Outlook, before: Measurements, key: MeasurementKey): number | null {
  const { heights, instrument, plan, offsets } = outlook;
  const beside = reliefBeside[key];
  if (beside !== undefined) {
    const relief = measured(before, beside);
    // Strung and settled, the fret plane has come down by as much as was counted on.
    return relief === null
      ? null
      : clearanceAlongFrets(outlook, relief) - instrument.strings.settling;
  }
  const height = heightRead[key];
  if (height !== undefined) return heights[height] as number;
  const station = stationsNamed[key];
  if (station !== undefined)
    return plan.stations.find(({ name }) => name === station)?.sideDepth ?? null;
  const dished = afterDish[key];
  if (dished !== undefined) {
    const depth = measured(before, dished.before);
    return depth === null ? null : depth - lossAt(plan, dished.station);
  }
  if (key === "shim" || key === "spacer") return instrument.target.value + offsets.shim;
  if (key === "plateLeft") return plateLeftOn(outlook);
  if (key === "overrun") return overrunOn(outlook);
  const path = measurementField(settled[key] ?? key).replaces;
  return path === null ? null : readField(instrument, path);
}

/** What comes off the level edge at a station. */
function lossAt({ stations, rimOffset }: Profile, station: string): number {
  return rimOffset + (stations.find(({ name }) => name === station)?.removal ?? 0);
}

function overrunOn({ instrument }: Outlook): number | null {
  const result = profileOf(instrument, { stationEvery: 1000 });
  return result.ok ? result.profile.overrunLength : null;
}

/** What should be left of the plate in the middle of the fingerboard's end. */
function plateLeftOn({ instrument, givens, dome }: Outlook): number | null {
  const { seat } = givens;
  return seat === null || dome === null
    ? null
    : instrument.seat.topThickness - cutOf(givens, seat, dome).endCut;
}

function withinOf(outlook: Outlook, key: MeasurementKey): number {
  const height = heightRead[key];
  if (height !== undefined) return heightWithin(outlook, height);
  if (stationsNamed[key] !== undefined || afterDish[key] !== undefined) return depthWithin;
  if (key === "overrun") return overrunWithin;
  const path =
    key === "shim" || key === "spacer"
      ? "target.value"
      : measurementField(settled[key] ?? key).replaces;
  return (path === null ? undefined : outlook.instrument.tolerances[path]) ?? caliperWithin;
}

/**
 * Plus or minus on a height at the saddle: what each stated tolerance does to it alone, squared, summed,
 * and the root taken; to the first order. The shim counts with 0.1 mm unless stated.
 */
function heightWithin({ instrument }: Outlook, height: keyof SaddleHeights & string): number {
  const tolerances = { "target.value": caliperWithin, ...instrument.tolerances };
  let sum = 0;
  for (const [path, tolerance] of Object.entries(tolerances)) {
    if (!isFieldPath(path)) continue;
    const stated = path === "target.value" ? instrument.target.value : readField(instrument, path);
    if (stated === null) continue;
    const at = (value: number): number => {
      const changed = writeField(instrument, path, value);
      const result = madeOf(changed, null, noOffsets);
      return result.ok ? (result.made.heights[height] as number) : Number.NaN;
    };
    const spread = (at(stated + tolerance) - at(stated - tolerance)) / 2;
    if (Number.isFinite(spread)) sum += spread * spread;
  }
  return Math.sqrt(sum);
}

/** The measurements of the steps before, and those of the same step that come first. */
function earlier(readings: Measurements, key: MeasurementKey): Measurements {
  const end = measurementKeys.indexOf(key);
  return Object.fromEntries(
    measurementKeys
      .slice(0, end)
      .filter((other) => readings[other] !== undefined)
      .map((other) => [other, readings[other]]),
  );
}

/** Whether a measured value is as expected. */
export const asExpected = (value: number, { value: wanted, within }: Expected): boolean =>
  Math.abs(value - wanted) <= within;
