import { degrees, radians } from "../../geometry/circle.ts";
import type { Change } from "../../instrument/as-built/as-built.ts";
import { mm, type Phrase, phrase } from "../../instrument/phrase.ts";
import { fingerboardEndX, fretX } from "../neck.ts";
import type { MadeInstrument } from "./made-instrument.ts";
import { barred, type RemedyMaker, remedied } from "./remedy.ts";

const neckOn = phrase`The neck and the fingerboard are on.`;
const noneLeft = phrase`Nothing of the fingerboard would be left.`;

/** 3/16 and 1/4 in, as published for the centre of a fingerboard. */
const usualThickness = [4.76, 6.35] as const;

/** A fingerboard thicker or thinner all along: the fret plane rises by as much everywhere. */
export const fingerboardThickness: RemedyMaker = ({ made, stage }, raise) => {
  const id = "fingerboard-thickness";
  if (stage.neckOn) return barred(id, neckOn);
  const value = made.instrument.neck.fingerboardThickness + raise;
  if (value <= 0) return barred(id, noneLeft);
  const by = mm(Math.abs(raise));
  return remedied({
    id,
    raise,
    amount: Math.abs(raise),
    instruction:
      raise > 0
        ? phrase`Make the fingerboard ${by} thicker, ${mm(value)}.`
        : phrase`Plane the fingerboard ${by} thinner, to ${mm(value)}.`,
    also: [
      raise > 0
        ? phrase`The strings stand ${by} higher over the top, all along.`
        : phrase`The strings stand ${by} lower over the top, all along.`,
      ...thicknessNotes(value),
    ],
    changes: [{ path: "neck.fingerboardThickness", value }],
  });
};

function thicknessNotes(value: number): readonly Phrase[] {
  const [low, high] = usualThickness;
  return value < low || value > high
    ? [phrase`That is out of the usual ${mm(low)} to ${mm(high)}.`]
    : [];
}

/**
 * A fingerboard planed to a wedge, wood only taken off: to raise, nothing at its end on the body and most
 * at the nut; to lower, nothing at the nut and most at its end. The fret plane turns about the end
 * that is left alone, so by raise/(that end − saddle) in slope.
 */
export const fingerboardTaper: RemedyMaker = ({ made, stage }, raise) => {
  const id = "fingerboard-taper";
  if (stage.neckOn) return barred(id, neckOn);
  const { instrument, givens } = made;
  const { neck, body } = instrument;
  const [end, nut] = [fingerboardEndX(instrument), fretX(instrument, 0)];
  const pivot = raise > 0 ? end : nut;
  const slope = raise / (pivot - givens.saddleX);
  const off = (nut - end) * Math.abs(slope);
  const thickness = neck.fingerboardThickness + (pivot - body.length) * slope;
  if (off >= neck.fingerboardThickness || thickness <= 0) return barred(id, noneLeft);
  return remedied({
    id,
    raise,
    amount: off,
    instruction:
      raise > 0
        ? phrase`Plane the fingerboard to a taper: nothing off at its end on the body, ${mm(off)} off at the nut.`
        : phrase`Plane the fingerboard to a taper: nothing off at the nut, ${mm(off)} off at its end on the body.`,
    also: [
      phrase`It is ${mm(thickness)} thick at the neck end of the body then.`,
      phrase`The neck is ${mm(raise > 0 ? off : 0)} thinner at the nut.`,
    ].slice(0, raise > 0 ? 2 : 1),
    changes: [{ path: "neck.fingerboardThickness", value: thickness }, ...tiltedBy(made, slope)],
  });
};

/** The fret plane turned about the neck end by `slope`, the tangent of the neck's tilt. */
function tiltedBy({ instrument }: MadeInstrument, slope: number): readonly Change[] {
  const tilt = Math.tan(radians(instrument.neck.neckTilt)) + slope;
  return [{ path: "neck.neckTilt", value: degrees(Math.atan(tilt)) }];
}

/**
 * By similar triangles: a neck turned about the heel's shoulder or tip to move the fret plane by `raise` at the
 * saddle loses raise × heel length / (body join to saddle) at the other end of the heel.
 */
export function heelOff({ instrument, givens }: MadeInstrument, raise: number): number {
  const { body, neck } = instrument;
  return (Math.abs(raise) * neck.heelLength) / (body.length - givens.saddleX);
}

/** How far the turned neck's fingerboard lifts off the top, or is pressed into it, at its end. */
function extensionLift({ instrument, givens }: MadeInstrument, raise: number): number {
  const { length } = instrument.body;
  const slope = Math.abs(raise) / (length - givens.saddleX);
  return (length - fingerboardEndX(instrument)) * slope;
}

const slopeOf = ({ instrument, givens }: MadeInstrument, raise: number): number =>
  raise / (instrument.body.length - givens.saddleX);

/** The neck set back, seen from the extension. */
export const wedge: RemedyMaker = ({ made, stage }, raise) => {
  const id = "wedge";
  if (stage.neckOn) return barred(id, neckOn);
  if (raise < 0) return barred(id, phrase`A wedge only raises the strings.`);
  const lift = extensionLift(made, raise);
  return remedied({
    id,
    raise,
    amount: lift,
    instruction: phrase`Lay a wedge under the fingerboard's extension: nothing at the neck end, ${mm(lift)} at its end.`,
    also: [
      phrase`The heel must follow: trim ${mm(heelOff(made, raise))} off its tip, nothing at its shoulder.`,
    ],
    changes: tiltedBy(made, slopeOf(made, raise)),
  });
};

/** The neck set back, seen from the heel. */
export const heelTip: RemedyMaker = ({ made, stage }, raise) => {
  const id = "heel-tip";
  if (stage.neckOn) return barred(id, neckOn);
  if (raise < 0)
    return barred(id, phrase`Wood off the tip only raises the strings: trim the shoulder instead.`);
  const off = heelOff(made, raise);
  return remedied({
    id,
    raise,
    amount: off,
    instruction: phrase`Trim ${mm(off)} off the heel at its tip, nothing at its shoulder.`,
    also: [
      phrase`The extension lifts ${mm(extensionLift(made, raise))} at its end: fill it with a wedge.`,
    ],
    changes: tiltedBy(made, slopeOf(made, raise)),
  });
};

/** The neck set forward. */
export const heelShoulder: RemedyMaker = ({ made, stage }, raise) => {
  const id = "heel-shoulder";
  if (stage.neckOn) return barred(id, neckOn);
  if (raise > 0)
    return barred(id, phrase`Wood off the shoulder only lowers the strings: trim the tip instead.`);
  const off = heelOff(made, raise);
  return remedied({
    id,
    raise,
    amount: off,
    instruction: phrase`Trim ${mm(off)} off the heel at its shoulder, nothing at its tip.`,
    also: [
      phrase`Plane ${mm(extensionLift(made, raise))} off the extension from below at its end, nothing at the neck end.`,
      phrase`The neck comes ${mm(off)} nearer the bridge: set the bridge from the nut anew.`,
    ],
    changes: tiltedBy(made, slopeOf(made, raise)),
  });
};
