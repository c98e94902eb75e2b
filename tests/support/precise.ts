import type { Instrument } from "../../src/instrument/instrument.ts";
import { Exact, exact, root } from "./high-precision.ts";
import { domeOn, drop, type Ground, groundOf, legOf } from "./precise-dome.ts";
import type { PreciseOutline } from "./precise-outline.ts";
import { cleanShim, dishNeeded, type PreciseRim, rimOf } from "./precise-rim.ts";
import { middleString, outerToOuter, type StringLine } from "./precise-strings.ts";

/** Everything on the centreline and at the strings, for one shim. */
export interface PreciseChain {
  readonly shim: Exact;
  readonly tailDrop: Exact;
  readonly chordPitch: Exact;
  readonly pitch: Exact;
  readonly heelAngle: Exact;
  readonly breakHalfWidth: Exact;
  readonly saddleX: Exact;
  readonly flatGap: Exact;
  readonly projection: Exact;
  readonly bridgeClearance: Exact;
  readonly stringHeight: Exact;
  readonly saddleExposure: Exact;
  readonly stringExposure: readonly Exact[];
  readonly breakAngle: Exact;
}

/**
 * A second derivation of every outcome at 50 digits, sharing no code and no formula with the core:
 * the sphere comes from the two circle equations by Newton, the shim from the forward model by a
 * bracketed root, the outline by solving for the Bezier parameter, highs and lows by a dense scan.
 */
export interface PreciseInstrument {
  readonly outline: PreciseOutline;
  readonly chain: (shim: Exact) => PreciseChain;
  readonly rim: (shim: Exact) => PreciseRim;
  /** The shim that gives the instrument's own target. */
  readonly shimForTarget: () => Exact;
  /** The thinnest shim with no overrun. */
  readonly cleanShim: () => Exact;
  readonly dishNeeded: () => Exact;
}

export function preciseInstrument(instrument: Instrument): PreciseInstrument {
  const ground = groundOf(instrument);
  const lines = { middle: middleString(instrument), strings: outerToOuter(instrument) };
  const chain = (shim: Exact): PreciseChain => chainOf(ground, lines, shim);
  return {
    outline: ground.outline,
    chain,
    rim: (shim) => rimOf(ground, shim),
    shimForTarget: () => shimForTarget(instrument.target, chain),
    cleanShim: () => cleanShim(ground),
    dishNeeded: () => dishNeeded(ground),
  };
}

const degreesOf = (tangent: Exact): Exact => tangent.atan().times(180).div(pi);

const pi = Exact.acos(-1);

/**
 * Top on the centreline at x: the rim's sphere, corrected by the braces' own arch over the width there.
 * On a flat rim there is no crest to be off from: a brace is arched by its whole radius.
 */
function topAt(ground: Ground, shim: Exact, x: Exact): Exact {
  const { instrument, outline } = ground;
  const w = outline.halfWidth(x);
  const { sphere, height } = domeOn(ground, shim);
  const { braceRadius } = instrument.dome;
  const onDish = height(x, exact(0));
  const off = sphere === null ? exact(0) : x.minus(sphere.x);
  const ofBrace = braceRadius === null ? null : legOf(exact(braceRadius), off);
  const ofDish = sphere === null ? null : legOf(sphere.radius, off);
  return onDish.plus(drop(ofBrace, w)).minus(drop(ofDish, w));
}

/** How steeply the top falls toward the tail at x, from its heights to either side. */
function slopeAt(ground: Ground, shim: Exact, x: Exact): Exact {
  const aside = exact("1e-12");
  const [ahead, behind] = [topAt(ground, shim, x.plus(aside)), topAt(ground, shim, x.minus(aside))];
  return ahead.minus(behind).div(aside.times(2));
}

interface Lines {
  readonly middle: StringLine;
  readonly strings: readonly StringLine[];
}

function chainOf(ground: Ground, { middle, strings }: Lines, shim: Exact): PreciseChain {
  const { instrument, breakX, breakHalfWidth, saddleX } = ground;
  const { body, dome, neck, bridge } = instrument;
  const tilt = exact(neck.neckTilt).times(pi).div(180).tan();
  const tailDrop = domeOn(ground, shim).height(exact(0), exact(0)).negated();
  const pitch = degreesOf(tailDrop.minus(dome.tailExtra).div(breakX));
  const top = topAt(ground, shim, saddleX);
  const fretPlane = exact(neck.fingerboardThickness)
    .plus(neck.fretHeight)
    .plus(exact(body.length).minus(saddleX).times(tilt));
  const projection = fretPlane.minus(top);
  const { settling } = instrument.strings;
  const stringHeight = projection.plus(middle.atSaddle).minus(settling);
  const saddleExposure = stringHeight.minus(bridge.thickness);
  const overSaddle = saddleExposure.plus(bridge.pinRamp).div(bridge.pinDistance);
  const toNut = middle.atSaddle
    .minus(middle.atNut)
    .div(exact(neck.scale).plus(bridge.compensation));
  return {
    shim,
    tailDrop,
    chordPitch: degreesOf(tailDrop.div(breakX)),
    pitch,
    heelAngle: exact(90).minus(pitch).minus(neck.neckTilt),
    breakHalfWidth,
    saddleX,
    flatGap: top.negated(),
    projection,
    bridgeClearance: projection.minus(bridge.thickness),
    stringHeight,
    saddleExposure,
    stringExposure: strings.map(({ atSaddle, saddleX: x }) =>
      exact(neck.fingerboardThickness)
        .plus(neck.fretHeight)
        .plus(exact(body.length).minus(x).times(tilt))
        .plus(atSaddle)
        .minus(topAt(ground, shim, x))
        .minus(bridge.thickness)
        .minus(settling),
    ),
    breakAngle: degreesOf(overSaddle)
      .plus(degreesOf(toNut))
      .plus(neck.neckTilt)
      .plus(degreesOf(slopeAt(ground, shim, saddleX))),
  };
}

/** The forward model's root, bracketed by widening from a usual shim. */
function shimForTarget(
  { kind, value }: Instrument["target"],
  chain: (shim: Exact) => PreciseChain,
): Exact {
  if (kind === "shim" || kind === "spacer") return exact(value);
  const miss = (shim: Exact): Exact => chain(shim)[kind].minus(value);
  let [low, high] = [exact(0), exact(12)];
  while (miss(low).isPositive()) low = low.minus(8);
  while (miss(high).isNegative()) high = high.plus(8);
  return root(miss, low, high);
}
