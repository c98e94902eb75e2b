import type { Vec3 } from "manifold-3d";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { outlinePoints } from "./precise-outline.ts";
import { edgesOf, meetingOf, type Solid, topOf, type Workshop } from "./solid.ts";

type Pair = [number, number];

/** How finely the outline and the dish are cut into facets. */
export interface Fineness {
  /** Chords for each of the outline's four pieces. */
  readonly chords: number;
  /** Side of the dish's facets in plan. */
  readonly facet: number;
}

/** A rim (filled, so that it carries the top too) through the two cuts, in the frame of the flat. */
export interface CutRim {
  readonly breakX: number;
  readonly level: Solid;
  /** Cut by the dish from the tail to the break. */
  readonly dished: Solid;
  /** And then by the flat board. */
  readonly boarded: Solid;
  /** The outline's own polyline, tail end to neck end's corner. */
  readonly half: readonly Pair[];
  /** Farthest that facets may stand below the sphere, and the polyline inside the curve. */
  readonly dishSag: number;
  readonly outlineSag: number;
}

/** A shim that reaches past the tail block bears on the block's edge. */
const restsAt = ({ shim }: Instrument): number => Math.min(shim.contact, shim.tailBlockDepth);

/** Cuts a tall body with the dish as it lies when the shim just fits, then with the board at z = 0. */
export function cutRim(
  shop: Workshop,
  instrument: Instrument,
  shim: number,
  fineness: Fineness,
): CutRim {
  const { body, dome } = instrument;
  const breakX = body.length - dome.flatLength;
  const half = outlinePoints(body, fineness.chords);
  const level = shop.levelBody(half);
  const breakHalfWidth = edgesOf(shop.sectionAt(level, breakX)).left[0];
  const resting = { breakX, breakHalfWidth, at: restsAt(instrument), gap: shim };
  const height = rocked(dome.dishRadius, resting);
  const halfWidth = Math.max(...half.map(([, y]) => y)) + 5;
  const cut = shop.dishCut(height, { breakX, halfWidth, facet: fineness.facet });
  const dished = shop.subtract(level, cut);
  return {
    breakX,
    level,
    dished,
    boarded: shop.boardCut(dished, breakX, 0),
    half,
    dishSag: dome.dishRadius === null ? 0 : fineness.facet ** 2 / 4 / dome.dishRadius,
    outlineSag: outlineSag(half, outlinePoints(body, 2 * fineness.chords)),
  };
}

/** A dished edge on a board: it rests on the two ends of the break line, and at `at` on the centreline it clears the board by `gap`. */
interface Resting {
  readonly breakX: number;
  readonly breakHalfWidth: number;
  readonly at: number;
  readonly gap: number;
}

/**
 * Rocks the dish's sphere on the two ends of the break line by halves until the gap is the one wanted.
 * Gives the sphere's height over the board anywhere in plan. A null radius is a plane.
 */
function rocked(
  radius: number | null,
  { breakX, breakHalfWidth, at, gap }: Resting,
): (x: number, y: number) => number {
  const leaning = (angle: number): ((x: number, y: number) => number) => {
    if (radius === null) return (x) => (x - breakX) * Math.tan(angle);
    const reach = Math.sqrt(radius ** 2 - breakHalfWidth ** 2);
    const [cx, cz] = [breakX + reach * Math.sin(angle), -reach * Math.cos(angle)];
    return (x, y) => cz + Math.sqrt(radius ** 2 - (x - cx) ** 2 - y ** 2);
  };
  return leaning(halved((angle) => -leaning(angle)(at, 0) - gap, -0.3, 0.3));
}

