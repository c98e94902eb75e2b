import type { Body } from "../../src/instrument/instrument.ts";
import { type Exact, exact } from "./high-precision.ts";

type Point = readonly [x: Exact, y: Exact];
type Piece = readonly [Point, Point, Point, Point];

export interface PreciseOutline {
  readonly halfWidth: (x: Exact) => Exact;
  /** Along the outline from the tail end to its point at x. */
  readonly arcLength: (x: Exact) => Exact;
}

const kappa = exact("0.5522847498");
const reach = exact("0.45");

/** The four Bezier pieces of one half of the outline, tail end first. */
function piecesOf(body: Body): readonly Piece[] {
  const [xl, xw, xu, end] = [body.lowerBoutAt, body.waistAt, body.upperBoutAt, body.length].map(
    exact,
  ) as [Exact, Exact, Exact, Exact];
  const [wl, ww, wu, wn] = [
    body.lowerBoutWidth,
    body.waistWidth,
    body.upperBoutWidth,
    body.neckEndWidth,
  ].map((width) => exact(width).div(2)) as [Exact, Exact, Exact, Exact];
  const o = exact(0);
  return [
    [
      [o, o],
      [o, kappa.times(wl)],
      [xl.minus(kappa.times(xl)), wl],
      [xl, wl],
    ],
    level(xl, wl, xw, ww),
    level(xw, ww, xu, wu),
    [
      [xu, wu],
      [xu.plus(kappa.times(end.minus(xu))), wu],
      [end, wn.plus(kappa.times(wu.minus(wn)))],
      [end, wn],
    ],
  ];
}

/** A piece that leaves and arrives parallel to the centreline. */
function level(x0: Exact, y0: Exact, x1: Exact, y1: Exact): Piece {
  const pull = reach.times(x1.minus(x0));
  return [
    [x0, y0],
    [x0.plus(pull), y0],
    [x1.minus(pull), y1],
    [x1, y1],
  ];
}

function bezier(piece: Piece, axis: 0 | 1, u: Exact): Exact {
  const v = exact(1).minus(u);
  const [a, b, c, d] = piece;
  return v
    .pow(3)
    .times(a[axis])
    .plus(v.pow(2).times(u).times(3).times(b[axis]))
    .plus(v.times(u.pow(2)).times(3).times(c[axis]))
    .plus(u.pow(3).times(d[axis]));
}

function bezierRate(piece: Piece, axis: 0 | 1, u: Exact): Exact {
  const v = exact(1).minus(u);
  const [a, b, c, d] = piece;
  return v
    .pow(2)
    .times(b[axis].minus(a[axis]))
    .plus(v.times(u).times(2).times(c[axis].minus(b[axis])))
    .plus(u.pow(2).times(d[axis].minus(c[axis])))
    .times(3);
}

/** The parameter at x: halved in double precision, then polished by Newton to all 50 digits. */
function parameterAt(piece: Piece, x: Exact): Exact {
  if (x.lte(piece[0][0])) return exact(0);
  if (x.gte(piece[3][0])) return exact(1);
  let u = exact(halvedParameter(piece, x.toNumber()));
  for (let turn = 0; turn < 12; turn++) {
    const rate = bezierRate(piece, 0, u);
    const miss = bezier(piece, 0, u).minus(x);
    if (miss.abs().lt("1e-46") || rate.isZero()) break;
    u = u.minus(miss.div(rate));
  }
  return u;
}

function halvedParameter(piece: Piece, x: number): number {
  const [a, b, c, d] = piece.map((point) => point[0].toNumber()) as [
    number,
    number,
    number,
    number,
  ];
  let [low, high] = [0, 1];
  for (let turn = 0; turn < 52; turn++) {
    const u = (low + high) / 2;
    const v = 1 - u;
    const at = v * v * v * a + 3 * v * v * u * b + 3 * v * u * u * c + u * u * u * d;
    if (at < x) low = u;
    else high = u;
  }
  return (low + high) / 2;
}

/** The outline of a body, half width and arc length as functions of the distance from the tail end. */
export function preciseOutline(body: Body): PreciseOutline {
  const pieces = piecesOf(body);
  const indexAt = (x: Exact): number => {
    const i = pieces.findIndex((piece) => x.lte(piece[3][0]));
    return i < 0 ? pieces.length - 1 : i;
  };
  const pieceAt = (i: number): Piece => {
    const piece = pieces[i];
    if (piece === undefined) throw new Error("no such piece of the outline");
    return piece;
  };
  let lengths: readonly Exact[] | undefined;
  const known = new WeakMap<Exact, Exact>();
  return {
    halfWidth: (x) => {
      const held = known.get(x);
      if (held !== undefined) return held;
      const piece = pieceAt(indexAt(x));
      const width = bezier(piece, 1, parameterAt(piece, x));
      known.set(x, width);
      return width;
    },
    arcLength: (x) => {
      const i = indexAt(x);
      lengths ??= pieces.map((whole) => arcOf(whole, exact(1)));
      const before = lengths.slice(0, i).reduce((sum, length) => sum.plus(length), exact(0));
      const piece = pieceAt(i);
      return before.plus(arcOf(piece, parameterAt(piece, x)));
    },
  };
}

/** The half outline as a polyline from the tail end to the neck end's corner, every vertex on the curve. */
export function outlinePoints(body: Body, chordsPerPiece: number): [x: number, y: number][] {
  const points: [number, number][] = [[0, 0]];
  for (const piece of piecesOf(body)) {
    for (let i = 1; i <= chordsPerPiece; i++) {
      const u = exact(i).div(chordsPerPiece);
      points.push([bezier(piece, 0, u).toNumber(), bezier(piece, 1, u).toNumber()]);
    }
  }
  return points;
}

/** Length of a piece from its start to u, by Romberg's rule until two rows agree to 1e-11 mm. */
function arcOf(piece: Piece, u: Exact): Exact {
  if (u.isZero()) return exact(0);
  const speed = (at: Exact): Exact =>
    bezierRate(piece, 0, at)
      .pow(2)
      .plus(bezierRate(piece, 1, at).pow(2))
      .sqrt();
  let width = u;
  let row = [width.div(2).times(speed(exact(0)).plus(speed(u)))];
  for (let level = 1; level <= 12; level++) {
    width = width.div(2);
    let sum = exact(0);
    for (let i = 1; i < 2 ** level; i += 2) sum = sum.plus(speed(width.times(i)));
    const next = [(row[0] ?? exact(0)).div(2).plus(width.times(sum))];
    row.forEach((coarse, j) => {
      const fine = next[j] ?? coarse;
      next.push(
        fine.plus(
          fine.minus(coarse).div(
            exact(4)
              .pow(j + 1)
              .minus(1),
          ),
        ),
      );
    });
    const settled = (next.at(-1) ?? u)
      .minus(row.at(-1) ?? u)
      .abs()
      .lt("1e-11");
    row = next;
    if (settled && level > 3) break;
  }
  return row.at(-1) ?? exact(0);
}
