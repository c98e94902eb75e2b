import { radians } from "../../geometry/circle.ts";
import type { PulledString } from "../../instrument/as-built/as-built.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import { fretPlaneZ, fretX } from "../neck.ts";
import { type SaddleHeights, stringRise } from "../saddle.ts";

/*
 * The strings' pull, for information. Geometry and statics of a straight string only: nothing here
 * says whether a top, a bridge or a neck bears it.
 */

/** Pounds to the cubic inch: steel as the string makers' sheets count it. */
const steelDensity = 0.282;
/** in/s², as the same sheets have it. */
const gravity = 386.4;
const mmPerInch = 25.4;
/** 0.45359237 kg × 9.80665 m/s², exact by definition of the pound and the standard gravity. */
export const newtonsPerPound = 4.4482216152605;

const semitones: Readonly<Record<string, number>> = {
  C: -9,
  D: -7,
  E: -5,
  F: -4,
  G: -2,
  A: 0,
  B: 2,
};

/** Frequency in Hz of a note such as `E2`, `Bb3` or `F#2`, equal temperament on A4 = 440 Hz (ISO 16:1975); null when it cannot be read. */
export function frequencyOf(note: string): number | null {
  const read = /^([A-G])([#♯b♭]?)(\d)$/.exec(note.trim().replace(/^[a-g]/, (c) => c.toUpperCase()));
  const [, letter = "", sign = "", octave = ""] = read ?? [];
  const base = semitones[letter];
  if (base === undefined) return null;
  const sharp = sign === "" ? 0 : "#♯".includes(sign) ? 1 : -1;
  return 440 * 2 ** ((base + sharp) / 12 + Number(octave) - 4);
}

/** lb/in of a plain steel string of a diameter in mm. */
export function steelWeight(diameter: number): number {
  return (Math.PI / 4) * (diameter / mmPerInch) ** 2 * steelDensity;
}

/** Pull in pounds: UW·(2LF)²/386.4, with L in inches. `length` in mm. */
export function poundsOf(unitWeight: number, length: number, frequency: number): number {
  return (unitWeight * (2 * (length / mmPerInch) * frequency) ** 2) / gravity;
}

/** Pull in newtons: μ·(2LF)², μ in kg/m. `length` in mm. */
export function newtonsOf(massPerLength: number, length: number, frequency: number): number {
  return massPerLength * (2 * (length / 1000) * frequency) ** 2;
}

/** A string's pull, N, `length` mm of it sounding; null when its note or its weight is not known. */
export function pullOf(
  { note, unitWeight, diameter }: PulledString,
  length: number,
): number | null {
  const frequency = frequencyOf(note);
  const weight = unitWeight ?? (diameter === null ? null : steelWeight(diameter));
  if (frequency === null || weight === null) return null;
  return poundsOf(weight, length, frequency) * newtonsPerPound;
}

/** Forces in N, moments in N·m. */
export interface Pull {
  readonly strings: readonly (number | null)[];
  readonly total: number;
  /** How many strings the total lacks. */
  readonly unknown: number;
  /** On the bridge, along the flat's plane toward the neck; and on the saddle, square to it. */
  readonly bridgeForward: number;
  readonly saddleDown: number;
  /** About the top under the saddle line. */
  readonly bridgeMoment: number;
  /** On the neck, about the flat at the neck end of the body. */
  readonly neckMoment: number;
}

/** What the strings' pull does to bridge and neck, as the middle string lies. */
export function pullsOf(
  instrument: Instrument,
  heights: SaddleHeights,
  middle: { readonly atNut: number; readonly atSaddle: number },
  strings: readonly PulledString[],
): Pull {
  const { neck, bridge, body } = instrument;
  const length = neck.scale + bridge.compensation;
  const each = strings.map((string) => pullOf(string, length));
  const total = each.reduce<number>((sum, pull) => sum + (pull ?? 0), 0);
  const ahead = stringRise({ instrument, middleString: middle });
  const behind = radians(heights.breakAngle) - ahead;
  const toNut = (fretX(instrument, 0) - body.length) / length;
  const overFrets = middle.atNut + (middle.atSaddle - middle.atNut) * toNut;
  const overFlat = fretPlaneZ(instrument, body.length) + overFrets;
  return {
    strings: each,
    total,
    unknown: each.filter((pull) => pull === null).length,
    bridgeForward: total * Math.cos(ahead),
    saddleDown: total * (Math.sin(behind) + Math.sin(ahead)),
    bridgeMoment: (total * Math.cos(ahead) * heights.stringHeight) / 1000,
    neckMoment: (total * Math.cos(ahead) * overFlat) / 1000,
  };
}

/** Notes of six strings as they are most often tuned, and none known for other numbers. */
export const usualNotes = (strings: number): readonly string[] =>
  strings === 6 ? ["E2", "A2", "D3", "G3", "B3", "E4"] : Array<string>(strings).fill("");
