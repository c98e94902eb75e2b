import { degrees } from "../geometry/angle.ts";
import { stringsAcross } from "./neck.ts";
import type { Outcomes } from "./outcome.ts";
import type { Setting } from "./setting.ts";

export type SaddleHeights = Pick<
  Outcomes,
  | "flatGap"
  | "projection"
  | "bridgeClearance"
  | "stringHeight"
  | "saddleExposure"
  | "stringExposure"
  | "breakAngle"
>;

/**
 * Every height at the saddle line that follows from the gap there, `flatGap` mm, between the flat
 * carried on and the top: planned, or measured. Needs no dome, so it holds for any top.
 */
export function saddleHeights(setting: Setting, flatGap: number): SaddleHeights {
  const { instrument, fretPlaneAtSaddle, middleString } = setting;
  const { thickness, compensation, pinDistance, pinRamp } = instrument.bridge;
  const fall =
    (middleString.atSaddle - middleString.atNut) / (instrument.neck.scale + compensation);
  const projection = fretPlaneAtSaddle + flatGap;
  const bridgeClearance = projection - thickness;
  const saddleExposure = bridgeClearance + middleString.atSaddle;
  return {
    flatGap,
    projection,
    bridgeClearance,
    stringHeight: projection + middleString.atSaddle,
    saddleExposure,
    stringExposure: stringsAcross(instrument).map(({ atSaddle }) => bridgeClearance + atSaddle),
    breakAngle: degrees(Math.atan((saddleExposure + pinRamp) / pinDistance) + Math.atan(fall)),
  };
}
