import { easing, quarter, type UnitCurve } from "./curve.ts";
import { at } from "./peak.ts";

/**
 * Half of a body's outline in plan, as half width (mm) over distance from the tail x (mm), and the
 * length of the edge from the tail seam. The rest of the core asks only these questions, so it does
 * not care what curve answers them.
 */
export interface Outline {
  readonly length: number;
  /** Places, rising, where smooth pieces meet; 0 and the length among them. */
  readonly knots: readonly number[];
  /** Greatest half width anywhere. */
  readonly widest: number;
  /** Exact half width at x in [0, length]. */
  halfWidth(x: number): number;
  /** d(half width)/dx; infinite at the tail, where the edge runs square to the centreline. */
  slope(x: number): number;
  /** Length of the edge from the tail seam to x. */
  arcLength(x: number): number;
  /** Inverse of `arcLength`. */
  xAtArc(arc: number): number;
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
  readonly #pieces: readonly [Piece, Piece, Piece, Piece];
  #rectified: Rectified | undefined;

  constructor(body: Bouts) {
    const { length, lowerBoutAt: xl, waistAt: xw, upperBoutAt: xu } = body;
    const wl = body.lowerBoutWidth / 2;
    const ww = body.waistWidth / 2;
    const wu = body.upperBoutWidth / 2;
    const wn = body.neckEndWidth / 2;
    this.length = length;
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

  arcLength(x: number): number {
    const piece = this.#pieceAt(x);
    return arcBefore(this.#measured(), this.#pieces.indexOf(piece), parameterAt(piece, x));
  }

  xAtArc(arc: number): number {
    return xAtArc(this.#measured(), arc);
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

// The length of a cubic has no closed form. Sixteen slices a piece, eight Gauss points a slice,
// hold it to rounding: the tests compare adaptive quadrature.
const slices = 16;
const nodes = [0.1834346424956498, 0.525532409916329, 0.7966664774136267, 0.9602898564975363];
const weights = [0.362683783378362, 0.31370664587788727, 0.22238103445337448, 0.10122853629037626];

interface Rectified {
  readonly pieces: readonly Piece[];
  /** For each piece, the length of its edge from parameter 0 to each slice's end. */
  readonly tables: readonly (readonly number[])[];
  /** Edge length from the tail seam to the start of each piece. */
  readonly starts: readonly number[];
  readonly total: number;
}

function rectify(pieces: readonly Piece[]): Rectified {
  const tables = pieces.map((piece) => {
    const table = [0];
    for (let i = 0; i < slices; i++) {
      table.push(at(table, i) + sliceLength(piece, i / slices, (i + 1) / slices));
    }
    return table;
  });
  const starts: number[] = [];
  let total = 0;
  for (const table of tables) {
    starts.push(total);
    total += at(table, slices);
  }
  return { pieces, tables, starts, total };
}

function speed({ curve, dx, dy }: Piece, s: number): number {
  const vx = dx * curve.dxi(s);
  const vy = dy * curve.deta(s);
  return Math.sqrt(vx * vx + vy * vy);
}

function sliceLength(piece: Piece, from: number, to: number): number {
  const middle = (from + to) / 2;
  const half = (to - from) / 2;
  let sum = 0;
  for (let i = 0; i < nodes.length; i++) {
    const off = half * at(nodes, i);
    sum += at(weights, i) * (speed(piece, middle - off) + speed(piece, middle + off));
  }
  return sum * half;
}

/** Edge of one piece from its parameter 0 to s. */
function pieceLength(piece: Piece, table: readonly number[], s: number): number {
  const slice = Math.min(slices - 1, Math.floor(s * slices));
  return at(table, slice) + sliceLength(piece, slice / slices, s);
}

function arcBefore(rectified: Rectified, index: number, s: number): number {
  const piece = rectified.pieces[index];
  const table = rectified.tables[index];
  if (piece === undefined || table === undefined) return Number.NaN;
  const length = pieceLength(piece, table, s);
  return at(rectified.starts, index) + (piece.dx > 0 ? length : at(table, slices) - length);
}

function xAtArc(rectified: Rectified, arc: number): number {
  const { pieces, tables, starts } = rectified;
  let index = pieces.length - 1;
  while (index > 0 && at(starts, index) > arc) index--;
  const piece = pieces[index];
  const table = tables[index];
  if (piece === undefined || table === undefined) return Number.NaN;
  const along = arc - at(starts, index);
  const wanted = piece.dx > 0 ? along : at(table, slices) - along;
  const s = parameterAtLength(piece, table, Math.min(at(table, slices), Math.max(0, wanted)));
  return piece.x + piece.dx * piece.curve.xi(s);
}

/**
 * Newton's steps from a straight guess in the right slice; length rises smoothly with s, so they
 * cannot stray, and each squares the error: the step after one of 1e-8 is past a double's last digit.
 */
function parameterAtLength(piece: Piece, table: readonly number[], length: number): number {
  let slice = slices - 1;
  while (slice > 0 && at(table, slice) > length) slice--;
  const start = at(table, slice);
  const share = (length - start) / (at(table, slice + 1) - start);
  const low = slice / slices;
  let s = low + share / slices;
  for (let step = 0; step < 8; step++) {
    const error = start + sliceLength(piece, low, s) - length;
    s = Math.min(low + 1 / slices, Math.max(low, s - error / speed(piece, s)));
    if (Math.abs(error) < 1e-8 * length) break;
  }
  return s;
}
