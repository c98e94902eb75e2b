import { type Dome, domeTilt } from "../../geometry/dome.ts";
import { rootBetween } from "../../geometry/root.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import { deg, mm, type Phrase, phrase } from "../../instrument/phrase.ts";
import { type Givens, givensOf } from "../givens.ts";
import { domeFits, shimUnder } from "../reach.ts";
import { outcomeOf } from "../solve.ts";
import { topZ } from "../top.ts";
import { type MadeInstrument, madeOf } from "./made-instrument.ts";
import { barred, type RemedyMaker, remedied } from "./remedy.ts";

/** A flat sanded anew on a dome that stays as it is. */
interface Resanded {
  /** The shim and the flat that the plan states then. */
  readonly shim: number;
  readonly flatLength: number;
  /** Wood off at the break and at the neck end, square to the new flat, mm. */
  readonly offBreak: number;
  readonly offNeckEnd: number;
  readonly pitch: number;
}

const glued = phrase`The top is glued: the rim's edge can no longer be reached.`;
const noDome = phrase`No dome of this dish gives the gap measured: measure it again.`;
const outOfReach = phrase`No shim in reach does that much.`;

/** Another shim, while the flat is not sanded yet. */
export const anotherShim: RemedyMaker = ({ made, stage }, raise) => {
  if (stage.glued) return barred("shim", glued);
  if (stage.sanded)
    return barred("shim", phrase`The flat is sanded: only re-sanding changes it now.`);
  const found = aboutBreak(made, raise);
  if (found === null) return barred("shim", made.dome === null ? noDome : outOfReach);
  const { shim, offset } = shimsOf(made, found);
  return remedied({
    id: "shim",
    raise,
    amount: found.shim - made.instrument.target.value,
    instruction: phrase`Use a shim of ${mm(shim)} in place of ${mm(made.instrument.target.value + offset)}.`,
    also: [pitchSaid(made, found)],
    changes: [{ path: "target.value", value: found.shim }],
  });
};

/** Takes a wedge off the flat, nothing at the break, most at the neck end: strings come up. */
export const flatAboutBreak: RemedyMaker = ({ made, stage }, raise) => {
  const id = "flat-about-break";
  if (stage.glued) return barred(id, glued);
  if (!stage.sanded) return barred(id, notSanded);
  if (raise < 0)
    return barred(
      id,
      phrase`It only raises the strings: to lower them the neck end would need wood put back.`,
    );
  const found = aboutBreak(made, raise);
  if (found === null) return barred(id, made.dome === null ? noDome : outOfReach);
  return remedied({
    id,
    raise,
    amount: found.offNeckEnd,
    instruction: phrase`Re-sand the flat on a shim of ${mm(shimsOf(made, found).shim)}: nothing comes off at the break, ${mm(found.offNeckEnd)} at the neck end.`,
    also: [
      pitchSaid(made, found),
      phrase`The sides are ${mm(found.offNeckEnd)} shallower at the neck end, and the heel face must follow the pitch.`,
    ],
    changes: [{ path: "target.value", value: found.shim }],
  });
};

/** Takes a wedge off the flat, nothing at the neck end, most at the break: strings come down, the break moves. */
export const flatAboutNeckEnd: RemedyMaker = ({ made, stage }, raise) => {
  const id = "flat-about-neck-end";
  if (stage.glued) return barred(id, glued);
  if (!stage.sanded) return barred(id, notSanded);
  if (raise > 0)
    return barred(
      id,
      phrase`It only lowers the strings: to raise them the break would need wood put back.`,
    );
  const found = aboutNeckEnd(made, raise);
  if (found === null) return barred(id, made.dome === null ? noDome : outOfReach);
  const moved = found.flatLength - made.instrument.dome.flatLength;
  return remedied({
    id,
    raise,
    amount: found.offBreak,
    instruction: phrase`Re-sand the flat on a shim of ${mm(shimsOf(made, found).shim)}: ${mm(found.offBreak)} comes off at the old break, nothing at the neck end.`,
    also: [
      phrase`The break moves ${mm(moved)} toward the tail, to ${mm(found.flatLength)} from the neck end: mark it and brace the top to it.`,
      pitchSaid(made, found),
    ],
    changes: [
      { path: "dome.flatLength", value: found.flatLength },
      { path: "target.value", value: found.shim },
    ],
  });
};

const notSanded = phrase`The flat is not sanded yet: change the shim instead.`;

/** The shim to lay under, by the builder's own measure of shims, and by how much that measure is off. */
function shimsOf(
  { offsets }: MadeInstrument,
  { shim }: Resanded,
): { shim: number; offset: number } {
  return { shim: shim + offsets.shim, offset: offsets.shim };
}

function pitchSaid({ givens, dome }: MadeInstrument, { pitch }: Resanded): Phrase {
  const before = dome === null ? pitch : outcomeOf(givens, dome, "pitch");
  return phrase`The pitch goes from ${deg(before)} to ${deg(pitch)}.`;
}

/**
 * The flat turned about the break line so that the gap at the saddle grows by `raise`. The break's two
 * rim points stay, so the core finds the shim; the turn is that of the dome's own axis, since the dome
 * is the rim's and turns with it. Null when no shim in reach does it.
 */
