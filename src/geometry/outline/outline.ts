import { numberAt } from "../number-at.ts";
import type { Place } from "../polyline.ts";
import { easing, quarter, type UnitCurve } from "./unit-curve.ts";

/**
 * Half of a body's outline in plan, as half width (mm) over distance from the tail x (mm), and the
 * length of the edge from the tail seam. The rest of the core asks only these questions, so it does
 * not care what curve answers them.
 *
 * A cutaway's edge runs back toward the tail, and has several half widths at one x neckward of where its
 * scoop reaches, `foldX`. A place along the edge is therefore counted by u: its x up to there, and beyond
 * it `foldX` plus the length of edge since. With no cutaway u is x throughout.
 */
export interface Outline {
  readonly length: number;
  /** Places u, rising, where smooth pieces meet; 0 and the end among them. */
  readonly knots: readonly number[];
  /** Greatest half width anywhere. */
  readonly widest: number;
  /** Up to here x has one half width: the farthest a cutaway's scoop reaches toward the tail, or the length. */
  readonly foldX: number;
  /** The neck end's corner, as u. */
  readonly end: number;
  /** Exact half width at x in [0, length]; of several, the innermost. */
  halfWidth(x: number): number;
  /** d(half width)/dx; infinite at the tail, where the edge runs square to the centreline. */
  slope(x: number): number;
  /** The place [x, half width] at u. */
  placeAt(u: number): Place;
  /** Length of the edge from the tail seam to u. */
  arcLength(u: number): number;
  /** The place [x, half width] whose `arcLength` is `arc`. */
  placeAtArc(arc: number): Place;
  /** Edge from the tail seam to the corner at the neck end. */
  totalArc(): number;
}

export interface Bouts {
  readonly length: number;
  readonly lowerBoutWidth: number;
  readonly lowerBoutAt: number;
  readonly waistWidth: number;
  readonly waistAt: number;
  readonly upperBoutWidth: number;
  readonly upperBoutAt: number;
  readonly neckEndWidth: number;
}

/** A unit curve laid from (x, y) over (dx, dy); dx < 0 where it is drawn from its neck end back. */
interface Piece {
  readonly curve: UnitCurve;
  readonly from: number;
  readonly x: number;
  readonly dx: number;
  readonly y: number;
  readonly dy: number;
}

/**
 * The outline through tail, lower bout, waist, upper bout and neck end: quarter rounds at both ends
 * and easings between the bouts. The places given must rise from tail to neck.
 */
export class BoutOutline implements Outline {
  readonly length: number;
  readonly knots: readonly number[];
  readonly widest: number;
  readonly foldX: number;
  readonly end: number;
  readonly #pieces: readonly [Piece, Piece, Piece, Piece];
  #rectified: Rectified | undefined;

  constructor(body: Bouts) {
    const { length, lowerBoutAt: xl, waistAt: xw, upperBoutAt: xu } = body;
    const wl = body.lowerBoutWidth / 2;
    const ww = body.waistWidth / 2;
    const wu = body.upperBoutWidth / 2;
    const wn = body.neckEndWidth / 2;
    this.length = length;
    this.foldX = length;
    this.end = length;
    this.knots = [0, xl, xw, xu, length];
    this.widest = Math.max(wl, ww, wu, wn);
    this.#pieces = [
      { curve: quarter, from: 0, x: 0, dx: xl, y: 0, dy: wl },
      { curve: easing, from: xl, x: xl, dx: xw - xl, y: wl, dy: ww - wl },
      { curve: easing, from: xw, x: xw, dx: xu - xw, y: ww, dy: wu - ww },
      { curve: quarter, from: xu, x: length, dx: xu - length, y: wn, dy: wu - wn },
    ];
  }

  halfWidth(x: number): number {
    const piece = this.#pieceAt(x);
    return piece.y + piece.dy * piece.curve.eta(parameterAt(piece, x));
  }

  slope(x: number): number {
    const piece = this.#pieceAt(x);
    const s = parameterAt(piece, x);
    return (piece.dy * piece.curve.deta(s)) / (piece.dx * piece.curve.dxi(s));
  }

  placeAt(u: number): Place {
    return [u, this.halfWidth(u)];
  }

  arcLength(x: number): number {
    const piece = this.#pieceAt(x);
    return arcBefore(this.#measured(), this.#pieces.indexOf(piece), parameterAt(piece, x));
  }

  placeAtArc(arc: number): Place {
    return placeAtArc(this.#measured(), arc);
  }

  totalArc(): number {
    return this.#measured().total;
  }

  #pieceAt(x: number): Piece {
    const [first, second, third, last] = this.#pieces;
    if (x <= second.from) return first;
    if (x <= third.from) return second;
    return x <= last.from ? third : last;
  }

  #measured(): Rectified {
    this.#rectified ??= rectify(this.#pieces);
    return this.#rectified;
  }
}

/** Rounding may carry x a hair past a piece's end, where the inverse has no value. */
const parameterAt = (piece: Piece, x: number): number =>
  piece.curve.parameter(Math.min(1, Math.max(0, (x - piece.x) / piece.dx)));

// The length of a cubic has no closed form. Four Gauss points on each of 48 slices a piece hold it to
// rounding for any body; the tests compare adaptive quadrature.
const slices = 48;
const nodes = [0.3399810435848563, 0.8611363115940526];
const weights = [0.6521451548625461, 0.34785484513745385];

