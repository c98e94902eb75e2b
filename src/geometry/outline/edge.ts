import { numberAt } from "../number-at.ts";
import { highest, lowest, type Peak } from "../peak.ts";
import type { Outline } from "./outline.ts";

/**
 * Places along the outline's edge, close enough that a smooth curve over it has at most one turn between
 * neighbours: `us` as the outline counts them, rising, with x and half width there.
 */
export interface Edge {
  readonly us: readonly number[];
  readonly xs: readonly number[];
  readonly halfWidths: readonly number[];
}

const perPiece = 12;

/** Places from the tail end to u = `to`, that end included, closer together toward the ends of each smooth piece. */
export function edgeOf(outline: Outline, to: number): Edge {
  const knots = outline.knots.filter((knot) => knot < to);
  if (knots.length <= few) return placesOn(outline, [...knots, to]);
  const whole = wholeEdgeOf(outline);
  const count = 1 + (knots.length - 1) * perPiece;
  const rest = placesOn(outline, [numberAt(knots, knots.length - 1), to]);
  return {
    us: whole.us.slice(0, count).concat(rest.us.slice(1)),
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
  const us = [numberAt(ends, 0)];
  for (let piece = 1; piece < ends.length; piece++) {
    const [from, span] = [
      numberAt(ends, piece - 1),
      numberAt(ends, piece) - numberAt(ends, piece - 1),
    ];
    for (let i = 1; i <= perPiece; i++) {
      us.push(
        i === perPiece ? from + span : from + (span * (1 - Math.cos((Math.PI * i) / perPiece))) / 2,
      );
    }
  }
  const beyond = us.findIndex((u) => u > outline.foldX);
  if (beyond < 0) return { us, xs: us, halfWidths: us.map((x) => outline.halfWidth(x)) };
  const places = us.map((u) => outline.placeAt(u));
  return { us, xs: places.map(([x]) => x), halfWidths: places.map(([, y]) => y) };
}

/** `f` at each place of the edge. */
export function along(edge: Edge, f: (x: number, halfWidth: number) => number): readonly number[] {
  return edge.xs.map((x, i) => f(x, numberAt(edge.halfWidths, i)));
}

/** Where on the edge between its places `f` is greatest; the peak's x is the u there. */
export function highestOn(
  outline: Outline,
  edge: Edge,
  f: (x: number, halfWidth: number) => number,
): Peak {
  return highest((u) => f(...outline.placeAt(u)), edge.us, along(edge, f));
}

/** The same where it is least. */
export function lowestOn(
  outline: Outline,
  edge: Edge,
  f: (x: number, halfWidth: number) => number,
): Peak {
  return lowest((u) => f(...outline.placeAt(u)), edge.us, along(edge, f));
}
