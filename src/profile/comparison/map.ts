import { readField, writeField } from "../../instrument/field-value.ts";
import type { FieldPath } from "../../instrument/fields.ts";
import type { Instrument, Range } from "../../instrument/instrument.ts";
import { relationProblems } from "../../instrument/relations.ts";
import { profileOf } from "../profile.ts";
import { contourLines, gridIn, type Place, regionIn } from "./contour.ts";
import { needsRim, type OutcomeKey, outcomeAt, windowOf } from "./outcomes.ts";
import { heldInstrument, type SweepAsked } from "./sweep.ts";

/** One input along, one up. */
interface MapAxis {
  readonly path: FieldPath;
  readonly range: Range;
}

export interface MapAsked {
  readonly across: MapAxis;
  readonly up: MapAxis;
  readonly outcome: OutcomeKey;
  readonly hold: SweepAsked["hold"];
}

interface Contour {
  readonly level: number;
  /** Whether the level is an edge of the outcome's window. */
  readonly edge: boolean;
  readonly lines: readonly (readonly Place[])[];
}

export interface InputMap {
  readonly contours: readonly Contour[];
  /** Where every check passes: no stop and no warning, so every window met. */
  readonly passing: readonly (readonly Place[])[];
  readonly present: Place | null;
}

const cells = { chain: 48, rim: 24, passing: 24 };

/**
 * An outcome over two inputs, and where on the map the plan passes every check; null without a plan. Takes a
 * second or so, over a traced outline several: work for a worker, which may stop it wherever it yields how far
 * it is, 0 to 1.
 */
export function* mapIn(
  instrument: Instrument,
  asked: MapAsked,
): Generator<number, InputMap | null> {
  const held = heldInstrument(instrument, asked.hold);
  if (held === null) return null;
  const { across, up, outcome } = asked;
  const changed = (x: number, y: number): Instrument | null => {
    const moved = writeField(writeField(held, across.path, x), up.path, y);
    return relationProblems(moved).length > 0 ? null : moved;
  };
  const f = (x: number, y: number): number => {
    const moved = changed(x, y);
    return (moved === null ? null : outcomeAt(moved, outcome)) ?? Number.NaN;
  };
  const passes = (x: number, y: number): boolean => {
    const moved = changed(x, y);
    return moved !== null && passesAll(moved);
  };
  const count = needsRim(outcome) ? cells.rim : cells.chain;
  const lines = gridIn(f, spread(across.range, count), spread(up.range, count));
  const grid = yield* sharing(lines, 0, 0.3 / (count + 1));
  const contours: Contour[] = [];
  const levels = levelsOf(grid.values.flat(), windowOf(held, outcome));
  for (const { level, edge } of levels) {
    contours.push({ level, edge, lines: contourLines(f, grid, level) });
    yield 0.3 + (0.1 * contours.length) / (levels.length + 1);
  }
  const sides = [spread(across.range, cells.passing), spread(up.range, cells.passing)] as const;
  const passing = yield* sharing(regionIn(passes, ...sides), 0.4, 0.6 / (2 * cells.passing + 2));
  const own = [readField(held, across.path), readField(held, up.path)] as const;
  return {
    contours,
    passing,
    present: own[0] === null || own[1] === null ? null : [own[0], own[1]],
  };
}

/** Yields from `start` on how far it is, each step being `each` of the whole. */
function* sharing<T>(steps: Generator<void, T>, start: number, each: number): Generator<number, T> {
  for (let count = 1; ; count++) {
    const step = steps.next();
    if (step.done) return step.value;
    yield start + count * each;
  }
}

/** Whether an instrument has a plan without a stop or a warning. */
export function passesAll(instrument: Instrument): boolean {
  const result = profileOf(instrument, { stationEvery: 1e6 });
  return result.ok && result.profile.checks.every(({ grade }) => grade === "note");
}

const spread = ([from, to]: Range, count: number): readonly number[] =>
  Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);

/** Round values across what the map holds, three to nine of them, and the window's edges. */
function levelsOf(
  values: readonly number[],
  window: Range | null,
): readonly Pick<Contour, "level" | "edge">[] {
  const known = values.filter(Number.isFinite);
  const [low, high] = [Math.min(...known), Math.max(...known)];
  if (!(high > low)) return [];
  const edges = window === null ? [] : window.filter((edge) => edge > low && edge < high);
  const step = roundStep((high - low) / 8);
  const first = Math.ceil(low / step);
  const count = Math.max(0, Math.floor(high / step) - first + 1);
  const levels = Array.from({ length: count }, (_, i) => (first + i) * step);
  return [
    ...levels
      .filter((level) => !edges.some((edge) => Math.abs(edge - level) < step / 4))
      .map((level) => ({ level, edge: false })),
    ...edges.map((level) => ({ level, edge: true })),
  ];
}

/** 1, 2 or 5 with noughts, no less than `least`. */
export function roundStep(least: number): number {
  const decade = 10 ** Math.floor(Math.log10(least));
  return [1, 2, 5, 10].map((lead) => lead * decade).find((step) => step >= least * 0.999) ?? least;
}
