import * as rear from "../../profile/back.ts";
import { fretPlaneZ, fretX } from "../../profile/neck.ts";
import type { Profile } from "../../profile/outcome.ts";
import * as rim from "../../profile/rim.ts";
import type { Setting } from "../../profile/setting.ts";
import { blendedTopZ } from "../../profile/top.ts";

/*
 * Heights on the section, mm over the flat's plane, at x mm from the tail. What the core computes is
 * asked of the core; here are only the lines a drawing needs between those values.
 */

/** The finished rim edge at the side. */
export const edgeZ = (setting: Setting, { dome }: Profile, x: number): number =>
  rim.rimZ(setting, dome, x);

/** The level rim's top edge. */
export const datumZ = ({ breakX }: Setting, { pitch }: Profile, x: number): number =>
  rim.datumZ(breakX, pitch, x);

/** The top on the centreline as built. */
export const topZ = (setting: Setting, { dome }: Profile, x: number): number =>
  blendedTopZ(setting, dome, x);

/** The back, y mm from the centreline. */
export const backZ = (setting: Setting, { back }: Profile, x: number, y: number): number =>
  rear.backZ(setting, back, x, y);

/** Underside of the middle string between nut and saddle: straight between its heights over the fret plane at both. */
export function stringZ(setting: Setting, x: number): number {
  const { instrument, saddleX, middleString, fretPlaneAtSaddle } = setting;
  const nutX = fretX(instrument, 0);
  const atNut = fretPlaneZ(instrument, nutX) + middleString.atNut;
  const atSaddle = fretPlaneAtSaddle + middleString.atSaddle;
  return atSaddle + ((atNut - atSaddle) * (x - saddleX)) / (nutX - saddleX);
}
