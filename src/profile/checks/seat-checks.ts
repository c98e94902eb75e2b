import type { Instrument } from "../../instrument/instrument.ts";
import { mm, phrase, roundedDown, roundedUp } from "../../instrument/phrase.ts";
import type { AnyOutcomes, Check } from "../outcome.ts";
import { rounding } from "../standing.ts";

/** What must be left of a spruce plate over the upper transverse brace, mm; common practice, no source. */
const usualLeft = 2;

/** That the seat's cut goes through the plate, or leaves it thin. */
export function plateLeft({ seat: stated }: Instrument, { seat }: AnyOutcomes): Check | null {
  if (seat === null || seat.thicknessLeft >= usualLeft - rounding) return null;
  const { mostCut, thicknessLeft } = seat;
  const gone = thicknessLeft <= rounding;
  return {
    id: gone ? "plate-gone" : "plate-thin",
    grade: gone ? "stop" : "warn",
    field: "target.value",
    means: gone
      ? phrase`The seat takes ${mm(mostCut)} off a plate ${mm(stated.topThickness)} thick: it cuts through.`
      : phrase`The seat takes ${mm(mostCut)} off and leaves ${mm(thicknessLeft)} of the plate over the upper transverse brace. From about ${mm(usualLeft)} up is common practice for spruce; it is for you to judge.`,
    fix: phrase`A target nearer the dome's own slope, a plate thicker by ${roundedUp(mm(usualLeft - thicknessLeft))} there, or a rim sanded flat before the top goes on.`,
  };
}

/** That the fingerboard is wider than the body it is to lie on. */
export function seatTooWide({ seat: stated }: Instrument, { seat }: AnyOutcomes): Check | null {
  if (seat === null || stated.fingerboardWidth <= seat.bodyWidth + rounding) return null;
  return {
    id: "seat-too-wide",
    grade: "warn",
    field: "seat.fingerboardWidth",
    means: phrase`The seat is stated ${mm(stated.fingerboardWidth)} wide, and the body is ${mm(seat.bodyWidth)} across there: all is worked out for the body's width.`,
    fix: phrase`A seat ${roundedDown(mm(seat.bodyWidth))} wide or less.`,
  };
}
