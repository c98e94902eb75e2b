import { curvatureOf } from "../geometry/circle.ts";
import type { Outline } from "../geometry/outline/outline.ts";
import type { Instrument } from "../instrument/instrument.ts";
import { anglePart, targetFields } from "../instrument/outcome-fields.ts";
import { mm, phrase } from "../instrument/phrase.ts";
import { type Half, type Halves, halvesOf, type Span, spanAt } from "./halves.ts";
import { fingerboardEndX, fretPlaneZ, fretX, saddleLineX } from "./neck.ts";
import type { Objection } from "./outcome.ts";
import { middleString, type StringHeights } from "./strings.ts";
import { objectionToStrings } from "./strings-fit.ts";

/** What an instrument fixes before any shim is chosen. Millimetres; x from the tail end, heights over the flat's plane. */
export interface Givens {
  readonly instrument: Instrument;
  readonly halves: Halves;
  /** The bass half's, and the treble half's where that mirrors it. */
  readonly outline: Outline;
  /**
   * Where the domed part of the rim ends toward the neck, half its width there and how far its middle lies to the
   * bass side: the break, or the neck end where all is domed.
   */
  readonly breakX: number;
  readonly breakHalfWidth: number;
  readonly breakMiddle: number;
  /** Where the fingerboard's seat is to be sanded flat on the domed top; null where the rim has its flat. */
  readonly seat: SeatPlace | null;
  readonly saddleX: number;
  /** Where the rim rests on the shim: see `contactOf`. */
  readonly contact: number;
  readonly saddleSpan: Span;
  /** 1/radius of the dish and of the top's braces; 0 is straight. */
  readonly dishCurvature: number;
  readonly braceCurvature: number;
  readonly fretPlaneAtSaddle: number;
  readonly middleString: StringHeights;
}

/** From the fingerboard's end to the neck end, as wide as stated and never wider than the body; mm. */
export interface SeatPlace {
  readonly fromX: number;
  /** Its corners at the fingerboard's end and at the neck end, bass side first: their y, toward the bass side. */
  readonly end: readonly [bass: number, treble: number];
  readonly neckEnd: readonly [bass: number, treble: number];
}

export type GivensResult =
  | { readonly ok: true; readonly givens: Givens }
  | { readonly ok: false; readonly objection: Objection };

/**
 * Objects unless tail, saddle and break lie in that order, the shim touches tailward of the break (with a
 * seat: tail, saddle and the fingerboard's end), the target belongs to the method, the strings fit the board and
 * the saddle, and each half has one half width from the tail to the break. `drawn`: the body's halves, where they
 * have been drawn before.
 */
export function givensOf(instrument: Instrument, drawn?: Halves): GivensResult {
  const { body, dome } = instrument;
  const breakX = dome.method === "seat" ? body.length : body.length - dome.flatLength;
  const saddleX = saddleLineX(instrument);
  const objection =
    objectionToTarget(instrument) ??
    objectionToPlaces(instrument, breakX, saddleX) ??
    objectionToStrings(instrument, flatFrom(instrument, breakX));
  if (objection !== null) return { ok: false, objection };
  const halves = drawn ?? halvesOf(body);
  const scoop = dome.method === "seat" ? null : objectionToScoop(halves, breakX);
  if (scoop !== null) return { ok: false, objection: scoop };
  const breakSpan = spanAt(halves, breakX);
  const givens = {
    instrument,
    halves,
    outline: halves[0].outline,
    breakX,
    breakHalfWidth: breakSpan.half,
    breakMiddle: breakSpan.middle,
    seat: dome.method === "seat" ? seatPlaceOf(instrument, halves) : null,
    saddleX,
    contact: contactOf(instrument),
    saddleSpan: spanAt(halves, saddleX),
    dishCurvature: curvatureOf(dome.dishRadius),
    braceCurvature: curvatureOf(dome.braceRadius),
    fretPlaneAtSaddle: fretPlaneZ(instrument, saddleX),
    middleString: middleString(instrument),
  };
  return { ok: true, givens };
}

