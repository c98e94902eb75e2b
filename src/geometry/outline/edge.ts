import { numberAt } from "../number-at.ts";
import { highest, lowest } from "../peak.ts";
import type { Outline } from "./outline.ts";

/** Where an outline is widest and narrowest along its length; null where it has no waist. */
export interface Turns {
  readonly lower: number;
  readonly waist: number | null;
  readonly upper: number | null;
}

/** The waist is the deepest hollow: where the outline lies farthest under the lesser of the widest places on both sides. */
export function turnsOf(outline: Outline): Turns {
  const turns = found.get(outline) ?? turnsIn(outline);
  found.set(outline, turns);
  return turns;
}

const found = new WeakMap<Outline, Turns>();

function turnsIn(outline: Outline): Turns {
  const { xs, halfWidths } = edgeOf(outline, outline.length);
  const width = (x: number): number => outline.halfWidth(x);
  const widestAhead = runningMost(halfWidths);
  const widestBehind = runningMost([...halfWidths].reverse()).reverse();
  const hollows = halfWidths.map(
    (half, i) => Math.min(numberAt(widestAhead, i), numberAt(widestBehind, i)) - half,
  );
  const i = hollows.indexOf(Math.max(...hollows));
  if (numberAt(hollows, i) < shallowest) {
    return { lower: highest(width, xs, halfWidths).x, waist: null, upper: null };
  }
  const near = (from: number, to: number) =>
    [xs.slice(from, to), halfWidths.slice(from, to)] as const;
  return {
    lower: highest(width, ...near(0, i + 1)).x,
    waist: lowest(width, ...near(Math.max(0, i - 1), i + 2)).x,
    upper: highest(width, ...near(i, xs.length)).x,
  };
}

/** A hollow of less is no waist, mm. */
const shallowest = 0.5;

function runningMost(values: readonly number[]): number[] {
  let most = Number.NEGATIVE_INFINITY;
  return values.map((value) => {
    most = Math.max(most, value);
    return most;
  });
}

/** Places along the outline's edge, rising in x, close enough that a smooth curve over it has at most one turn between neighbours. */
export interface Edge {
  readonly xs: readonly number[];
  readonly halfWidths: readonly number[];
}

const perPiece = 12;

/** Places from the tail end to x = `to`, that end included, closer together toward the ends of each smooth piece. */
export function edgeOf(outline: Outline, to: number): Edge {
  const knots = outline.knots.filter((knot) => knot < to);
  if (knots.length <= few) return placesOn(outline, [...knots, to]);
  const whole = wholeEdgeOf(outline);
  const count = 1 + (knots.length - 1) * perPiece;
  const rest = placesOn(outline, [numberAt(knots, knots.length - 1), to]);
  return {
    xs: whole.xs.slice(0, count).concat(rest.xs.slice(1)),
    halfWidths: whole.halfWidths.slice(0, count).concat(rest.halfWidths.slice(1)),
  };
}

/** So few pieces are looked at sooner than remembered. A traced outline has hundreds, and stays while other numbers change. */
const few = 8;
const seen = new WeakMap<Outline, Edge>();

function wholeEdgeOf(outline: Outline): Edge {
  const edge = seen.get(outline) ?? placesOn(outline, outline.knots);
  seen.set(outline, edge);
  return edge;
}

/** Places from the first of `ends` to the last, the pieces between neighbours. */
function placesOn(outline: Outline, ends: readonly number[]): Edge {
  const xs = [numberAt(ends, 0)];
  for (let piece = 1; piece < ends.length; piece++) {
    const [from, span] = [
      numberAt(ends, piece - 1),
      numberAt(ends, piece) - numberAt(ends, piece - 1),
    ];
    for (let i = 1; i <= perPiece; i++) {
      xs.push(
        i === perPiece ? from + span : from + (span * (1 - Math.cos((Math.PI * i) / perPiece))) / 2,
      );
    }
  }
  return { xs, halfWidths: xs.map((x) => outline.halfWidth(x)) };
}

/** `f` at each place of the edge. */
export function along(edge: Edge, f: (x: number, halfWidth: number) => number): readonly number[] {
  return edge.xs.map((x, i) => f(x, numberAt(edge.halfWidths, i)));
}