/** Where a rising function crosses zero, by halves. */
export function halved(f: (x: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let turn = 0; turn < 60; turn++) {
    const middle = (low + high) / 2;
    if (f(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Width of the half outline's polyline at x. */
function polylineWidth(half: readonly Pair[], x: number): number {
  const i = half.findIndex((corner) => corner[0] >= x);
  const [a, b] = [half[Math.max(0, i - 1)], half[i]];
  if (a === undefined || b === undefined) throw new Error("beyond the outline");
  return b[0] === a[0] ? b[1] : a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]);
}

/** Height of the dished rim's outer edge at x, the mean of both sides. */
export function edgeHeight(shop: Workshop, solid: Solid, x: number): number {
  const { left, right } = edgesOf(shop.sectionAt(solid, x));
  return (left[1] + right[1]) / 2;
}

/** How far tailward of the break the board reaches wood along the outer edge. */
export function overrunReach(shop: Workshop, { dished, half, breakX }: CutRim): number {
  const onTheEdge = shop
    .levelAt(dished, 0)
    .flat()
    .filter(([x, y]) => Math.abs(Math.abs(y) - polylineWidth(half, x)) < 1e-6);
  return breakX - Math.min(...onTheEdge.map(([x]) => x));
}

/** The highest of f from one place to another: a scan, then finer scans about the best place. */
export function highestAlong(f: (x: number) => number, from: number, to: number): number {
  const steps = 24;
  let [low, high] = [from, to];
  let best = { x: from, value: Number.NEGATIVE_INFINITY };
  while (high - low > 0.25) {
    const step = (high - low) / steps;
    for (let i = 0; i <= steps; i++) {
      const x = low + i * step;
      const value = f(x);
      if (value > best.value) best = { x, value };
    }
    [low, high] = [Math.max(from, best.x - step), Math.min(to, best.x + step)];
  }
  return best.value;
}

/** What a builder would measure on the finished rim. Lengths square to the board or along it, as at the bench. */
export interface BenchMeasures {
  readonly pitch: number;
  readonly tailDrop: number;
  readonly flatGap: number;
  /** What came off the level rim at the neck end. */
  readonly neckRemoval: number;
}

/**
 * The two cuts in the order of work and in the frame of the level rim, whose sides stand square to the level edge:
 * dish it level, lay it on the board, tilt it until the shim fits under what is left, cut it flat, and measure.
 */
export function benchRun(
  shop: Workshop,
  instrument: Instrument,
  shim: number,
  fineness: Fineness,
): BenchMeasures {
  const { body, dome } = instrument;
  const breakX = body.length - dome.flatLength;
  const half = outlinePoints(body, fineness.chords);
  const level = shop.levelBody(half);
  const breakHalfWidth = edgesOf(shop.sectionAt(level, breakX)).left[0];
  const resting = { breakX, breakHalfWidth, at: 0, gap: dome.tailExtra };
  const halfWidth = Math.max(...half.map(([, y]) => y)) + 5;
  const cut = shop.dishCut(rocked(dome.dishRadius, resting), {
    breakX,
    halfWidth,
    facet: fineness.facet,
  });
  const dished = shop.subtract(level, cut);
  const gapAt = (x: number, z: number, tilt: number): number =>
    (breakX - x) * Math.sin(tilt) - z * Math.cos(tilt);
  const contact = restsAt(instrument);
  const underShim = topOf(dished, Math.max(contact, justIn), 0);
  const tilt = halved((angle) => gapAt(contact, underShim, angle) - shim, -0.3, 0.3);
  const boarded = shop.boardCut(dished, breakX, -tilt);
  const toSaddle =
    instrument.neck.scale * 2 ** (-instrument.neck.joinFret / 12) + instrument.bridge.compensation;
  const alongBoard = toSaddle - dome.flatLength;
  const overSaddle: Vec3 = [breakX - alongBoard * Math.cos(tilt), 0, alongBoard * Math.sin(tilt)];
  const plumb: Vec3 = [-Math.sin(tilt), 0, -Math.cos(tilt)];
  const lifted = along(overSaddle, plumb, -10);
  const top = meetingOf(dished, lifted, along(overSaddle, plumb, 40));
  return {
    pitch: (tilt * 180) / Math.PI,
    tailDrop: gapAt(0, topOf(boarded, justIn, 0), tilt),
    flatGap: gapAt(top[0], top[2], tilt),
    neckRemoval: -topOf(boarded, body.length - justIn, 0),
  };
}

/** Far enough inside the outline to meet the solid. */
const justIn = 1e-6;

const along = (from: Vec3, by: Vec3, distance: number): Vec3 => [
  from[0] + by[0] * distance,
  from[1] + by[1] * distance,
  from[2] + by[2] * distance,
];

/** Farthest of every second vertex of the finer polyline from the coarser one's chords. */
function outlineSag(coarse: readonly Pair[], fine: readonly Pair[]): number {
  let worst = 0;
  for (let i = 0; i + 1 < coarse.length; i++) {
    const [a, b, between] = [coarse[i], coarse[i + 1], fine[2 * i + 1]];
    if (a === undefined || b === undefined || between === undefined) continue;
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const off = Math.abs(dx * (between[1] - a[1]) - dy * (between[0] - a[0])) / Math.hypot(dx, dy);
    worst = Math.max(worst, off);
  }
  return worst;
}
