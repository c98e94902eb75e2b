import { curvatureOf } from "../geometry/circle.ts";
import { BoutOutline, type Outline } from "../geometry/outline/outline.ts";
import { TracedOutline } from "../geometry/outline/traced-outline.ts";
import type { Body, Instrument, Tracing } from "../instrument/instrument.ts";
import { mm, phrase } from "../instrument/phrase.ts";
import { fretPlaneZ, middleString, type StringHeights, saddleLineX } from "./neck.ts";
import type { Objection } from "./outcome.ts";

/** What an instrument fixes before any shim is chosen. Millimetres; x from the tail end, heights over the flat's plane. */
export interface Givens {
  readonly instrument: Instrument;
  readonly outline: Outline;
  readonly breakX: number;
  readonly breakHalfWidth: number;
  readonly saddleX: number;
  /** Where the rim rests on the shim: see `contactOf`. */
  readonly contact: number;
  readonly saddleHalfWidth: number;
  /** 1/radius of the dish and of the top's braces; 0 is straight. */
  readonly dishCurvature: number;
  readonly braceCurvature: number;
  readonly fretPlaneAtSaddle: number;
  readonly middleString: StringHeights;
}

export type GivensResult =
  | { readonly ok: true; readonly givens: Givens }
  | { readonly ok: false; readonly objection: Objection };

/**
 * Objects unless tail, saddle and break lie in that order, the shim touches tailward of the break, and
 * the board's curve spans the strings. `drawn`: the body's outline, where it has been drawn before.
 */
export function givensOf(instrument: Instrument, drawn?: Outline): GivensResult {
  const { body, dome } = instrument;
  const breakX = body.length - dome.flatLength;
  const saddleX = saddleLineX(instrument);
  const objection = objectionToPlaces(instrument, breakX, saddleX) ?? objectionToBoard(instrument);
  if (objection !== null) return { ok: false, objection };
  const outline = drawn ?? outlineOf(body);
  const givens = {
    instrument,
    outline,
    breakX,
    breakHalfWidth: outline.halfWidth(breakX),
    saddleX,
    contact: contactOf(instrument),
    saddleHalfWidth: outline.halfWidth(saddleX),
    dishCurvature: curvatureOf(dome.dishRadius),
    braceCurvature: curvatureOf(dome.braceRadius),
    fretPlaneAtSaddle: fretPlaneZ(instrument, saddleX),
    middleString: middleString(instrument),
  };
  return { ok: true, givens };
}

/**
 * Where the rim rests on the shim, from the tail end in, mm: on the shim's neckward edge, or, when the
 * shim reaches past the tail block, on the block's own.
 */
export const contactOf = ({ shim }: Instrument): number =>
  Math.min(shim.contact, shim.tailBlockDepth);

/** The builder's tracing where there is one. */
const outlineOf = (body: Body): Outline =>
  body.tracing === undefined ? new BoutOutline(body) : tracedOutlineOf(body.tracing);

/** A curve through hundreds of places takes as long as all the rest, and is the same whatever else is changed. */
const traced = new WeakMap<Tracing, Outline>();

function tracedOutlineOf(tracing: Tracing): Outline {
  const outline = traced.get(tracing) ?? new TracedOutline(tracing);
  traced.set(tracing, outline);
  return outline;
}

function objectionToPlaces(
  instrument: Instrument,
  breakX: number,
  saddleX: number,
): Objection | null {
  const { body } = instrument;
  if (breakX <= 0) {
    return {
      field: "dome.flatLength",
      why: phrase`The flat is as long as the body, ${mm(body.length)}: nothing is left to dome.`,
    };
  }
  if (saddleX <= 0) {
    return {
      field: "neck.scale",
      why: phrase`With this scale the saddle falls ${mm(-saddleX)} beyond the tail end.`,
    };
  }
  if (saddleX >= breakX) {
    return {
      field: "dome.flatLength",
      why: phrase`The saddle falls on the flat: the break must lie neckward of it, more than ${mm(saddleX)} from the tail.`,
    };
  }
  if (contactOf(instrument) >= breakX) {
    return {
      field: "shim.contact",
      why: phrase`The shim must touch tailward of the break, which is ${mm(breakX)} from the tail.`,
    };
  }
  return null;
}

function objectionToBoard({ neck, strings }: Instrument): Objection | null {
  const widest = Math.max(strings.spreadNut, strings.spreadSaddle) / 2;
  if (neck.fingerboardRadius === null || neck.fingerboardRadius >= widest) return null;
  return {
    field: "neck.fingerboardRadius",
    why: phrase`The fingerboard's curve must span the strings, ${mm(2 * widest)} across.`,
  };
}
