import { rootBetween } from "../../src/geometry/root.ts";
import type { Instrument } from "../../src/instrument/instrument.ts";
import type { Givens } from "../../src/profile/givens.ts";
import { profileOf } from "../../src/profile/profile.ts";
import { domeOnShim } from "../../src/profile/reach.ts";
import { outcomeOf } from "../../src/profile/solve.ts";
import { cutRim } from "../support/cut-rim.ts";
import { topOf, type Workshop } from "../support/solid.ts";

/** Other ways to the shim that gives the bridge clearance an instrument asks for, mm. */

const [thinnest, thickest] = [0, 20];

/** By a bracketing root-finder over the forward model's one number that is asked for. */
export function shimBySearch(givens: Givens): number {
  const { value } = givens.instrument.target;
  return rootBetween(
    (shim) => {
      const dome = domeOnShim(givens, shim);
      return dome === null ? Number.NaN : outcomeOf(givens, dome, "bridgeClearance") - value;
    },
    thinnest,
    thickest,
  );
}

/** By halving over the whole forward model, knowing nothing of its inside. */
export function shimByHalving(instrument: Instrument): number {
  return halved((shim) => {
    const forward = profileOf({ ...instrument, target: { kind: "shim", value: shim } });
    return forward.ok ? forward.profile.bridgeClearance - instrument.target.value : Number.NaN;
  }, 1e-9);
}

/** By cutting solid rims and measuring them, to the thousandth of a millimetre that facets allow. */
export function shimBySolid(shop: Workshop, givens: Givens): number {
  const { instrument, saddleX, fretPlaneAtSaddle } = givens;
  const wantedTop = fretPlaneAtSaddle - instrument.bridge.thickness - instrument.target.value;
  return halved((shim) => {
    const rim = cutRim(shop, instrument, shim, { chords: 32, facet: 5 });
    return wantedTop - topOf(rim.dished, saddleX, 0);
  }, 1e-3);
}

/** Where a rising function crosses zero between the thinnest shim and the thickest. */
function halved(f: (shim: number) => number, closeness: number): number {
  let [low, high] = [thinnest, thickest];
  while (high - low > closeness) {
    const middle = (low + high) / 2;
    if (f(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
