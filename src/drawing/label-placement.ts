import { type Box, boxesMeet, boxHolds, boxOf, grown, lineMeets } from "./box.ts";
import type { Point } from "./frame.ts";
import { textBox } from "./lettering.ts";
import type { Shape, TextShape } from "./scene.ts";

/** One place for a label: its text, with the lines that belong to it. */
export interface LabelCandidate {
  readonly text: TextShape;
  /** Its lines, which stay off every text. */
  readonly strokes: readonly (readonly Point[])[];
  /** The line that leads out to the text, which also had better not cross an outline; empty where there is none. */
  readonly leader: readonly Point[];
  /** Ground on which no other dimension line may run; null where there is none. */
  readonly lane: Box | null;
  /** What speaks against it, 0 for nothing. */
  readonly cost: number;
  /** Everything to be drawn but the text itself. */
  readonly shapes: () => readonly Shape[];
}

/** In the order in which they are tried. */
export const byCost = (candidates: readonly LabelCandidate[]): LabelCandidate[] =>
  [...candidates].sort((a, b) => a.cost - b.cost);

/** A text without lines of its own. */
export const plainCandidate = (text: TextShape, cost: number): LabelCandidate => ({
  ...{ text, cost, strokes: [], leader: [], lane: null },
  shapes: () => [],
});

/** What it costs to write a text on an outline, or on a thin line. */
export const outlineCost = 14;
export const thinLineCost = 7;
/** What it costs to lead a line across an outline. */
const crossing = 3;
const never = Number.POSITIVE_INFINITY;

/** Clear paper kept round every text, px. */
const clearance = 2;
/** What a candidate may cost and still be worth drawing. */
const usualLimit = 14;

/** A few points of a line, with the box they lie in, so that most of a long line is passed over quickly. */
interface Run {
  readonly points: readonly Point[];
  readonly box: Box;
  readonly weight: number;
}

/**
 * Keeps texts apart. Everything written on a drawing goes through one of these: a text is placed
 * where it is on the drawing and touches no text placed before, or not at all, so no two can ever
 * overlap. Offer the most important first.
 */
export class LabelPlacement {
  private readonly bounds: Box;
  private readonly taken: Box[] = [];
  private readonly lanes: Box[] = [];
  private readonly runs: Run[] = [];

  constructor(bounds: Box) {
    this.bounds = bounds;
  }

  /** A line already on the drawing: a text standing on it costs `weight`. */
  avoid(points: readonly Point[], weight: number): void {
    for (const run of runsOf(points)) this.runs.push({ points: run, box: boxOf(run), weight });
  }

  /** Ground that no text and no dimension line may enter. */
  reserve(box: Box): void {
    this.taken.push(box);
  }

  /** The least costly of the candidates that fit and cost less than `limit`, now placed; null when none does. They come in rising order of their own cost. */
  choose(candidates: Iterable<LabelCandidate>, limit = usualLimit): LabelCandidate | null {
    let best: LabelCandidate | null = null;
    let least = limit;
    for (const candidate of candidates) {
      if (candidate.cost >= least) break;
      const cost = candidate.cost + this.conflict(candidate, least - candidate.cost);
      if (cost < least) {
        best = candidate;
        least = cost;
      }
    }
    if (best !== null) this.take(best);
    return best;
  }

  private take({ text, strokes, leader, lane }: LabelCandidate): void {
    if (lane !== null) this.lanes.push(lane);
    this.taken.push(grown(textBox(text), clearance));
    for (const points of [...strokes, leader]) this.avoid(points, never);
  }

  /** What the candidate runs into: infinite where a text would meet another or a dimension line. Counting stops at `enough`. */
  private conflict({ text, strokes, leader, lane }: LabelCandidate, enough: number): number {
    if (lane !== null && this.lanes.some((other) => boxesMeet(lane, other))) return never;
    const box = textBox(text);
    if (!boxHolds(this.bounds, box)) return never;
    if (this.taken.some((other) => boxesMeet(box, other))) return never;
    if (![...strokes, leader].every((points) => this.mayRun(points, box))) return never;
    const ground = grown(box, clearance);
    let cost = 0;
    for (const run of this.runs) {
      if (boxesMeet(ground, run.box) && lineMeetsBox(run.points, ground)) cost += run.weight;
      if (run.weight === outlineCost && lineMeetsBox(leader, run.box)) cost += crossing;
      if (cost >= enough) break;
    }
    return cost;
  }

  /** A stroke keeps within the bounds and off every text, its own included. */
  private mayRun(points: readonly Point[], own: Box): boolean {
    return (
      points.length === 0 ||
      (boxHolds(this.bounds, boxOf(points)) &&
        !lineMeetsBox(points, own) &&
        !this.taken.some((box) => lineMeetsBox(points, box)))
    );
  }
}

const runLength = 8;

function* runsOf(points: readonly Point[]): Generator<readonly Point[]> {
  for (let i = 0; i + 1 < points.length; i += runLength) yield points.slice(i, i + runLength + 1);
}

function lineMeetsBox(points: readonly Point[], box: Box): boolean {
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1];
    const b = points[i];
    if (a !== undefined && b !== undefined && lineMeets(box, a, b)) return true;
  }
  return false;
}