function aboutBreak(made: MadeInstrument, raise: number): Resanded | null {
  const { instrument, givens, dome, gap } = made;
  if (dome === null) return null;
  const { thickness } = instrument.bridge;
  const value = givens.fretPlaneAtSaddle + gap + raise - thickness;
  const aimed: Instrument = { ...instrument, target: { kind: "bridgeClearance", value } };
  const found = madeOf(aimed, null, made.offsets);
  if (!found.ok || found.made.dome === null) return null;
  const after = found.made.dome;
  const turn = Math.atan2(dome.lean, dome.rise) - Math.atan2(after.lean, after.rise);
  const { flatLength } = instrument.dome;
  return {
    shim: shimUnder(givens, after),
    flatLength,
    offBreak: 0,
    offNeckEnd: flatLength * Math.sin(turn),
    pitch: outcomeOf(givens, after, "pitch"),
  };
}

/** No flat is turned farther than this to bring one back, radians: about 3 degrees. */
const farthestTurn = 0.05;

/** The flat turned down about the neck end until the gap has grown by `raise`, which is negative. */
function aboutNeckEnd(made: MadeInstrument, raise: number): Resanded | null {
  const { dome, gap, givens } = made;
  if (dome === null) return null;
  const wanted = gap + raise;
  const short = (turn: number): number => gapOf(turned(givens, dome, turn)) - wanted;
  const far = farthestFitting(givens, dome);
  if (far === 0 || short(far) > 0) return null;
  const turn = rootBetween(short, 0, far);
  const after = turned(givens, dome, turn);
  if (after === null) return null;
  const { length } = givens.instrument.body;
  return {
    shim: shimUnder(after.givens, after.dome),
    flatLength: length - after.givens.breakX,
    offBreak: (length - givens.breakX) * Math.sin(turn),
    offNeckEnd: 0,
    pitch: outcomeOf(after.givens, after.dome, "pitch"),
  };
}

interface Turned {
  readonly givens: Givens;
  readonly dome: Dome;
}

const gapOf = (after: Turned | null): number =>
  after === null ? Number.NaN : -topZ(after.givens, after.dome, after.givens.saddleX);

/** The farthest turn, up to a limit, that leaves a break on the domed part of the rim. */
function farthestFitting(givens: Givens, dome: Dome): number {
  for (let turn = farthestTurn; turn > 1e-6; turn *= 0.8)
    if (turned(givens, dome, turn) !== null) return turn;
  return 0;
}

/**
 * The same dome seen from a flat turned by `turn` about the neck end (x = L, z = 0), tail side down
 * into the wood. With u = L − x the dome is the quadric
 * κ(u² + y² + z²) − 2·tilt·u + 2·rise·z + c = 0, tilt = κ(L − cx), y from the dome's own middle, and a turn
 * about u = z = 0 turns (tilt, rise) and leaves κ and c. The new break is where the rim's edge meets z = 0,
 * tailward of the old one; where the halves differ, at the edge that does so farther toward the tail, so
 * that the flat reaches across.
 */
function turned(givens: Givens, dome: Dome, turn: number): Turned | null {
  const { halves, breakX, breakHalfWidth, instrument, dishCurvature: k } = givens;
  const { length } = instrument.body;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const before = domeTilt(dome, length);
  const tilt = before * cos + dome.rise * sin;
  const rise = dome.rise * cos - before * sin;
  const flat = length - breakX;
  const c = 2 * before * flat - k * (flat * flat + breakHalfWidth * breakHalfWidth);
  const breaks = halves.map(({ outline, sign }) => {
    const under = (x: number): number => {
      const u = length - x;
      return k * (u * u + (sign * outline.halfWidth(x) - dome.middle) ** 2) - 2 * tilt * u + c;
    };
    return breakTailward(under, breakX, givens.saddleX);
  });
  const newBreak = breaks.reduce((one, two) =>
    one === null || two === null ? null : Math.min(one, two),
  );
  if (newBreak == null) return null;
  const moved: Instrument = {
    ...instrument,
    dome: { ...instrument.dome, flatLength: length - newBreak },
  };
  const set = givensOf(moved);
  if (!set.ok) return null;
  const u = length - newBreak;
  const lean = tilt - k * u;
  // Where the new flat cuts the dome, from its middle: at the edge itself where both halves are alike.
  const across2 = (2 * tilt * u - c) / k - u * u;
  const after: Dome = {
    curvature: k,
    axis: newBreak,
    halfWidth: halves.length === 1 ? set.givens.breakHalfWidth : Math.sqrt(across2),
    level: 0,
    middle: dome.middle,
    lean,
    rise,
  };
  if (!domeFits(set.givens, after) || !(shimUnder(set.givens, after) >= 0)) return null;
  return { givens: set.givens, dome: after };
}

/** The first place tailward of the old break where the edge comes down to the new flat: there `under` turns positive. */
function breakTailward(
  under: (x: number) => number,
  breakX: number,
  saddleX: number,
): number | null {
  const step = 2;
  if (under(breakX) >= 0) return breakX;
  for (let x = breakX; x > saddleX; x -= step) {
    const next = Math.max(saddleX, x - step);
    if (under(next) >= 0) return rootBetween(under, next, x);
  }
  return null;
}
