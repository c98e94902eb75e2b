import { BoutOutline } from "../../src/geometry/outline/outline.ts";
import type { Instrument } from "../../src/instrument/instrument.ts";

/*
 * The same geometry as a textbook would set it down: a sphere by its centre and radius, square roots
 * and all, in the order a builder would ask. It loses digits to large radii where the core does not,
 * so it is good to 1e-9 mm for radii up to some 20 m. The outline's own test is in tests/geometry.
 */

export const toDegrees = (radians: number): number => (radians * 180) / Math.PI;
const toRadians = (degrees: number): number => (degrees * Math.PI) / 180;

/** Height of an arc over its chord. */
const rise = (radius: number | null, half: number): number =>
  radius === null ? 0 : radius - Math.sqrt(radius ** 2 - half ** 2);

export interface Centre {
  readonly cx: number;
  readonly cz: number;
}

/** Of the two places R from (x, z) and √(R² − yb²) from (xb, 0), the lower. */
export function centreThrough(R: number, xb: number, yb: number, x: number, z: number): Centre {
  const chord = Math.hypot(x - xb, z);
  const [ux, uz] = [(x - xb) / chord, z / chord];
  const along = (chord ** 2 - yb ** 2) / (2 * chord);
  const across = Math.sqrt(R ** 2 - yb ** 2 - along ** 2);
  const one = { cx: xb + along * ux - across * uz, cz: along * uz + across * ux };
  const other = { cx: xb + along * ux + across * uz, cz: along * uz - across * ux };
  return one.cz < other.cz ? one : other;
}

/** All that follows from an instrument and the shim under its tail, up to the top and the rim. */
export class Book {
  readonly instrument: Instrument;
  readonly outline: BoutOutline;
  readonly breakX: number;
  readonly breakHalfWidth: number;
  readonly saddleX: number;
  readonly shim: number;
  readonly centre: Centre | null;
  /** The shim's edge, or the tail block's where the shim reaches past it. */
  readonly contact: number;

  constructor(instrument: Instrument, shim: number) {
    const { body, dome, neck, bridge } = instrument;
    this.instrument = instrument;
    this.shim = shim;
    this.outline = new BoutOutline(body);
    this.breakX = body.length - dome.flatLength;
    this.breakHalfWidth = this.outline.halfWidth(this.breakX);
    this.saddleX = body.length - (neck.scale * 2 ** (-neck.joinFret / 12) + bridge.compensation);
    this.contact = Math.min(instrument.shim.contact, instrument.shim.tailBlockDepth);
    this.centre =
      dome.dishRadius === null
        ? null
        : centreThrough(dome.dishRadius, this.breakX, this.breakHalfWidth, this.contact, -shim);
  }

  sphereZ(x: number, y: number): number {
    const { dishRadius } = this.instrument.dome;
    if (this.centre === null || dishRadius === null) {
      return (this.shim * (x - this.breakX)) / (this.breakX - this.contact);
    }
    const { cx, cz } = this.centre;
    return cz + Math.sqrt(dishRadius ** 2 - (x - cx) ** 2 - y ** 2);
  }

  /** The top on the centreline: the dome, and the brace's arch less the dish's over the same width. */
  topZ(x: number): number {
    if (x >= this.breakX) return 0;
    const { dishRadius, braceRadius } = this.instrument.dome;
    const w = this.outline.halfWidth(x);
    const cx = this.centre?.cx ?? x;
    const section = (radius: number | null): number | null =>
      radius === null ? null : Math.sqrt(radius ** 2 - (x - cx) ** 2);
    return this.sphereZ(x, 0) + (rise(section(braceRadius), w) - rise(section(dishRadius), w));
  }

  get tailDrop(): number {
    return -this.sphereZ(0, 0);
  }

  get chordPitch(): number {
    return toDegrees(Math.atan(this.tailDrop / this.breakX));
  }

  get pitch(): number {
    return toDegrees(Math.atan((this.tailDrop - this.instrument.dome.tailExtra) / this.breakX));
  }

  rimZ(x: number): number {
    return x < this.breakX ? this.sphereZ(x, this.outline.halfWidth(x)) : 0;
  }

  /** What comes off the level rim at x, square to it. */
  removal(x: number): number {
    const pitch = toRadians(this.pitch);
    return ((x - this.breakX) * Math.tan(pitch) - this.rimZ(x)) * Math.cos(pitch);
  }
}

/** String i of n, bass first, by the rules a setup follows, over the fret plane. */
export function stringByTheBook({ neck, bridge, strings }: Instrument, share: number) {
  const fret = (n: number): number => neck.scale * (1 - 2 ** (-n / 12));
  const across = (share - 0.5) * 2;
  const yNut = (across * strings.spreadNut) / 2;
  const ySaddle = (across * strings.spreadSaddle) / 2;
  const length = neck.scale + bridge.compensation;
  const y12 = yNut + (ySaddle - yNut) * (fret(12) / length);
  const chord = fret(neck.joinFret) - fret(1);
  const bow = (at: number): number => {
    const u = fret(neck.joinFret) - at;
    return u > 0 ? ((4 * neck.relief) / chord ** 2) * u ** 2 : 0;
  };
  const action = strings.actionBass * (1 - share) + strings.actionTreble * share;
  const nut = strings.nutClearance + bow(0) - rise(neck.fingerboardRadius, yNut);
  const at12 = action + bow(fret(12)) - rise(neck.fingerboardRadius, y12);
  return { nut, at12, saddle: nut + ((at12 - nut) * length) / (neck.scale / 2) };
}

/** Fret plane over the flat's plane at the saddle line. */
export function fretPlaneByTheBook({ body, neck }: Instrument, x: number): number {
  return (
    neck.fingerboardThickness +
    neck.fretHeight +
    (body.length - x) * Math.tan(toRadians(neck.neckTilt))
  );
}
