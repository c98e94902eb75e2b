import { numberAt } from "../number-at.ts";
import { highest, lowest } from "../peak.ts";
import type { Place } from "../polyline.ts";
import { edgeOf } from "./edge.ts";
import type { Outline } from "./outline.ts";

/**
 * Where an outline is widest and narrowest along its length, as u; null where it has no waist. Of one with a
 * cutaway also its horn's tip, the farthest neckward before it runs back, and where its scoop reaches farthest toward the tail.
 */
export interface Turns {
  readonly lower: number;
  readonly waist: number | null;
  readonly upper: number | null;
  readonly horn: number | null;
  readonly scoop: number | null;
}

export function turnsOf(outline: Outline): Turns {
  const turns = found.get(outline) ?? turnsIn(outline);
  found.set(outline, turns);
  return turns;
}

const found = new WeakMap<Outline, Turns>();

function turnsIn(outline: Outline): Turns {
  const cutaway = cutawayOf(outline);
  return { ...boutsIn(outline, cutaway.horn ?? outline.end), ...cutaway };
}

/** The waist is the deepest hollow: where the outline lies farthest under the lesser of the widest places on both sides. */
function boutsIn(outline: Outline, to: number): Pick<Turns, "lower" | "waist" | "upper"> {
  const { us, halfWidths } = edgeOf(outline, to);
  const width = (u: number): number => outline.placeAt(u)[1];
  const widestAhead = runningMost(halfWidths);
  const widestBehind = runningMost([...halfWidths].reverse()).reverse();
  const hollows = halfWidths.map(
    (half, i) => Math.min(numberAt(widestAhead, i), numberAt(widestBehind, i)) - half,
  );
  const i = hollows.indexOf(Math.max(...hollows));
  if (numberAt(hollows, i) < shallowest) {
    return { lower: highest(width, us, halfWidths).x, waist: null, upper: null };
  }
  const near = (from: number, to: number) =>
    [us.slice(from, to), halfWidths.slice(from, to)] as const;
  return {
    lower: highest(width, ...near(0, i + 1)).x,
    waist: lowest(width, ...near(Math.max(0, i - 1), i + 2)).x,
    upper: highest(width, ...near(i, us.length)).x,
  };
}

/** A hollow of less is no waist, mm. */
const shallowest = 0.5;

/** Two knots one above the other are read off the edge as far apart as this at most, mm. */
const rounding = 1e-9;

/** x turns back at knots alone: the horn's tip is where it first stops rising, if only to go straight in. */
function cutawayOf(outline: Outline): Pick<Turns, "horn" | "scoop"> {
  const { knots, foldX, end } = outline;
  if (foldX === end) return { horn: null, scoop: null };
  const xs = knots.map((u) => outline.placeAt(u)[0]);
  const tip = xs.findIndex((x, i) => numberAt(xs, i + 1) <= x + rounding);
  const beyond = xs.slice(tip);
  const back = tip + beyond.indexOf(Math.min(...beyond));
  return { horn: numberAt(knots, tip), scoop: numberAt(knots, back) };
}

function runningMost(values: readonly number[]): number[] {
  let most = Number.NEGATIVE_INFINITY;
  return values.map((value) => {
    most = Math.max(most, value);
    return most;
  });
}

/** Whether a line runs back toward the tail anywhere, as a cutaway's does round its horn. */
export const runsBack = (places: readonly Place[]): boolean =>
  places.some(([x], i) => x <= (places[i - 1]?.[0] ?? Number.NEGATIVE_INFINITY));
