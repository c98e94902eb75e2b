import { radians } from "../geometry/circle.ts";
import { fretToBridge } from "../geometry/fret.ts";
import type { Instrument } from "../instrument/instrument.ts";

/** Fret `fret` on the centreline, from the tail: the join fret stands at the neck end of the body. */
export function fretX({ body, neck }: Instrument, fret: number): number {
  return body.length - fretToBridge(neck.scale, neck.joinFret) + fretToBridge(neck.scale, fret);
}

/** The scale's end extended by the compensation. */
export function saddleLineX({ body, neck, bridge }: Instrument): number {
  return body.length - (fretToBridge(neck.scale, neck.joinFret) + bridge.compensation);
}

/** End of the fingerboard on the body. */
export function fingerboardEndX(instrument: Instrument): number {
  return fretX(instrument, instrument.neck.lastFret) - instrument.neck.fingerboardOverhang;
}

/** Fret plane over the flat's plane at x, mm; a tilted neck turns it about the neck end. */
export function fretPlaneZ({ body, neck }: Instrument, x: number): number {
  return (
    neck.fingerboardThickness +
    neck.fretHeight +
    (body.length - x) * Math.tan(radians(neck.neckTilt))
  );
}

/**
 * How far the neck's bow lifts a place u mm nutward of the join fret over the fret plane: a parabola
 * tangent to it at the join fret, whose gap under the straight line from fret 1 to the join fret is
 * `relief` at the middle. A chord of length l over k·u² stands k·l²/4 clear there, so k = 4·relief/l².
 */
export function bowZ({ scale, joinFret, relief }: Instrument["neck"], u: number): number {
  if (u <= 0) return 0;
  const chord = fretToBridge(scale, 1) - fretToBridge(scale, joinFret);
  return 4 * relief * (u / chord) ** 2;
}
