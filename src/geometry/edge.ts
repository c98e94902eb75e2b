import type { Outline } from "./outline.ts";
import { at } from "./peak.ts";

/** Places along the outline's edge, rising in x, close enough that a smooth curve over it has at most one turn between neighbours. */
export interface Edge {
  readonly xs: readonly number[];
  readonly halfWidths: readonly number[];
}

const perPiece = 12;

/** Places from the tail end to x = `to`, that end included, closer together toward the ends of each smooth piece. */
export function edgeOf(outline: Outline, to: number): Edge {
  const ends = [...outline.knots.filter((knot) => knot < to), to];
  const xs = [0];
  for (let piece = 1; piece < ends.length; piece++) {
    const [from, span] = [at(ends, piece - 1), at(ends, piece) - at(ends, piece - 1)];
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
  return edge.xs.map((x, i) => f(x, at(edge.halfWidths, i)));
}
