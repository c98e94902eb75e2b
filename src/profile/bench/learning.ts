import {
  type AsBuilt,
  type FinishedInstrument,
  type Measurements,
  measured,
} from "../../instrument/as-built/as-built.ts";
import type { MeasurementKey } from "../../instrument/as-built/measurement-fields.ts";
import type { Instrument, Target } from "../../instrument/instrument.ts";
import { count, mm, type Phrase, phrase } from "../../instrument/phrase.ts";
import { type Profile, targetIn } from "../outcome.ts";
import { profileOf } from "../profile.ts";
import { goals, type Outlook, outlookOf } from "./outlook.ts";
import { clearanceAlongFrets, reliefBeside } from "./straightedge.ts";
import { type Interval, intervalOf, isOutlier } from "./student-t.ts";

export const learntKinds = ["gap", "stringHeight", "week", "year"] as const;

/** What is learnt: the glued gap, and how far strings and fret plane come down at the bridge, none counted on. */
export type LearntKind = (typeof learntKinds)[number];

export const learntNames: Readonly<Record<LearntKind, string>> = {
  gap: "Straightedge gap, top glued",
  stringHeight: "String height over the top",
  week: "Settling in a week under tension",
  year: "Settling in a year under tension",
};

/** With fewer instruments nothing is claimed. */
const leastInstruments = 3;

interface Sample {
  readonly name: string;
  readonly invented: boolean;
  /** Measured less predicted from all that was measured before it, mm. */
  readonly deviation: number;
  readonly outlier: boolean;
}

export interface Learnt {
  readonly kind: LearntKind;
  readonly samples: readonly Sample[];
  /** How many more were measured, but without the relief that the measurement depends on. */
  readonly withoutRelief: number;
  /** Null with too few to know. */
  readonly interval: Interval | null;
}

/** Measured when, and what is not to be known yet when it is predicted. */
const looks: Readonly<
  Record<
    LearntKind,
    { readonly measurement: MeasurementKey; readonly hidden: readonly MeasurementKey[] }
  >
> = {
  gap: { measurement: "gapAfter", hidden: ["gapBefore", "gapAfter"] },
  stringHeight: { measurement: "stringHeight", hidden: ["stringHeight", "saddleExposure"] },
  week: { measurement: "weekClearance", hidden: [] },
  year: { measurement: "yearClearance", hidden: [] },
};

/** Over finished instruments, how far what was measured fell from what was predicted. */
export function learntFrom(finished: readonly FinishedInstrument[], kind: LearntKind): Learnt {
  const found = finished.flatMap(({ instrument, asBuilt, invented }) => {
    const deviation = deviationOf(instrument, asBuilt, kind);
    return deviation === null ? [] : [{ name: instrument.name, invented, deviation }];
  });
  const deviations = found.map(({ deviation }) => deviation);
  return {
    kind,
    withoutRelief: finished.filter(({ asBuilt }) => lacksRelief(asBuilt, kind)).length,
    samples: found.map((sample, i) => ({ ...sample, outlier: isOutlier(deviations, i) })),
    interval: found.length < leastInstruments ? null : intervalOf(deviations),
  };
}

function lacksRelief(asBuilt: AsBuilt, kind: LearntKind): boolean {
  const { measurement } = looks[kind];
  const beside = reliefBeside[measurement];
  return (
    beside !== undefined &&
    asBuilt.readings[measurement] !== undefined &&
    asBuilt.readings[beside] === undefined
  );
}

/** Null where it was not measured, or where what it is to be held against was not. */
export function deviationOf(
  instrument: Instrument,
  asBuilt: AsBuilt,
  kind: LearntKind,
): number | null {
  const { measurement, hidden } = looks[kind];
  const then = whenFirst(asBuilt, measurement);
  const value = measured(then.readings, measurement);
  const rests = kind === "stringHeight" ? "gapAfter" : kind === "gap" ? null : "bridgeClearance";
  if (value === null || (rests !== null && then.readings[rests] === undefined)) return null;
  const result = outlookOf(instrument, { ...then, readings: without(then.readings, hidden) });
  if (!result.ok) return null;
  const predicted = predictedFrom(result.outlook, then.readings, kind);
  return predicted === null ? null : value - predicted;
}

