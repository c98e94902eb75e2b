import type { AsBuilt, Change, Measurements, Taken } from "../../instrument/as-built/as-built.ts";
import {
  type MeasurementKey,
  measurementField,
  measurementKeys,
} from "../../instrument/as-built/measurement-fields.ts";
import { mm, type Phrase } from "../../instrument/phrase.ts";
import { type Standing, standing } from "../standing.ts";
import { madeAfter, movesFlat, noOffsets } from "./made-instrument.ts";
import type { Goal, Outlook } from "./outlook.ts";
import {
  barred,
  type Remedy,
  type RemedyContext,
  type RemedyId,
  type RemedyMaker,
  type RemedyResult,
  remediesOf,
  stageOf,
} from "./remedy.ts";
import { bridgeThickness, saddle } from "./remedy-bridge.ts";
import { anotherShim, flatAboutBreak, flatAboutNeckEnd } from "./remedy-flat.ts";
import {
  fingerboardTaper,
  fingerboardThickness,
  heelShoulder,
  heelTip,
  wedge,
} from "./remedy-neck.ts";
import { anotherSpacer, seatAgain } from "./remedy-seat.ts";

const makers: Readonly<Record<RemedyId, RemedyMaker>> = {
  shim: anotherShim,
  spacer: anotherSpacer,
  "seat-again": seatAgain,
  "flat-about-break": flatAboutBreak,
  "flat-about-neck-end": flatAboutNeckEnd,
  bridge: bridgeThickness,
  "fingerboard-thickness": fingerboardThickness,
  "fingerboard-taper": fingerboardTaper,
  wedge,
  "heel-tip": heelTip,
  "heel-shoulder": heelShoulder,
  saddle,
};

/** How far to correct: until the goal is as planned, or until it is just inside its window. */
export type CorrectionExtent = "plan" | "window";

export interface Correction {
  readonly goal: Goal;
  readonly extent: CorrectionExtent;
  readonly wanted: number;
  /** What the goal must still rise to be as wanted, mm; negative: fall. */
  readonly left: number;
  /** How the goal stands to its window uncorrected. */
  readonly standing: Standing;
  /** Those that can be had first; none where nothing that can be measured is left. */
  readonly remedies: readonly RemedyResult[];
}

/** Smaller than is measured at the bench with feelers and rules, mm: nothing to correct. Common practice, no source. */
export const leastDifference = 0.05;

/** Every remedy for the difference between what is wanted and the outlook, each alone doing all of it. */
export function correctionOf(
  outlook: Outlook,
  asBuilt: AsBuilt,
  goal: Goal,
  extent: CorrectionExtent = "plan",
): Correction {
  const wanted = wantedOf(outlook, goal, extent);
  const left = wanted - outlook.heights[goal];
  const context = contextOf(outlook, asBuilt, goal);
  const all =
    Math.abs(left) < leastDifference
      ? []
      : remediesOf(outlook.instrument.dome.method).map((id) => makers[id](context, left));
  return {
    ...{ goal, extent, wanted, left },
    standing: standing(outlook.heights[goal], outlook.instrument.windows[goal]),
    remedies: [...all.filter(({ ok }) => ok), ...all.filter(({ ok }) => !ok)],
  };
}

/** The height to come to. Just inside a window is as far from its end as is least to be measured. */
function wantedOf({ plan, heights, instrument }: Outlook, goal: Goal, extent: CorrectionExtent) {
  if (extent === "plan") return plan[goal];
  const [low, high] = instrument.windows[goal];
  const height = heights[goal];
  if (low <= height && height <= high) return height;
  const inside = Math.min(leastDifference, (high - low) / 2);
  return height < low ? low + inside : high - inside;
}

const contextOf = (made: Outlook, asBuilt: AsBuilt, goal: Goal): RemedyContext => ({
  made,
  goal,
  stage: stageOf(asBuilt),
});

/** How much of the difference one remedy may take, mm at the saddle line, in the order they are to be used. */
export interface RemedyShare {
  readonly id: RemedyId;
  readonly most: number;
}

export interface CombinedRemedies {
  readonly parts: readonly Remedy[];
  readonly barred: readonly RemedyResult[];
  /** What they leave, mm at the saddle line. */
  readonly rest: number;
  readonly changes: readonly Change[];
}

