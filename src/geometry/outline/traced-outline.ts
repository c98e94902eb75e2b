import { numberAt } from "../number-at.ts";
import type { Place } from "../polyline.ts";
import type { Outline } from "./outline.ts";
import {
  parameterAtX,
  pieceAt,
  type Spline,
  splineDx,
  splineDy,
  splineThrough,
  splineX,
  splineY,
} from "./spline.ts";

// Six Gauss points on each of a piece's slices: pieces between traced places are short.
const slices = 4;
const nodes = [0.2386191860831969, 0.6612093864662645, 0.932469514203152];
const weights = [0.467913934572691, 0.3607615730481386, 0.1713244923791704];

/**
 * An outline through places the builder traced: [x, half width] from the tail, where both are 0, to the neck
 * end, where x is greatest; at least three of them. x may run back on the way, round a cutaway's horn. It
 * runs square to the centreline at the tail, and as the places do at the neck end, from where it goes
 * straight to the centreline.
 */
export class TracedOutline implements Outline {
  readonly length: number;
  readonly knots: readonly number[];
  readonly widest: number;
  readonly foldX: number;
  readonly end: number;
  readonly #spline: Spline;
  /** The place up to which x rises from the tail: the horn's tip, or the neck end. */
  readonly #tip: number;
  /** Edge from the tail seam to `foldX`. */
  readonly #foldArc: number;
  #lengths: readonly number[] | undefined;

  constructor(places: readonly Place[]) {
    this.#spline = splineThrough(places, "square", "free");
    const { xs, ys } = this.#spline;
    const last = xs.length - 1;
    const back = xs.findIndex((x, i) => i > 0 && x <= numberAt(xs, i - 1));
    this.#tip = back < 0 ? last : back - 1;
    this.length = numberAt(xs, last);
    this.foldX = back < 0 ? this.length : Math.min(...xs.slice(back));
    this.widest = Math.max(...ys.map((_, i) => this.#highestIn(i)));
    if (back < 0) {
      [this.#foldArc, this.knots, this.end] = [Number.POSITIVE_INFINITY, xs, this.length];
      return;
    }
    this.#foldArc = this.#arcAt(this.foldX);
    this.end = this.#pastFold(last);
    this.knots = [...xs.keys()].flatMap((i) => this.#knotsAt(i));
  }

  halfWidth(x: number): number {
    const piece = this.#pieceAt(x);
    return splineY(this.#spline, piece, parameterAtX(this.#spline, piece, x));
  }

  slope(x: number): number {
    const piece = this.#pieceAt(x);
    const t = parameterAtX(this.#spline, piece, x);
    return splineDy(this.#spline, piece, t) / splineDx(this.#spline, piece, t);
  }

  placeAt(u: number): Place {
    return u <= this.foldX
      ? [u, this.halfWidth(u)]
      : this.placeAtArc(this.#foldArc + (u - this.foldX));
  }

  arcLength(u: number): number {
    return u <= this.foldX ? this.#arcAt(u) : this.#foldArc + (u - this.foldX);
  }

  placeAtArc(arc: number): Place {
    const lengths = this.#measured();
    let piece = 0;
    while (piece < lengths.length - 2 && numberAt(lengths, piece + 1) <= arc) piece++;
    const start = numberAt(lengths, piece);
    const whole = numberAt(lengths, piece + 1) - start;
    const along = Math.min(whole, Math.max(0, arc - start));
    let [low, high] = [0, 1];
    let t = along / whole;
    for (let step = 0; step < 60; step++) {
      const error = this.#lengthTo(piece, t) - along;
      if (Math.abs(error) <= 1e-14 * whole) break;
      if (error > 0) high = t;
      else low = t;
      const next = t - error / this.#speed(piece, t);
      t = next > low && next < high ? next : (low + high) / 2;
    }
    return [splineX(this.#spline, piece, t), splineY(this.#spline, piece, t)];
  }

  totalArc(): number {
    return numberAt(this.#measured(), this.#spline.chords.length);
  }

  /** Up to `foldX` the one piece there, neckward of it the innermost. */
  #pieceAt(x: number): number {
    if (x <= this.foldX) return pieceAt(this.#spline, x, this.#tip);
    const { xs, chords } = this.#spline;
    const halfWidth = (piece: number): number =>
      splineY(this.#spline, piece, parameterAtX(this.#spline, piece, x));
    const there = [...chords.keys()].filter(
      (i) => (numberAt(xs, i) - x) * (numberAt(xs, i + 1) - x) <= 0,
    );
    return there.reduce(
      (inner, i) => (halfWidth(i) < halfWidth(inner) ? i : inner),
      there[0] ?? chords.length - 1,
    );
  }

  #arcAt(x: number): number {
    const piece = pieceAt(this.#spline, x, this.#tip);
    return this.#before(piece) + this.#lengthTo(piece, parameterAtX(this.#spline, piece, x));
  }

  /** The place of a knot along the edge, as `placeAt` counts, neckward of `foldX`. */
  #pastFold(i: number): number {
    return this.foldX + (this.#before(i) - this.#foldArc);
  }

  /** Place i along the edge, and before it `foldX` where the piece to it crosses that for the first time. */
  #knotsAt(i: number): readonly number[] {
    const { xs } = this.#spline;
    const x = numberAt(xs, i);
    if (i <= this.#tip && x < this.foldX) return [x];
    const crosses = i <= this.#tip && numberAt(xs, i - 1) < this.foldX;
    const own = crosses && x === this.foldX ? [] : [this.#pastFold(i)];
    return crosses ? [this.foldX, ...own] : own;
  }

  #before(piece: number): number {
    return numberAt(this.#measured(), piece);
  }

  /** Length of the edge from the tail seam to each place. */
  #measured(): readonly number[] {
    if (this.#lengths !== undefined) return this.#lengths;
    const lengths = [0];
    for (let piece = 0; piece < this.#spline.chords.length; piece++)
      lengths.push(numberAt(lengths, piece) + this.#lengthTo(piece, 1));
    this.#lengths = lengths;
    return lengths;
  }

  #lengthTo(piece: number, t: number): number {
    let sum = 0;
    for (let slice = 0; slice < slices; slice++) {
      const [middle, half] = [((slice + 0.5) * t) / slices, t / slices / 2];
      for (let i = 0; i < nodes.length; i++) {
        const off = half * numberAt(nodes, i);
        sum +=
          half *
          numberAt(weights, i) *
          (this.#speed(piece, middle - off) + this.#speed(piece, middle + off));
      }
    }
    return sum;
  }

  #speed(piece: number, t: number): number {
    return Math.hypot(splineDx(this.#spline, piece, t), splineDy(this.#spline, piece, t));
  }

  /** Greatest half width from place i on to the next: at its ends or where dy/dt, a quadratic, is 0. */
  #highestIn(i: number): number {
    const { ys, chords } = this.#spline;
    if (i >= chords.length) return numberAt(ys, i);
    const rate = (t: number): number => splineDy(this.#spline, i, t);
    const [a, b, c] = [rate(0), rate(0.5), rate(1)];
    const [p, q] = [2 * (a - 2 * b + c), 4 * b - 3 * a - c];
    const root = Math.sqrt(q * q - 4 * p * a);
    // Roots of p t² + q t + a, written so that a straight rate (p = 0) needs no case of its own.
    const s = -(q + (q < 0 ? -root : root)) / 2;
    const turns = [s / p, a / s].filter((t) => t > 0 && t < 1);
    return Math.max(numberAt(ys, i), ...turns.map((t) => splineY(this.#spline, i, t)));
  }
}
