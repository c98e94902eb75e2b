import type { MeasurementKey } from "../../instrument/as-built/measurement-fields.ts";
import { bowZ, fretX } from "../neck.ts";
import type { MadeInstrument } from "./made-instrument.ts";

/** The relief to measure with each height of a straightedge along the frets at pitch: it rests on the bowed neck. */
export const reliefBeside: Readonly<Partial<Record<MeasurementKey, MeasurementKey>>> = {
  weekClearance: "weekRelief",
  yearClearance: "yearRelief",
};

/**
 * How high a straightedge along the frets of a neck with `relief` passes over the bridge at the saddle
 * line, mm, strung and at pitch.
 *
 * The bow b(u) lifts the frets the more the nearer they are to the nut, and ever faster: their tops
 * are convex, so the straightedge rests on the first and the last of them and clears those between.
 * Carried on from x1 over xn to the saddle line xs it stands b(xn) + (b(x1) − b(xn))·(xs − xn)/(x1 − xn)
 * over the fret plane, which is under it by the greater part of b(x1). A straight neck: on the plane.
 */
export function clearanceAlongFrets(
  { instrument, givens, heights }: MadeInstrument,
  relief: number,
): number {
  const neck = { ...instrument.neck, relief };
  const [first, last] = [fretX(instrument, 1), fretX(instrument, neck.lastFret)];
  const bow = (x: number): number => bowZ(neck, x - instrument.body.length);
  const share = (givens.saddleX - last) / (first - last);
  return heights.bridgeClearance + bow(last) + (bow(first) - bow(last)) * share;
}
