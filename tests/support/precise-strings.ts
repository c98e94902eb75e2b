import type { Instrument } from "../../src/instrument/instrument.ts";
import { Exact, exact } from "./high-precision.ts";
import { drop, toBridge } from "./precise-dome.ts";

/** A string's height over the fret plane at both ends, and where it meets the saddle. */
export interface StringLine {
  readonly atNut: Exact;
  readonly atSaddle: Exact;
  readonly saddleX: Exact;
}

/** Where a string lies: y at nut and saddle, + on the bass side, and half the way from the middle, + ½ at the outer bass place. */
interface Lateral {
  readonly nut: Exact;
  readonly saddle: Exact;
  readonly side: Exact;
}

const middle: Lateral = { nut: exact(0), saddle: exact(0), side: exact(0) };

export const middleString = (instrument: Instrument): StringLine => carried(instrument, middle);

/** Every string, bass first, each over the fingerboard's own curve. */
export const outerToOuter = (instrument: Instrument): StringLine[] =>
  laterals(instrument).map((lateral) => carried(instrument, lateral));

function laterals({ strings }: Instrument): Lateral[] {
  const { count, pairGap, spreadNut, spreadSaddle } = strings;
  if (count === 1) return [middle];
  return Array.from({ length: count }, (_, i) => {
    const across = (spread: number): Exact => {
      if (pairGap === 0)
        return exact(spread)
          .div(2)
          .minus(
            exact(spread)
              .times(i)
              .div(count - 1),
          );
      const pairs = count / 2;
      const between = exact(spread).minus(pairGap);
      const pair = Math.floor(i / 2);
      const centre =
        pairs === 1 ? exact(0) : between.div(2).minus(between.times(pair).div(pairs - 1));
      return centre.plus(
        exact(pairGap)
          .div(2)
          .times(i % 2 === 0 ? 1 : -1),
      );
    };
    const saddle = across(spreadSaddle);
    const side =
      pairGap === 0 ? exact("0.5").minus(exact(i).div(count - 1)) : saddle.div(spreadSaddle);
    return { nut: across(spreadNut), saddle, side };
  });
}

/**
 * Carries the straight line from the nut over fret 12 to the saddle, each found by its place along: frets of a
 * fan are marked off a string's own scale from the one that stands square. The neck's forward bow lifts a fret
 * `u` nutward of the join fret by k·u², so that the chord from fret 1 to the join fret stands `relief` clear.
 */
function carried(instrument: Instrument, { nut, saddle, side }: Lateral): StringLine {
  const { body, neck, bridge, strings } = instrument;
  const scale = exact(neck.scale).plus(side.times(neck.fan));
  const length = scale.plus(bridge.compensation).plus(side.times(bridge.slant));
  const end = exact(body.length).minus(toBridge(neck.scale, neck.joinFret));
  const square = end.plus(toBridge(neck.scale, neck.fanFret));
  const power = (fret: number): Exact => exact(2).pow(exact(-fret).div(12));
  const fretX = (fret: number): Exact =>
    square.plus(scale.times(power(fret).minus(power(neck.fanFret))));
  const chord = toBridge(neck.scale, 1).minus(toBridge(neck.scale, neck.joinFret));
  const bow = (x: Exact): Exact =>
    Exact.max(0, x.minus(body.length)).div(chord).pow(2).times(4).times(neck.relief);
  const radius = neck.fingerboardRadius === null ? null : exact(neck.fingerboardRadius);
  const half = scale.div(2);
  const y12 = nut.plus(saddle.minus(nut).times(half).div(length));
  const mean = exact(strings.actionBass).plus(strings.actionTreble).div(2);
  const action = mean.plus(side.times(exact(strings.actionBass).minus(strings.actionTreble)));
  const atNut = exact(strings.nutClearance)
    .plus(bow(fretX(0)))
    .minus(drop(radius, nut));
  const at12 = action.plus(bow(fretX(12))).minus(drop(radius, y12));
  return {
    atNut,
    atSaddle: atNut.plus(at12.minus(atNut).times(length).div(half)),
    saddleX: square.minus(scale.times(power(neck.fanFret))).minus(length.minus(scale)),
  };
}
