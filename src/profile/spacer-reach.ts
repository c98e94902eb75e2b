import { type Dome, domeTilt, domeTurn, domeZ } from "../geometry/dome.ts";
import { rootBetween } from "../geometry/root.ts";
import type { Range } from "../instrument/instrument.ts";
import type { Givens, SeatPlace } from "./givens.ts";
import type { Reach } from "./outcome.ts";
import { cutOf, domeTilted, domeUnder, evenTilt } from "./seat.ts";
import { topZ } from "./top.ts";

/** The spacer under a dome: the gap between the seat's plane and the top at the saddle line. */
export const spacerUnder = (givens: Givens, dome: Dome): number =>
  -topZ(givens, dome, givens.saddleX);

/**
 * From no spacer to the one with which the tail end lies as far under the seat's plane as the finished rim
 * is deep there. `tilts` are the domes' that cover the whole outline; null when none of them is left.
 */
export function spacerReach(givens: Givens, seat: SeatPlace, tilts: Range): Reach | null {
  const sinking = sinkingTilts(givens, seat, tilts);
  if (sinking === null) return null;
  const [low, high] = sinking;
  const [lowest, highest] = [domeTilted(givens, seat, low), domeTilted(givens, seat, high)];
  if (lowest === null || highest === null) return null;
  const deepest = givens.instrument.body.depthTail;
  if (-domeZ(highest, 0, 0) > deepest || spacerUnder(givens, lowest) < 0) return null;
  const thickestDome =
    -domeZ(lowest, 0, 0) <= deepest ? lowest : domeUnder(givens, seat, [0, -deepest], [low, high]);
  const thin = spacerUnder(givens, highest);
  const thinnestDome =
    thin >= 0 ? highest : domeUnder(givens, seat, [givens.saddleX, 0], [low, high]);
  if (thickestDome === null || thinnestDome === null) return null;
  const [thinnest, thickest] = [Math.max(0, thin), spacerUnder(givens, thickestDome)];
  return thinnest <= thickest ? { thinnest, thickest, thinnestDome, thickestDome } : null;
}

/** The part of the reach that leaves some plate on the seat; null where none does. */
export function reachLeavingPlate(givens: Givens, seat: SeatPlace, reach: Reach): Reach | null {
  const { length } = givens.outline;
  const [low, high] = [domeTilt(reach.thickestDome, length), domeTilt(reach.thinnestDome, length)];
  const past = (tilt: number): number => {
    const dome = domeTilted(givens, seat, tilt);
    const { topThickness } = givens.instrument.seat;
    return dome === null ? Number.NaN : cutOf(givens, seat, dome).mostCut - topThickness;
  };
  const even = evenTilt(givens, seat, [low, high]);
  if (!(past(even) < 0)) return null;
  const domeWithin = (own: Dome, end: number): Dome | null =>
    past(end) <= 0 ? own : domeTilted(givens, seat, rootBetween(past, end, even));
  const thickestDome = domeWithin(reach.thickestDome, low);
  const thinnestDome = domeWithin(reach.thinnestDome, high);
  if (thickestDome === null || thinnestDome === null) return null;
  return {
    thinnest:
      thinnestDome === reach.thinnestDome ? reach.thinnest : spacerUnder(givens, thinnestDome),
    thickest:
      thickestDome === reach.thickestDome ? reach.thickest : spacerUnder(givens, thickestDome),
    thinnestDome,
    thickestDome,
  };
}

/** Whether a dome that is turned to lie lower at the tail also lies lower at saddle and tail, as every one of a sane size does. */
export const sinksOnSeat = (givens: Givens, dome: Dome): boolean => turnAt(givens, dome) >= 0;

const turnAt = ({ saddleX }: Givens, dome: Dome): number =>
  Math.min(domeTurn(dome, saddleX), domeTurn(dome, 0));

function sinkingTilts(givens: Givens, seat: SeatPlace, [low, high]: Range): Range | null {
  const turn = (tilt: number): number => {
    const dome = domeTilted(givens, seat, tilt);
    return dome === null ? Number.NaN : turnAt(givens, dome);
  };
  const [atLow, atHigh] = [turn(low), turn(high)];
  if (atLow < 0 && atHigh > 0) return [rootBetween(turn, low, high), high];
  if (atLow > 0 && atHigh < 0) return [low, rootBetween(turn, low, high)];
  return low <= high && atLow >= 0 && atHigh >= 0 ? [low, high] : null;
}