/** Several remedies together: each as far as its share, in their order, on what the ones before leave. */
export function combineRemedies(
  outlook: Outlook,
  asBuilt: AsBuilt,
  goal: Goal,
  shares: readonly RemedyShare[],
  extent: CorrectionExtent = "plan",
): CombinedRemedies {
  let context = contextOf(outlook, asBuilt, goal);
  let rest = wantedOf(outlook, goal, extent) - outlook.heights[goal];
  const parts: Remedy[] = [];
  const out: RemedyResult[] = [];
  for (const { id, most } of shares) {
    const raise = Math.sign(rest) * Math.min(Math.abs(rest), Math.max(0, most));
    if (Math.abs(raise) < leastDifference) continue;
    const result = makers[id](context, raise);
    const after = result.ok ? madeAfter(context.made, result.remedy.changes) : null;
    if (!result.ok) out.push(result);
    else if (after?.ok) {
      parts.push(result.remedy);
      rest -= raise;
      context = { ...context, made: after.made };
    } else out.push(barred(id, ["The rest does not go with it."]));
  }
  return { parts, barred: out, rest, changes: parts.flatMap(({ changes }) => changes) };
}

/**
 * The record with a correction taken: what it changes is in the plan from now on, the measurements it puts out of
 * date are set aside, and the difference between instrument and geometry found so far is carried over.
 */
export function takeCorrection(
  asBuilt: AsBuilt,
  outlook: Outlook,
  remedy: string,
  changes: readonly Change[],
  date: string,
): AsBuilt {
  const stale = measurementKeys.filter((key) => outdates(key, changes));
  const replaced = pick(asBuilt.readings, (key) => stale.includes(key));
  // How the shim measured against how it acted matters to the next shim only.
  const { shim } = movesFlat(changes)
    ? outlook.offsets
    : (asBuilt.taken.at(-1)?.offsets ?? noOffsets);
  const offsets = { ...outlook.offsets, shim };
  const taken: Taken = { remedy, date, changes, offsets, replaced };
  return {
    ...asBuilt,
    readings: pick(asBuilt.readings, (key) => !stale.includes(key)),
    taken: [...asBuilt.taken, taken],
  };
}

/** The record as it was before its last correction; what was measured since stays. */
export function takeBackCorrection(asBuilt: AsBuilt): AsBuilt {
  const last = asBuilt.taken.at(-1);
  if (last === undefined) return asBuilt;
  return {
    ...asBuilt,
    readings: { ...last.replaced, ...asBuilt.readings },
    taken: asBuilt.taken.slice(0, -1),
  };
}

/** What is measured of the flat, or of the seat. */
const ofFlat: readonly MeasurementKey[] = ["shim", "overrun", "gapBefore", "spacer", "plateLeft"];

/** Whether a measurement no longer holds once `changes` are made. */
function outdates(key: MeasurementKey, changes: readonly Change[]): boolean {
  const { replaces } = measurementField(key);
  if (changes.some(({ path }) => path === replaces)) return true;
  if (key === "stringHeight" || key === "saddleExposure") return true;
  if (ofFlat.includes(key)) return movesFlat(changes);
  return key === "bridgeClearance" && changes.some(({ path }) => !path.startsWith("strings."));
}

function pick(readings: Measurements, keep: (key: MeasurementKey) => boolean): Measurements {
  return Object.fromEntries(
    measurementKeys
      .filter((key) => readings[key] !== undefined && keep(key))
      .map((key) => [key, readings[key]]),
  );
}

/** "The saddle will be 0.5 mm too low." */
export function leftSaid({ left, goal, extent, standing }: Correction): Phrase {
  const what = {
    saddleExposure: "The saddle",
    stringHeight: "The strings",
    bridgeClearance: "The fret plane",
  }[goal];
  if (Math.abs(left) < leastDifference) {
    if (extent === "window" && standing !== "outside")
      return [what, " will be inside its window: nothing need be corrected."];
    return [what, " will be as wanted, as near as it can be measured: nothing is left to correct."];
  }
  const by = [what, " will be ", mm(Math.abs(left)), left > 0 ? " too low" : " too high"];
  if (extent === "window") return [...by, " to be just inside its window."];
  return standing === "outside"
    ? [...by, ", outside its window."]
    : [...by, ", but inside its window: it can be accepted."];
}