/** The same with the break at another place. */
export function withBreak(givens: Givens, breakX: number): Givens {
  const { half, middle } = spanAt(givens.halves, breakX);
  return { ...givens, breakX, breakHalfWidth: half, breakMiddle: middle };
}

function seatPlaceOf(instrument: Instrument, halves: Halves): SeatPlace {
  const fromX = seatFromX(instrument);
  const half = instrument.seat.fingerboardWidth / 2;
  const [bass, treble = bass] = halves;
  const corners = (x: number) =>
    [
      Math.min(half, bass.outline.halfWidth(x)),
      -Math.min(half, treble.outline.halfWidth(x)),
    ] as const;
  return { fromX, end: corners(fromX), neckEnd: corners(instrument.body.length) };
}

/** Where the seat begins: at the fingerboard's end, or at the neck end where none of it lies on the body. */
const seatFromX = (instrument: Instrument): number =>
  Math.min(fingerboardEndX(instrument), instrument.body.length);

/** Where the domed part of a half ends toward the neck, as its outline counts places along the edge. */
export const domedEnd = ({ seat, breakX }: Givens, { outline }: Half): number =>
  seat === null ? breakX : outline.end;

/** Whether the rim is domed at x, and the top with it. */
export const isDomed = ({ seat, breakX }: Givens, x: number): boolean =>
  seat !== null || x < breakX;

/**
 * Where the rim rests on the shim, from the tail end in, mm: on the shim's neckward edge, or, when the
 * shim reaches past the tail block, on the block's own.
 */
export const contactOf = ({ shim }: Instrument): number =>
  Math.min(shim.contact, shim.tailBlockDepth);

/** The shim is a target of the one method, the spacer of the other. */
function objectionToTarget({ target, dome }: Instrument): Objection | null {
  const other = anglePart[dome.method === "break" ? "seat" : "break"];
  if (target.kind !== other) return null;
  const own = dome.method === "break" ? "sanded flat on a shim" : "domed all over, on no shim";
  return {
    field: "target.value",
    why: [`${targetFields[other].label} is no target here: the rim is ${own}. Choose another.`],
  };
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
  if (instrument.dome.method === "seat") return objectionToSeat(instrument, saddleX);
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

/** Where the saddle must end, toward the neck: the break, or the seat. */
const flatFrom = (instrument: Instrument, breakX: number): number =>
  instrument.dome.method === "seat" ? seatFromX(instrument) : breakX;

function objectionToSeat(instrument: Instrument, saddleX: number): Objection | null {
  const { body, neck } = instrument;
  if (saddleX >= body.length) {
    return {
      field: "bridge.compensation",
      why: phrase`The saddle falls ${mm(saddleX - body.length)} beyond the neck end: no seat lies neckward of it.`,
    };
  }
  const past = saddleX - seatFromX(instrument);
  if (past < 0) return null;
  const overhangs = fretX(instrument, neck.lastFret) > saddleX;
  return {
    field: overhangs ? "neck.fingerboardOverhang" : "neck.lastFret",
    why: phrase`The fingerboard ends ${mm(past)} past the saddle: its seat must lie neckward of it.`,
  };
}

/** The dome ends on one line across the body, so each half must have one edge there and tailward of it. */
function objectionToScoop(halves: Halves, breakX: number): Objection | null {
  const deepest = halves.reduce((one, half) =>
    half.outline.foldX < one.outline.foldX ? half : one,
  );
  const { foldX } = deepest.outline;
  if (foldX >= breakX) return null;
  const where = halves.length === 1 ? "" : ` on the ${deepest.side} side`;
  return {
    field: "dome.flatLength",
    why: [
      `The cutaway${where} reaches `,
      mm(breakX - foldX),
      " tailward of the break, to ",
      mm(foldX),
      " from the tail. Move the break at least so far toward the tail, or draw the cutaway that much shallower.",
    ],
  };
}
