import { fretToBridge } from "../geometry/fret.ts";
import type { Instrument } from "../instrument/instrument.ts";
import { mm, type Phrase, phrase } from "../instrument/phrase.ts";
import type { Objection } from "./outcome.ts";
import { saddlePlaceX } from "./strings.ts";

/**
 * Objects unless the board's curve spans the strings, pairs are whole and apart, every string has a length,
 * and the saddle stands between the tail and `flatFromX` from end to end. The saddle on the centreline does.
 */
export const objectionToStrings = (instrument: Instrument, flatFromX: number): Objection | null =>
  objectionToBoard(instrument) ??
  objectionToPairs(instrument) ??
  objectionToLengths(instrument) ??
  objectionToSaddle(instrument, flatFromX);

function objectionToBoard({ neck, strings }: Instrument): Objection | null {
  const widest = Math.max(strings.spreadNut, strings.spreadSaddle) / 2;
  if (neck.fingerboardRadius === null || neck.fingerboardRadius >= widest) return null;
  return {
    field: "neck.fingerboardRadius",
    why: phrase`The fingerboard's curve must span the strings, ${mm(2 * widest)} across.`,
  };
}

function objectionToPairs({ strings }: Instrument): Objection | null {
  const { pairGap, count, spreadNut, spreadSaddle } = strings;
  const field = "strings.pairGap";
  if (pairGap === 0) return null;
  if (count % 2 !== 0)
    return { field, why: ["Pairs need an even number of strings: 0 spreads them evenly."] };
  const most = Math.min(spreadNut, spreadSaddle) / (count / 2);
  if (pairGap <= most) return null;
  return {
    field,
    why: phrase`With a gap of ${mm(pairGap)} the pairs are no longer apart: at most ${mm(most)} does.`,
  };
}

const ends = [0, 1] as const;

function objectionToLengths({ neck, bridge }: Instrument): Objection | null {
  for (const share of ends) {
    const scale = neck.scale + neck.fan * (0.5 - share);
    if (scale <= 0) return { field: "neck.fan", why: ["With this fan a string has no length."] };
    if (scale + bridge.compensation + bridge.slant * (0.5 - share) <= 0)
      return { field: "bridge.slant", why: ["With this slant a string has no length."] };
  }
  return null;
}

function objectionToSaddle(instrument: Instrument, flatFromX: number): Objection | null {
  const { fan, fanFret } = instrument.neck;
  const { slant } = instrument.bridge;
  const field =
    Math.abs(fretToBridge(fan, fanFret)) > Math.abs(slant) ? "neck.fan" : "bridge.slant";
  for (const share of ends) {
    const x = saddlePlaceX(instrument, share);
    if (x > 0 && x < flatFromX) continue;
    const where: Phrase =
      x <= 0
        ? phrase`the saddle falls ${mm(-x)} beyond the tail end.`
        : phrase`the saddle stands ${mm(x - flatFromX)} past where the flat begins.`;
    return { field, why: [`On the ${share === 0 ? "bass" : "treble"} side `, ...where] };
  }
  return null;
}
