import type { Instrument } from "../../src/instrument/instrument.ts";
import { Exact, exact } from "./high-precision.ts";
import { drop, toBridge } from "./precise-dome.ts";

/** A string's height over the fret plane at both ends. */
export interface StringLine {
  readonly atNut: Exact;
  readonly atSaddle: Exact;
}

/**
 * Carries the straight line from the nut over fret 12 to the saddle. The neck's forward bow lifts a fret
 * that stands `u` nutward of the join fret by k·u², so that the chord from fret 1 to the join fret stands `relief` clear.
 */
function carried(
  instrument: Instrument,
  action: Exact,
  nutFall: Exact,
  fret12Fall: Exact,
): StringLine {
  const { neck, bridge, strings } = instrument;
  const joinAt = toBridge(neck.scale, neck.joinFret);
  const bowed = toBridge(neck.scale, 1).minus(joinAt);
  const bow = exact(neck.relief).times(4).div(bowed.pow(2));
  const nutFromJoin = exact(neck.scale).minus(joinAt);
  const fret12FromJoin = Exact.max(0, toBridge(neck.scale, 12).minus(joinAt));
  const atNut = exact(strings.nutClearance)
    .plus(bow.times(nutFromJoin.pow(2)))
    .minus(nutFall);
  const at12 = action.plus(bow.times(fret12FromJoin.pow(2))).minus(fret12Fall);
  const along = exact(neck.scale).plus(bridge.compensation).div(exact(neck.scale).div(2));
  return { atNut, atSaddle: atNut.plus(at12.minus(atNut).times(along)) };
}

export function middleString(instrument: Instrument): StringLine {
  const { actionBass, actionTreble } = instrument.strings;
  return carried(instrument, exact(actionBass).plus(actionTreble).div(2), exact(0), exact(0));
}

/** Every string, bass first, each over the fingerboard's own curve. */
export function outerToOuter(instrument: Instrument): StringLine[] {
  const { neck, bridge, strings } = instrument;
  const radius = neck.fingerboardRadius === null ? null : exact(neck.fingerboardRadius);
  const length = exact(neck.scale).plus(bridge.compensation);
  return Array.from({ length: strings.count }, (_, i) => {
    const part = strings.count === 1 ? exact("0.5") : exact(i).div(strings.count - 1);
    const yNut = part.minus("0.5").times(strings.spreadNut);
    const ySaddle = part.minus("0.5").times(strings.spreadSaddle);
    const y12 = yNut.plus(ySaddle.minus(yNut).times(exact(neck.scale).div(2)).div(length));
    const action = exact(strings.actionBass).plus(
      part.times(exact(strings.actionTreble).minus(strings.actionBass)),
    );
    return carried(instrument, action, drop(radius, yNut), drop(radius, y12));
  });
}
