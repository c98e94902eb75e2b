import { degrees } from "../../geometry/angle.ts";
import { type Dome, domeZ } from "../../geometry/dome.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import type { Outcomes } from "../outcome.ts";
import { domeFits, domeOnShim } from "../reach.ts";
import { type Setting, settingOf } from "../setting.ts";
import { outcomeOf, solve } from "../solve.ts";
import { braceLift } from "../top.ts";

/** The single numbers from the shim to the saddle: what is swept and drawn many thousand times. */
export type ChainKey =
  | "shim"
  | "tailDrop"
  | "pitch"
  | "heelAngle"
  | "flatGap"
  | "projection"
  | "bridgeClearance"
  | "stringHeight"
  | "saddleExposure"
  | "breakAngle";

/** The same numbers as a profile's, mm and degrees, without the search round the rim's edge. */
export type Chain = Pick<Outcomes, ChainKey>;

/** What a dome gives from the shim to the saddle. */
export function chainOf(setting: Setting, dome: Dome, shim: number): Chain {
  const { instrument, fretPlaneAtSaddle, middleString, saddleX, saddleHalfWidth } = setting;
  const { thickness } = instrument.bridge;
  const top = domeZ(dome, saddleX, 0) + braceLift(setting, dome, saddleX, saddleHalfWidth);
  const projection = fretPlaneAtSaddle - top;
  const pitch = outcomeOf(setting, dome, "pitch");
  const saddleExposure = projection - thickness + middleString.atSaddle;
  return {
    shim,
    tailDrop: -domeZ(dome, 0, 0),
    pitch,
    heelAngle: 90 - pitch - instrument.neck.neckTilt,
    flatGap: -top,
    projection,
    bridgeClearance: projection - thickness,
    stringHeight: projection + middleString.atSaddle,
    saddleExposure,
    breakAngle: breakAngleOf(setting, saddleExposure),
  };
}

/** How far the middle string turns down over a saddle that stands `exposure` mm over the bridge, degrees. */
function breakAngleOf(setting: Setting, exposure: number): number {
  const { pinDistance, pinRamp } = setting.instrument.bridge;
  return degrees(Math.atan((exposure + pinRamp) / pinDistance) + Math.atan(stringFall(setting)));
}

/** The middle string's own slope from nut to saddle, against the fret plane. */
export function stringFall({ middleString, instrument }: Setting): number {
  const length = instrument.neck.scale + instrument.bridge.compensation;
  return (middleString.atSaddle - middleString.atNut) / length;
}

/** What a shim `t` mm thick gives; null where it gives no dome. */
export function chainOnShim(setting: Setting, t: number): Chain | null {
  const dome = domeOnShim(setting, t);
  return dome !== null && domeFits(setting, dome) ? chainOf(setting, dome, t) : null;
}

/** The chain of an instrument with its own target met; null where it cannot be. */
export function chainOfInstrument(instrument: Instrument): Chain | null {
  const set = settingOf(instrument);
  if (!set.ok) return null;
  const solution = solve(set.setting);
  if (!solution.ok) return null;
  const { dome, shim } = solution.solution;
  return chainOf(set.setting, dome, shim);
}
