import { degrees, radians } from "../geometry/circle.ts";
import type { Givens } from "./givens.ts";
import { stringsAcross } from "./neck.ts";
import type { Outcomes } from "./outcome.ts";

/** What stands over the top at the saddle line on the centreline, the strings being one at the mean action. */
export type CentreHeights = Pick<
  Outcomes,
  "flatGap" | "projection" | "bridgeClearance" | "stringHeight" | "saddleExposure" | "breakAngle"
>;

export type SaddleHeights = CentreHeights & Pick<Outcomes, "stringExposure">;

/**
 * Every height at the saddle line that follows from the gap there, `flatGap` mm, between the flat
 * extended and the top, planned or measured, and from how steeply the top falls toward the tail
 * there, `slope`. Needs no dome, so it holds for any top.
 */
export function saddleHeights(givens: Givens, flatGap: number, slope: number): SaddleHeights {
  const heights = centreHeights(givens, flatGap, slope);
  return { ...heights, stringExposure: exposuresAcross(givens, heights.bridgeClearance) };
}

/** The same on the centreline alone. */
export function centreHeights(givens: Givens, flatGap: number, slope: number): CentreHeights {
  const { instrument, fretPlaneAtSaddle, middleString } = givens;
  const projection = fretPlaneAtSaddle + flatGap;
  const bridgeClearance = projection - instrument.bridge.thickness;
  const saddleExposure = bridgeClearance + middleString.atSaddle;
  return {
    flatGap,
    projection,
    bridgeClearance,
    stringHeight: projection + middleString.atSaddle,
    saddleExposure,
    breakAngle: breakAngleOf(givens, saddleExposure, slope),
  };
}

/** How far each string stands over the bridge, bass first, where the fret plane passes over it by `clearance`. */
export const exposuresAcross = ({ instrument }: Givens, clearance: number): readonly number[] =>
  stringsAcross(instrument).map(({ atSaddle }) => clearance + atSaddle);

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