function predictedFrom(
  outlook: Outlook,
  measurements: Measurements,
  kind: LearntKind,
): number | null {
  if (kind === "gap") return outlook.heights.flatGap;
  // What a plan counts on is put back: else stating it would teach it again, the other way.
  if (kind === "stringHeight")
    return outlook.heights.stringHeight + outlook.instrument.strings.settling;
  const beside = reliefBeside[looks[kind].measurement];
  const relief = beside === undefined ? null : measured(measurements, beside);
  return relief === null ? null : clearanceAlongFrets(outlook, relief);
}

/** The record as it was before the first correction that set a measurement aside. */
function whenFirst(asBuilt: AsBuilt, key: MeasurementKey): AsBuilt {
  const i = asBuilt.taken.findIndex(({ replaced }) => replaced[key] !== undefined);
  if (i < 0) return asBuilt;
  const later = asBuilt.taken.slice(i).map(({ replaced }) => replaced);
  const readings = [asBuilt.readings, ...later.reverse()];
  return { ...asBuilt, readings: Object.assign({}, ...readings), taken: asBuilt.taken.slice(0, i) };
}

function without(readings: Measurements, keys: readonly MeasurementKey[]): Measurements {
  return Object.fromEntries(
    Object.entries(readings).filter(([key]) => !(keys as readonly string[]).includes(key)),
  );
}

/** "Over 5 instruments …", or that it cannot know yet; and how many could not be used. */
export function learntSaid(learnt: Learnt): Phrase {
  const { withoutRelief: n } = learnt;
  const said = overAll(learnt);
  if (n === 0) return said;
  const left = n === 1 ? phrase`${count(n)} more is` : phrase`${count(n)} more are`;
  return [...said, " ", ...left, " left out: the straightedge was measured without the relief."];
}

function overAll({ kind, samples, interval }: Learnt): Phrase {
  const n = samples.length;
  if (interval === null) {
    const rests = n === 1 ? phrase`${count(n)} instrument` : phrase`${count(n)} instruments`;
    return ["It cannot know yet: ", ...rests, ` of the ${leastInstruments} it takes at least.`];
  }
  const { mean, spread, low, high } = interval;
  return [
    ...phrase`Over ${count(n)} instruments `,
    ...whatSaid[kind],
    ...signedSaid(mean),
    ...phrase`, spread ${mm(spread)}. The true mean lies between ${mm(low)} and ${mm(high)} with 95 % confidence`,
    low < 0 && high > 0 ? ", so it cannot be told from none." : ".",
  ];
}

const whatSaid: Readonly<Record<LearntKind, Phrase>> = {
  gap: ["the glued gap came out "],
  stringHeight: ["with no settling counted on, the strings came out "],
  week: ["in a week the fret plane at the bridge came to stand "],
  year: ["in a year the fret plane at the bridge came to stand "],
};

const signedSaid = (mean: number): Phrase =>
  mean < 0 ? phrase`${mm(-mean)} lower than predicted` : phrase`${mm(mean)} higher than predicted`;

/**
 * What the plan must aim for so that, the deviation coming again, the saddle comes out as it was
 * wanted: a gap smaller by it. Null when no shim in reach does that.
 */
export function aimAllowingFor(
  instrument: Instrument,
  profile: Profile,
  deviation: number,
): Target | null {
  const { kind, value } = instrument.target;
  const height = goals.find((goal) => goal === kind);
  if (height !== undefined) return reached(instrument, { kind, value: value - deviation });
  const aimed = { kind: "stringHeight", value: profile.stringHeight - deviation } as const;
  const result = profileOf({ ...instrument, target: aimed });
  const aim = result.ok ? targetIn(result.profile, kind) : null;
  return aim === null ? null : { kind, value: aim };
}

const reached = (instrument: Instrument, target: Target): Target | null =>
  profileOf({ ...instrument, target }).ok ? target : null;