/** A piece with the length of its edge from parameter 0, and the speed along it, at each slice's end. */
interface Ruler {
  readonly piece: Piece;
  readonly rates: Rates;
  readonly lengths: readonly number[];
  readonly speeds: readonly number[];
}

interface Rectified {
  readonly rulers: readonly Ruler[];
  /** Edge length from the tail seam to the start of each piece. */
  readonly starts: readonly number[];
  readonly total: number;
}

function rectify(pieces: readonly Piece[]): Rectified {
  const rulers = pieces.map(rulerOf);
  const starts: number[] = [];
  let total = 0;
  for (const ruler of rulers) {
    starts.push(total);
    total += numberAt(ruler.lengths, slices);
  }
  return { rulers, starts, total };
}

function rulerOf(piece: Piece): Ruler {
  const rates = ratesOf(piece);
  const lengths = [0];
  const speeds = [speed(rates, 0)];
  for (let i = 0; i < slices; i++) {
    const end = (i + 1) / slices;
    lengths.push(numberAt(lengths, i) + lengthBetween(rates, i / slices, end));
    speeds.push(speed(rates, end));
  }
  return { piece, rates, lengths, speeds };
}

/** dx/ds and dy/ds along a piece, two quadratics in s: their coefficients, constant first. */
interface Rates {
  readonly x: Quadratic;
  readonly y: Quadratic;
}
type Quadratic = readonly [number, number, number];

const ratesOf = ({ curve, dx, dy }: Piece): Rates => ({
  x: quadraticOf(curve.dxi, dx),
  y: quadraticOf(curve.deta, dy),
});

function quadraticOf(rate: (s: number) => number, times: number): Quadratic {
  const [start, middle, end] = [times * rate(0), times * rate(0.5), times * rate(1)];
  return [start, 4 * middle - 3 * start - end, 2 * (start - 2 * middle + end)];
}

function speed({ x, y }: Rates, s: number): number {
  const vx = x[0] + s * (x[1] + s * x[2]);
  const vy = y[0] + s * (y[1] + s * y[2]);
  return Math.sqrt(vx * vx + vy * vy);
}

function lengthBetween(rates: Rates, from: number, to: number): number {
  const middle = (from + to) / 2;
  const half = (to - from) / 2;
  let sum = 0;
  for (let i = 0; i < nodes.length; i++) {
    const off = half * numberAt(nodes, i);
    sum += numberAt(weights, i) * (speed(rates, middle - off) + speed(rates, middle + off));
  }
  return sum * half;
}

function arcBefore({ rulers, starts }: Rectified, index: number, s: number): number {
  const ruler = rulers[index];
  if (ruler === undefined) return Number.NaN;
  const { piece, rates, lengths } = ruler;
  const slice = Math.min(slices - 1, Math.floor(s * slices));
  const length = numberAt(lengths, slice) + lengthBetween(rates, slice / slices, s);
  return numberAt(starts, index) + (piece.dx > 0 ? length : numberAt(lengths, slices) - length);
}

function placeAtArc({ rulers, starts }: Rectified, arc: number): Place {
  let index = rulers.length - 1;
  while (index > 0 && numberAt(starts, index) > arc) index--;
  const ruler = rulers[index];
  if (ruler === undefined) return [Number.NaN, Number.NaN];
  const { piece, lengths } = ruler;
  const whole = numberAt(lengths, slices);
  const along = Math.min(whole, Math.max(0, arc - numberAt(starts, index)));
  const s = parameterAtLength(ruler, piece.dx > 0 ? along : whole - along);
  return [piece.x + piece.dx * piece.curve.xi(s), piece.y + piece.dy * piece.curve.eta(s)];
}

/** The slice that holds `length`, walked to from where it would be at even speed. */
function sliceAt(lengths: readonly number[], length: number): number {
  let slice = Math.min(slices - 1, Math.floor((length / numberAt(lengths, slices)) * slices));
  while (slice > 0 && numberAt(lengths, slice) > length) slice--;
  while (slice < slices - 1 && numberAt(lengths, slice + 1) < length) slice++;
  return slice;
}

/**
 * Newton's steps from the cubic that fits length and speed at the slice's ends. Length rises smoothly
 * with s, so they cannot stray, and each squares the error: the step after one of 1e-8 is the last.
 */
function parameterAtLength({ rates, lengths, speeds }: Ruler, length: number): number {
  const slice = sliceAt(lengths, length);
  const start = numberAt(lengths, slice);
  const span = numberAt(lengths, slice + 1) - start;
  const share = (length - start) / span;
  const [low, high] = [slice / slices, (slice + 1) / slices];
  // Slopes of the parameter over the share of the slice's length.
  const leave = (span * slices) / numberAt(speeds, slice);
  const arrive = (span * slices) / numberAt(speeds, slice + 1);
  const bend = (leave - 1) * (1 - share) - (arrive - 1) * share;
  let s = low + (share + share * (1 - share) * bend) / slices;
  for (let step = 0; step < 8; step++) {
    s = Math.min(high, Math.max(low, s));
    const error = start + lengthBetween(rates, low, s) - length;
    s -= error / speed(rates, s);
    if (Math.abs(error) < 1e-8 * length) break;
  }
  return Math.min(high, Math.max(low, s));
}
