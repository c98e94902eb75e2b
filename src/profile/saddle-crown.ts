import type { Place } from "../geometry/polyline.ts";
import type { Givens } from "./givens.ts";
import type { Profile } from "./outcome.ts";
import { exposureOf } from "./saddle.ts";
import { type StringLine, stringBetween, stringsAcross } from "./strings.ts";
import { topRise } from "./top.ts";

/** The saddle seen along the strings: places are mm along it from the outer bass string, and over the bridge's top. */
export interface SaddleCrown {
  /** Bass first. */
  readonly strings: readonly Place[];
  /** The line through them, from the outer bass string to the outer treble. */
  readonly crown: readonly Place[];
}

/** Straight pieces between two strings: their bow is then less than a thousandth of a millimetre. */
const pieces = 8;

/**
 * Between strings the crown is where a string would lie there, were they evenly spread, moved by as much as
 * the strings beside it are off that: nothing, unless they go in pairs.
 */
export function saddleCrown(
  givens: Givens,
  { dome, bridgeClearance }: Pick<Profile, "dome" | "bridgeClearance">,
): SaddleCrown {
  const { instrument } = givens;
  const lines = stringsAcross(instrument);
  const exposure = exposureOf(givens, bridgeClearance, topRise(givens, dome));
  const [first] = lines;
  if (first === undefined) return { strings: [], crown: [] };
  const placeOf = (line: StringLine): Place => [alongFrom(first, line), exposure(line)];
  const strings = lines.map(placeOf);
  const even = (share: number): Place => placeOf(stringBetween(instrument, share));
  const shares = lines.map(({ saddle: [, y] }) => 0.5 - y / (instrument.strings.spreadSaddle || 1));
  const crown = strings.flatMap((from, i): readonly Place[] => {
    const [to, share, next] = [strings[i + 1], shares[i] ?? 0, shares[i + 1] ?? 0];
    if (to === undefined) return [from];
    const off = [from[1] - even(share)[1], to[1] - even(next)[1]] as const;
    return Array.from({ length: pieces }, (_, k): Place => {
      if (k === 0) return from;
      const part = k / pieces;
      const [along, height] = even(share + (next - share) * part);
      return [along, height + off[0] * (1 - part) + off[1] * part];
    });
  });
  return { strings, crown };
}

const alongFrom = ({ saddle: [ax, ay] }: StringLine, { saddle: [bx, by] }: StringLine): number =>
  Math.hypot(bx - ax, by - ay);
