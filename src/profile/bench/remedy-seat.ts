import { mm, type Phrase, phrase } from "../../instrument/phrase.ts";
import { profileOf } from "../profile.ts";
import { cutOf, lowestAtEnds, mostCutOf } from "../seat.ts";
import type { MadeInstrument } from "./made-instrument.ts";
import { barred, type RemedyMaker, remedied } from "./remedy.ts";

/** A seat sanded anew on a top that stays as it is. */
interface SeatAgain {
  readonly spacer: number;
  readonly leastCut: number;
  /** Wood off at the fingerboard's end and at the neck end, square to the old seat, mm. */
  readonly offEnd: number;
  readonly offNeckEnd: number;
  /** Plate left on the centreline at those two, and the least anywhere between, mm. */
  readonly leftEnd: number;
  readonly leftNeckEnd: number;
  readonly leastLeft: number;
}

const neckOn = phrase`The fingerboard is on: the seat can no longer be reached.`;
const noDome = phrase`No dome of this dish gives the gap measured: measure it again.`;
const tooMuch = phrase`It would take more of the plate than there is.`;

/** Another spacer, while the seat is not sanded yet. */
export const anotherSpacer: RemedyMaker = ({ made, stage }, raise) => {
  const id = "spacer";
  if (stage.neckOn) return barred(id, neckOn);
  if (stage.sanded) return barred(id, phrase`The seat is sanded: only re-sanding changes it now.`);
  const value = made.instrument.target.value + raise;
  if (value < 0) return barred(id, phrase`No spacer is thin enough for that.`);
  const after = profileOf({ ...made.instrument, target: { kind: "spacer", value } });
  if (!after.ok) return barred(id, after.refusal.why);
  if ((after.profile.seat?.thicknessLeft ?? 0) <= 0) return barred(id, tooMuch);
  return remedied({
    id,
    raise,
    amount: raise,
    instruction: phrase`Use a spacer of ${mm(value + made.offsets.shim)} in place of ${mm(made.instrument.target.value + made.offsets.shim)}.`,
    also: [],
    changes: [{ path: "target.value", value }],
  });
};

/** Takes a wedge off the seat: to raise the strings most at the neck end, to lower them most at the fingerboard's end. */
export const seatAgain: RemedyMaker = ({ made, stage }, raise) => {
  const id = "seat-again";
  if (stage.neckOn) return barred(id, neckOn);
  if (!stage.sanded)
    return barred(id, phrase`The seat is not sanded yet: change the spacer instead.`);
  const found = turnedSeat(made, raise);
  if (found === null) return barred(id, noDome);
  if (found.leastLeft <= 0 || found.spacer < 0) return barred(id, tooMuch);
  const { offEnd, offNeckEnd } = found;
  const where: Phrase =
    raise > 0
      ? phrase`nothing comes off at the fingerboard's end, ${mm(offNeckEnd)} at the neck end.`
      : phrase`${mm(offEnd)} comes off at the fingerboard's end, nothing at the neck end.`;
  return remedied({
    id,
    raise,
    amount: Math.max(offEnd, offNeckEnd),
    instruction: [
      ...phrase`Re-sand the seat on a spacer of ${mm(found.spacer + made.offsets.shim)}: `,
      ...where,
    ],
    also: [
      phrase`The plate is left ${mm(found.leftEnd)} thick at the fingerboard's end, ${mm(found.leftNeckEnd)} at the neck end; ${mm(found.leastLeft)} where it is thinnest.`,
    ],
    changes: [
      { path: "seat.leastCut", value: found.leastCut },
      { path: "target.value", value: found.spacer },
    ],
  });
};

/**
 * The seat turned so that it passes `raise` mm higher over the saddle line and nowhere over where it was:
 * about the fingerboard's end to rise there, about the neck end to fall. Heights over the old seat's plane
 * change by the straight line that does so; what the turn does to distances along it is less than a
 * thousandth of a millimetre and left out.
 */
function turnedSeat(
  { givens, dome, gap, instrument }: MadeInstrument,
  raise: number,
): SeatAgain | null {
  const { seat, saddleX, outline } = givens;
  if (seat === null || dome === null) return null;
  const { fromX } = seat;
  const about = raise > 0 ? fromX : outline.length;
  const lowered = (x: number): number => (raise * (x - about)) / (about - saddleX);
  const [offEnd, offNeckEnd] = [lowered(fromX), lowered(outline.length)];
  const cut = cutOf(givens, seat, dome);
  const [atEnd, atNeckEnd] = lowestAtEnds(givens, seat, dome);
  const { topThickness } = instrument.seat;
  return {
    spacer: gap + raise,
    leastCut: Math.min(atEnd + offEnd, atNeckEnd + offNeckEnd),
    offEnd,
    offNeckEnd,
    leftEnd: topThickness - cut.endCut - offEnd,
    leftNeckEnd: topThickness - cut.neckEndCut - offNeckEnd,
    leastLeft: topThickness - mostCutOf(givens, seat, dome, lowered).value,
  };
}
