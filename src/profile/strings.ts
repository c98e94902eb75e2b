import { curvatureOf, sagitta } from "../geometry/circle.ts";
import { fretToBridge } from "../geometry/fret.ts";
import type { Instrument } from "../instrument/instrument.ts";
import { bowZ, fretX, saddleLineX } from "./neck.ts";

/** One string's height over the fret plane, mm, at the nut and at the saddle. */
export interface StringHeights {
  readonly atNut: number;
  readonly atSaddle: number;
}

/** A string whole: its heights, and where it crosses nut and saddle, x from the tail and y from the centreline, + on the bass side, mm. */
export interface StringLine extends StringHeights {
  readonly nut: Place;
  readonly saddle: Place;
}

type Place = readonly [x: number, y: number];

/** Where a string lies across: y at nut and saddle, and its share of the way from the outer bass place (0) to the outer treble (1), which goes by its place at the saddle. */
interface Across {
  readonly share: number;
  readonly yNut: number;
  readonly ySaddle: number;
}

/** The string that would lie on the centreline at the mean action; the board's curve does not lower it. */
export const middleString = (instrument: Instrument): StringHeights =>
  stringAt(instrument, { share: 0.5, yNut: 0, ySaddle: 0 });

/** Every string, bass first: spread evenly, or in pairs; a lone string lies in the middle. */
export const stringsAcross = (instrument: Instrument): readonly StringLine[] =>
  placesAcross(instrument.strings).map((across) => stringAt(instrument, across));

/** The string that would lie `share` of the way from the outer bass place to the outer treble, were they evenly spread. */
export const stringBetween = (instrument: Instrument, share: number): StringLine =>
  stringAt(instrument, evenly(instrument.strings, share));

const evenly = ({ spreadNut, spreadSaddle }: Instrument["strings"], share: number): Across => ({
  share,
  yNut: (0.5 - share) * spreadNut,
  ySaddle: (0.5 - share) * spreadSaddle,
});

function placesAcross(strings: Instrument["strings"]): readonly Across[] {
  const { count, spreadNut, spreadSaddle, pairGap } = strings;
  if (count === 1) return [{ share: 0.5, yNut: 0, ySaddle: 0 }];
  if (pairGap > 0) {
    const [nut, saddle] = [
      pairsOver(count, spreadNut, pairGap),
      pairsOver(count, spreadSaddle, pairGap),
    ];
    return saddle.map((ySaddle, i) => ({
      share: 0.5 - ySaddle / spreadSaddle,
      yNut: nut[i] ?? 0,
      ySaddle,
    }));
  }
  return Array.from({ length: count }, (_, i) => evenly(strings, i / (count - 1)));
}

/** y of strings in pairs `gap` apart, outer string to outer string `spread`; one pair alone lies about the middle. */
function pairsOver(count: number, spread: number, gap: number): readonly number[] {
  const pairs = count / 2;
  return Array.from({ length: count }, (_, i) => {
    const pair = Math.floor(i / 2);
    const middle = pairs === 1 ? 0 : (spread - gap) / 2 - (pair * (spread - gap)) / (pairs - 1);
    return middle + (i % 2 === 0 ? gap : -gap) / 2;
  });
}

/**
 * A string: the straight line from the nut over fret 12 extended to the saddle. Away from the middle the
 * frets are lower by the board's curve. Over fanned frets a string's own scale is longer or shorter by its
 * share of the fan, its frets turned about the one that stands square; over a slanted saddle its compensation is.
 */
function stringAt(instrument: Instrument, { share, yNut, ySaddle }: Across): StringLine {
  const { neck, bridge, strings } = instrument;
  const curvature = curvatureOf(neck.fingerboardRadius);
  const { extra, slanted } = lengthened(instrument, share);
  const scale = neck.scale + extra;
  const length = scale + bridge.compensation + slanted;
  const toFret12 = scale / 2;
  const y12 = yNut + ((ySaddle - yNut) * toFret12) / length;
  const joinToNut = neck.scale - fretToBridge(neck.scale, neck.joinFret);
  const [nutBy, fret12By] = [fanShift(neck, extra, 0), fanShift(neck, extra, 12)];
  const action = strings.actionBass + (strings.actionTreble - strings.actionBass) * share;
  const atNut = strings.nutClearance + bowZ(neck, joinToNut + nutBy) - sagitta(curvature, yNut);
  const at12 = action + bowZ(neck, joinToNut - neck.scale / 2 + fret12By) - sagitta(curvature, y12);
  return {
    atNut,
    atSaddle: atNut + ((at12 - atNut) * length) / toFret12,
    nut: [fretPlaceX(instrument, 0, share), yNut],
    saddle: [saddlePlaceX(instrument, share), ySaddle],
  };
}

/** How much longer a string's scale, and its compensation, is than on the centreline, mm. */
function lengthened({ neck, bridge }: Instrument, share: number) {
  const side = 0.5 - share;
  return { extra: neck.fan * side, slanted: bridge.slant * side };
}

/** How far nutward a fret of a string whose scale is `extra` longer lies from where it crosses the centreline. */
const fanShift = ({ fanFret }: Instrument["neck"], extra: number, fret: number): number =>
  extra === 0 ? 0 : fretToBridge(extra, fret) - fretToBridge(extra, fanFret);

/** Where a fret (0: the nut) crosses `share` of the way from bass to treble, x from the tail. */
export const fretPlaceX = (instrument: Instrument, fret: number, share: number): number =>
  fretX(instrument, fret) + fanShift(instrument.neck, lengthened(instrument, share).extra, fret);

/** Where the saddle stands `share` of the way from bass to treble, x from the tail. */
export function saddlePlaceX(instrument: Instrument, share: number): number {
  const { extra, slanted } = lengthened(instrument, share);
  const fanned = extra === 0 ? 0 : fretToBridge(extra, instrument.neck.fanFret);
  return saddleLineX(instrument) - fanned - slanted;
}
