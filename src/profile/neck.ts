import { curvatureOf, radians, sagitta } from "../geometry/circle.ts";
import { fretToBridge } from "../geometry/fret.ts";
import type { Instrument } from "../instrument/instrument.ts";

/** One string's height over the fret plane, mm, at the nut and at the saddle. */
export interface StringHeights {
  readonly atNut: number;
  readonly atSaddle: number;
}

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

/** The string that would lie on the centreline at the mean action; the board's curve does not lower it. */
export const middleString = (instrument: Instrument): StringHeights =>
  stringAcross(instrument, 0.5);

/** Every string, bass first, spread evenly; a lone string lies in the middle. */
export function stringsAcross(instrument: Instrument): readonly StringHeights[] {
  const { count } = instrument.strings;
  if (count === 1) return [middleString(instrument)];
  return Array.from({ length: count }, (_, i) => stringAcross(instrument, i / (count - 1)));
}

/**
 * A string `share` of the way from bass (0) to treble (1): the straight line from the nut over fret
 * 12 extended to the saddle. Away from the middle the frets are lower by the board's curve.
 */
function stringAcross(instrument: Instrument, share: number): StringHeights {
  const { neck, bridge, strings } = instrument;
  const curvature = curvatureOf(neck.fingerboardRadius);
  const length = neck.scale + bridge.compensation;
  const toFret12 = neck.scale / 2;
  const yNut = (share - 0.5) * strings.spreadNut;
  const ySaddle = (share - 0.5) * strings.spreadSaddle;
  const y12 = yNut + ((ySaddle - yNut) * toFret12) / length;
  const joinToNut = neck.scale - fretToBridge(neck.scale, neck.joinFret);
  const action = strings.actionBass + (strings.actionTreble - strings.actionBass) * share;
  const atNut = strings.nutClearance + bowZ(neck, joinToNut) - sagitta(curvature, yNut);
  const at12 = action + bowZ(neck, joinToNut - toFret12) - sagitta(curvature, y12);
  return { atNut, atSaddle: atNut + ((at12 - atNut) * length) / toFret12 };
}
