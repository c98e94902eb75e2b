import { degrees, radians } from "../geometry/circle.ts";
import type { Givens } from "./givens.ts";
import { fretPlaneZ } from "./neck.ts";
import type { Outcomes } from "./outcome.ts";
import { type StringLine, stringsAcross } from "./strings.ts";

/** What stands over the top at the saddle line on the centreline, the strings being one at the mean action. */
export type CentreHeights = Pick<
  Outcomes,
  "flatGap" | "projection" | "bridgeClearance" | "stringHeight" | "saddleExposure" | "breakAngle"
>;

export type SaddleHeights = CentreHeights & Pick<Outcomes, "stringExposure">;

/** The top about the saddle line, on the centreline: how steeply it falls toward the tail there, and how much higher it stands at x, mm. */
export interface TopAtSaddle {
  readonly slope: number;
  readonly riseTo: (x: number) => number;
}

/**
 * Every height at the saddle line that follows from the gap there, `flatGap` mm, between the flat
 * extended and the top, planned or measured, and from how the top runs about it. Needs no dome, so it holds
 * for any top. What is measured with no strings on stands before the top settles under them, what is made
 * with strings on after.
 */
export function saddleHeights(givens: Givens, flatGap: number, top: TopAtSaddle): SaddleHeights {
  const heights = centreHeights(givens, flatGap, top.slope);
  const stringExposure = exposuresAcross(givens, heights.bridgeClearance, top.riseTo);
  return { ...heights, stringExposure };
}

/** The same on the centreline alone. */
export function centreHeights(givens: Givens, flatGap: number, slope: number): CentreHeights {
  const { instrument, fretPlaneAtSaddle, middleString } = givens;
  const projection = fretPlaneAtSaddle + flatGap;
  const bridgeClearance = projection - instrument.bridge.thickness;
  const { settling } = instrument.strings;
  const saddleExposure = bridgeClearance + middleString.atSaddle - settling;
  return {
    flatGap,
    projection,
    bridgeClearance,
    stringHeight: projection + middleString.atSaddle - settling,
    saddleExposure,
    breakAngle: breakAngleOf(givens, saddleExposure, slope),
  };
}

/** How far each string stands over the bridge at its own place on the saddle, bass first: see `exposureOf`. */
export const exposuresAcross = (
  givens: Givens,
  clearance: number,
  riseTo: TopAtSaddle["riseTo"],
): readonly number[] => stringsAcross(givens.instrument).map(exposureOf(givens, clearance, riseTo));

/**
 * How far a string stands over the bridge at its own place on the saddle, where the fret plane passes over the
 * bridge by `clearance` on the saddle line and the top stands `riseTo(x)` higher at x than there. The bridge
 * is straight across and follows the top along.
 */
export function exposureOf(
  { instrument, saddleX }: Givens,
  clearance: number,
  riseTo: TopAtSaddle["riseTo"],
): (string: StringLine) => number {
  const { settling } = instrument.strings;
  const plane = (x: number): number => fretPlaneZ(instrument, x);
  return ({ atSaddle, saddle: [x] }) => {
    const square = clearance + atSaddle - settling;
    return x === saddleX ? square : square + (plane(x) - plane(saddleX)) - riseTo(x);
  };
}

/**
 * How far the middle string turns down over a saddle that stands `exposure` mm over the bridge, degrees.
 * Before the saddle it rises to it; behind, it falls to the pins against the bridge's top, which lies
 * along the domed top and falls toward the tail with it.
 */
function breakAngleOf(givens: Givens, exposure: number, slope: number): number {
  const { pinDistance, pinRamp } = givens.instrument.bridge;
  const behind = Math.atan((exposure + pinRamp) / pinDistance) + Math.atan(slope);
  return degrees(stringRise(givens) + behind);
}

/** How steeply the middle string rises from nut to saddle against the flat's plane, radians: against the fret plane, and with a tilted neck. */
export function stringRise({
  middleString,
  instrument: { neck, bridge },
}: Pick<Givens, "middleString" | "instrument">): number {
  const rise = middleString.atSaddle - middleString.atNut;
  return Math.atan(rise / (neck.scale + bridge.compensation)) + radians(neck.neckTilt);
}
