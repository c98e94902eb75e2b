import { formatAngle } from "./angle.ts";
import { formatLength, type LengthStyle, shownAtLeast, shownAtMost, type Units } from "./length.ts";
import type { Phrase, Quantity } from "./phrase.ts";

/** The sentence in the reader's units. */
export function sayPhrase(phrase: Phrase, units: Units): string {
  return phrase
    .map((part) => (typeof part === "string" ? part : sayQuantity(part, units)))
    .join("");
}

/** One quantity in the reader's units, a limit rounded inward. */
export function sayQuantity({ value, as, round }: Quantity, units: Units): string {
  if (as === "count") return String(value);
  if (as === "length") {
    const style = styleOfSize(Math.abs(value), units);
    return formatLength(rounded(value, style, round), style);
  }
  const decimals = Math.abs(value) < 10 ? 2 : 1;
  return formatAngle(rounded(value, { unit: "mm", decimals }, round), decimals);
}

function rounded(value: number, style: LengthStyle, round: Quantity["round"]): number {
  if (round === undefined) return value;
  return round === "up" ? shownAtLeast(value, style) : shownAtMost(value, style);
}

/**
 * Tenths of a millimetre, hundredths below one. In inches thousandths, or fractions where 1/64 in is
 * fine enough, and feet for what is longer than any guitar: the radii.
 */
function styleOfSize(size: number, units: Units): LengthStyle {
  if (units === "mm") return { unit: "mm", decimals: size < 1 ? 2 : 1 };
  if (size >= 2000) return { unit: "ft", decimals: 2 };
  return units === "in-fraction" && size >= 5
    ? { unit: "in", fraction: 64 }
    : { unit: "in", decimals: 3 };
}
