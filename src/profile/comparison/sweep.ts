import { numberAt } from "../../geometry/number-at.ts";
import { peakNear } from "../../geometry/peak.ts";
import { rootBetween } from "../../geometry/root.ts";
import { readField, writeField } from "../../instrument/field-value.ts";
import type { FieldPath } from "../../instrument/fields.ts";
import { appliesTo, fieldAt } from "../../instrument/fields.ts";
import type { Instrument, Range, TargetKind } from "../../instrument/instrument.ts";
import { relationProblems } from "../../instrument/relations.ts";
import { withPartFixed } from "../uncertainty/tolerances.ts";
import { needsRim, type OutcomeKey, outcomeAt, windowOf } from "./outcomes.ts";

/** What is swept against what. With `shim` held, the plan's shim stays as it is; otherwise its target is met anew at every value. */
export interface SweepAsked {
  readonly path: FieldPath;
  readonly outcome: OutcomeKey;
  readonly hold: "target" | "shim";
  readonly range: Range;
}

/** Where the swept outcome comes into its window or leaves it, as the input grows. */
export interface Crossing {
  readonly at: number;
  readonly edge: "low" | "high";
  readonly direction: "enters" | "leaves";
}

interface SweepPoint {
  readonly x: number;
  /** Null where this input gives no plan. */
  readonly value: number | null;
}

export interface Sweep {
  readonly points: readonly SweepPoint[];
  readonly window: Range | null;
  readonly crossings: readonly Crossing[];
  /** The input's present value and the outcome there. */
  readonly present: SweepPoint | null;
}

/** The instrument a sweep is made of: as planned, or as built. */
export const heldInstrument = (
  instrument: Instrument,
  hold: SweepAsked["hold"],
): Instrument | null => (hold === "target" ? instrument : withPartFixed(instrument));

/** Whether an input is one of a held instrument's, and a target's number the same outcome's: of `kind`. */
export const hasInput = (
  { dome, target }: Instrument,
  path: FieldPath,
  kind: TargetKind,
): boolean => appliesTo(path, dome.method) && (path !== "target.value" || target.kind === kind);

/** Enough that a smooth curve turns at most once between neighbours; fewer where each costs a whole profile. */
const intervals = { chain: 96, rim: 32 };

/** One input of an instrument against one outcome, with the exact places where it crosses its window. */
export function sweepOf(instrument: Instrument, asked: SweepAsked): Sweep | null {
  const held = heldInstrument(instrument, asked.hold);
  if (held === null) return null;
  const { path, outcome, range } = asked;
  const f = (x: number): number => valueAt(held, path, x, outcome) ?? Number.NaN;
  const whole = fieldAt(path, held.target.kind).quantity === "count";
  const xs = whole
    ? wholeNumbers(range)
    : spread(range, needsRim(outcome) ? intervals.rim : intervals.chain);
  const values = xs.map(f);
  const window = windowOf(held, outcome);
  const own = readField(held, path);
  return {
    points: xs.map((x, i) => ({ x, value: finite(numberAt(values, i)) })),
    window,
    crossings: window === null ? [] : crossingsOf(f, xs, values, window, whole),
    present: own === null ? null : { x: own, value: finite(f(own)) },
  };
}

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

/** One outcome with one field changed; null where the numbers do not go together or give no plan. */
function valueAt(held: Instrument, path: FieldPath, x: number, outcome: OutcomeKey): number | null {
  const changed = writeField(held, path, x);
  return relationProblems(changed).length > 0 ? null : outcomeAt(changed, outcome);
}

const spread = ([from, to]: Range, count: number): readonly number[] =>
  Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);

function wholeNumbers([from, to]: Range): readonly number[] {
  const first = Math.ceil(from);
  const last = Math.min(Math.floor(to), first + 200);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => first + i);
}

/**
 * Every crossing of a window's two edges, each the root of outcome less edge between two neighbours;
 * a place where the curve turns between samples is sampled too, so that a short visit to the window
 * is not missed. A whole number crosses at the first number on the far side.
 */
function crossingsOf(
  f: (x: number) => number,
  xs: readonly number[],
  values: readonly number[],
  [low, high]: Range,
  whole: boolean,
): readonly Crossing[] {
  const places = whole ? xs : withTurns(f, xs, values);
  const found: Crossing[] = [];
  for (const [edge, level, inward] of [
    ["low", low, 1],
    ["high", high, -1],
  ] as const) {
    const over = (x: number): number => f(x) - level;
    const overs = places.map(over);
    for (let i = 1; i < places.length; i++) {
      const [before, after] = [numberAt(overs, i - 1), numberAt(overs, i)];
      const outside = inward * before < 0;
      if (Number.isNaN(before + after) || outside === inward * after < 0) continue;
      const x = whole
        ? numberAt(places, i)
        : rootBetween(over, numberAt(places, i - 1), numberAt(places, i));
      found.push({ at: x, edge, direction: outside ? "enters" : "leaves" });
    }
  }
  return found.sort((a, b) => a.at - b.at);
}

function withTurns(
  f: (x: number) => number,
  xs: readonly number[],
  values: readonly number[],
): readonly number[] {
  const turns: number[] = [];
  for (let i = 1; i < xs.length - 1; i++) {
    const [before, here, after] = [
      numberAt(values, i - 1),
      numberAt(values, i),
      numberAt(values, i + 1),
    ];
    if (here >= before && here > after) turns.push(peakNear(f, xs, here, i).x);
    if (here <= before && here < after) turns.push(peakNear((x) => -f(x), xs, -here, i).x);
  }
  return [...xs, ...turns].sort((a, b) => a - b);
}
