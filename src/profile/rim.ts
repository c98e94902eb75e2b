import { radians } from "../geometry/angle.ts";
import { type Dome, domeLeaning, domeZ } from "../geometry/dome.ts";
import { along, type Edge } from "../geometry/edge.ts";
import { at, highest, type Peak, peakNear } from "../geometry/peak.ts";
import { rootBetween } from "../geometry/root.ts";
import { type Reach, shimUnder } from "./reach.ts";
import type { Setting } from "./setting.ts";

/** The finished top edge of the rim at x, over the flat's plane: the dome up to the break, the flat from there. */
export function rimZ(setting: Setting, dome: Dome, x: number): number {
  return x < setting.breakX ? domeZ(dome, x, setting.outline.halfWidth(x)) : 0;
}

/** The datum, the level rim's top edge, over the flat's plane at x: it turns about the break by the pitch (degrees). */
export const datumZ = (breakX: number, pitch: number, x: number): number =>
  (x - breakX) * Math.tan(radians(pitch));

/** What comes off the level rim at x, square to the datum, mm; negative where the level rim was too low. */
export function removalAt(setting: Setting, dome: Dome, pitch: number, x: number): number {
  const drop = datumZ(setting.breakX, pitch, x) - rimZ(setting, dome, x);
  return drop * Math.cos(radians(pitch));
}

export interface Removal {
  readonly most: Peak;
  readonly least: Peak;
}

/**
 * The most and the least that comes off anywhere on the rim. On the flat removal runs straight from
 * nothing at the break to its value at the neck end, so that end and `edge`, the part from the tail
 * to the break, are all there is to search.
 */
export function removalOver(setting: Setting, dome: Dome, pitch: number, edge: Edge): Removal {
  const f = (x: number): number => removalAt(setting, dome, pitch, x);
  const [sin, cos] = [Math.sin(radians(pitch)), Math.cos(radians(pitch))];
  const values = along(
    edge,
    (x, y) => (x - setting.breakX) * sin - (x < setting.breakX ? domeZ(dome, x, y) * cos : 0),
  );
  const most = highest(f, edge.xs, values);
  const least = highest(
    (x) => -f(x),
    edge.xs,
    values.map((value) => -value),
  );
  const neckEnd = { x: setting.outline.length, value: f(setting.outline.length) };
  return {
    most: neckEnd.value > most.value ? neckEnd : most,
    least: neckEnd.value < -least.value ? neckEnd : { x: least.x, value: -least.value },
  };
}

/**
 * The rim's edge at a distance d tailward of the break stands over the flat when
 * d(2·lean − κd) + κ(yb² − y²) > 0, that is when 2·lean exceeds κd − κ(yb² − y²)/d: a bound that no
 * longer holds the dome's tilt. This is that bound at x, and toward the break its limit, −2κ·yb·slope.
 */
function overrunBound(
  { outline, breakX, breakHalfWidth, dishCurvature }: Setting,
  x: number,
): number {
  const d = breakX - x;
  if (d <= 0) return -2 * dishCurvature * breakHalfWidth * outline.slope(breakX);
  const y = outline.halfWidth(x);
  return dishCurvature * (d - ((breakHalfWidth - y) * (breakHalfWidth + y)) / d);
}

export interface Overrun {
  /** From the break to where the board leaves the rim. */
  readonly length: number;
  readonly depth: number;
}

/** A board exactly on the clean shim may seem to cut by this much, mm. */
const rounding = 1e-10;

/** How far tailward of the break, and how deep, a flat board cuts into the domed rim; zeros when it does not. */
export function overrunOf(setting: Setting, dome: Dome, edge: Edge): Overrun {
  const excess = (x: number): number => 2 * dome.lean - overrunBound(setting, x);
  const excesses = edge.xs.map(excess);
  const start = overrunStart(excess, edge, excesses);
  if (start === null) return { length: 0, depth: 0 };
  const f = (x: number): number => rimZ(setting, dome, x);
  const depth = highest(f, edge.xs, edge.xs.map(f)).value;
  return depth > rounding ? { length: setting.breakX - start, depth } : { length: 0, depth: 0 };
}

/** Tailmost place where the excess turns positive, also when it does so only between two samples. */
function overrunStart(
  excess: (x: number) => number,
  edge: Edge,
  excesses: readonly number[],
): number | null {
  const { xs } = edge;
  for (let i = 1; i < xs.length; i++) {
    const turns =
      at(excesses, i) >= at(excesses, i - 1) && !(at(excesses, i) < at(excesses, i + 1));
    const x =
      at(excesses, i) > 0 ? at(xs, i) : turns ? positivePeak(excess, xs, excesses, i) : null;
    if (x !== null) return rootBetween(excess, at(xs, i - 1), x);
  }
  return null;
}

function positivePeak(
  excess: (x: number) => number,
  xs: readonly number[],
  excesses: readonly number[],
  i: number,
): number | null {
  const peak = peakNear(excess, xs, excesses, i);
  return peak.value > 0 ? peak.x : null;
}

/** The thinnest shim in reach whose flat does not overrun; null when none is. The bound above is free of the shim, so its least value gives the dome at once. */
export function cleanShimOf(setting: Setting, reach: Reach, edge: Edge): number | null {
  const f = (x: number): number => -overrunBound(setting, x);
  const leastBound = -highest(f, edge.xs, edge.xs.map(f)).value;
  if (2 * reach.thinnestDome.lean <= leastBound) return reach.thinnest;
  if (2 * reach.thickestDome.lean > leastBound) return null;
  const { dishCurvature, breakX, breakHalfWidth } = setting;
  const dome = domeLeaning(dishCurvature, breakX, breakHalfWidth, leastBound / 2);
  return dome === null ? null : shimUnder(setting, dome);
}
