import { type Dome, domeZ } from "../geometry/dome.ts";
import type { Instrument } from "../instrument/instrument.ts";
import { type Givens, givensOf } from "./givens.ts";
import type { Outcomes } from "./outcome.ts";
import { domeFits, domeOnPart } from "./reach.ts";
import { type CentreHeights, centreHeights } from "./saddle.ts";
import { outcomeOf, solve } from "./solve.ts";
import { topSlope, topZ } from "./top.ts";

/**
 * The single numbers of a profile from the shim (or spacer) to the saddle, mm and degrees: all that needs no
 * search round the rim's edge, so what is swept and perturbed many thousand times.
 */
export type SaddleChain = CentreHeights &
  Pick<Outcomes, "tailDrop" | "pitch" | "heelAngle"> & {
    /** The shim's thickness, or with a seat the spacer's. */
    readonly part: number;
  };

export type ChainKey = keyof SaddleChain;

/** What a dome gives from the shim to the saddle. Each number is named, since spreading costs as much as all the rest. */
export function chainOf(givens: Givens, dome: Dome, part: number): SaddleChain {
  const pitch = outcomeOf(givens, dome, "pitch");
  const gap = -topZ(givens, dome, givens.saddleX);
  const heights = centreHeights(givens, gap, topSlope(givens, dome));
  return {
    part,
    tailDrop: -domeZ(dome, 0, 0),
    pitch,
    heelAngle: 90 - pitch - givens.instrument.neck.neckTilt,
    flatGap: heights.flatGap,
    projection: heights.projection,
    bridgeClearance: heights.bridgeClearance,
    stringHeight: heights.stringHeight,
    saddleExposure: heights.saddleExposure,
    breakAngle: heights.breakAngle,
  };
}

/** What a shim (or spacer) `t` mm thick gives; null where it gives no dome. */
export function chainOnPart(givens: Givens, t: number): SaddleChain | null {
  const dome = domeOnPart(givens, t);
  return dome !== null && domeFits(givens, dome) ? chainOf(givens, dome, t) : null;
}

/** The chain of an instrument with its own target met; null where it cannot be. */
export function chainOfInstrument(instrument: Instrument): SaddleChain | null {
  const set = givensOf(instrument);
  if (!set.ok) return null;
  const solution = solve(set.givens);
  if (!solution.ok) return null;
  const { dome, part } = solution.solution;
  return chainOf(set.givens, dome, part);
}
