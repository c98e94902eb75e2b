import {
  formatLength,
  formatRadius,
  type LengthStyle,
  shownAtLeast,
  shownAtMost,
  type Units,
} from "./length.ts";
import { formatAngle } from "./written-number.ts";

/** The sentence in the reader's units. */
export function sayPhrase(phrase: Phrase, units: Units): string {
  return phrase
    .map((part) => (typeof part === "string" ? part : sayQuantity(part, units)))
    .join("");
}

/** One quantity in the reader's units, a limit rounded inward. */
export function sayQuantity(quantity: Quantity, units: Units): string {
  const { value: exact, as, round } = quantity;
  if (as === "count") return String(exact);
  if (as === "length" && Math.abs(exact) >= leastRadius && round === undefined)
    return formatRadius(exact, units);
  const style = styleOf(quantity, units);
  const value = shownValue(quantity, units);
  return as === "length"
    ? formatLength(value, style)
    : formatAngle(value, "decimals" in style ? style.decimals : 0);
}

/** The value that a limit, shown in these units, is shown as; any other quantity's own. */
export const shownValue = (quantity: Quantity, units: Units): number =>
  quantity.as === "count"
    ? quantity.value
    : rounded(quantity.value, styleOf(quantity, units), quantity.round);

/** Degrees are written in the decimals of a length in mm. */
const styleOf = ({ value, as }: Quantity, units: Units): LengthStyle =>
  as === "length"
    ? styleOfSize(Math.abs(value), units)
    : { unit: "mm", decimals: Math.abs(value) < 10 ? 2 : 1 };

function rounded(value: number, style: LengthStyle, round: Quantity["round"]): number {
  if (round === undefined) return value;
  return round === "up" ? shownAtLeast(value, style) : shownAtMost(value, style);
}

/** Longer than any guitar, mm: so long are only the radii. */
const leastRadius = 2000;

/**
 * Tenths of a millimetre, hundredths below one. In inches thousandths, or fractions where 1/64 in is
 * fine enough, and feet for the radii.
 */
function styleOfSize(size: number, units: Units): LengthStyle {
  if (units === "mm") return { unit: "mm", decimals: size < 1 ? 2 : 1 };
  if (size >= leastRadius) return { unit: "ft", decimals: 2 };
  return units === "in-fraction" && size >= 5
    ? { unit: "in", fraction: 64 }
    : { unit: "in", decimals: 3 };
}

/** A number inside a sentence, kept apart so that it can be shown in the reader's units. */
export interface Quantity {
  readonly value: number;
  readonly as: "length" | "angle" | "count";
  /** Present on a limit: which way it may be rounded, so that the number shown is still within it. */
  readonly round?: "up" | "down";
}

/** A sentence as data: words and quantities in order. The core speaks in these; a view turns them to text. */
export type Phrase = readonly (string | Quantity)[];

export const mm = (value: number): Quantity => ({ value, as: "length" });
export const deg = (value: number): Quantity => ({ value, as: "angle" });
export const count = (value: number): Quantity => ({ value, as: "count" });

/** A least value: never shown smaller than it is. */
export const roundedUp = (limit: Quantity): Quantity => ({ ...limit, round: "up" });
/** A greatest value: never shown larger than it is. */
export const roundedDown = (limit: Quantity): Quantity => ({ ...limit, round: "down" });

/** `phrase\`the flat runs ${mm(52)} past the break\``: a template tag, so that sentences read as written. */
export function phrase(words: TemplateStringsArray, ...quantities: readonly Quantity[]): Phrase {
  const parts: (string | Quantity)[] = [];
  words.forEach((text, i) => {
    if (text !== "") parts.push(text);
    const quantity = quantities[i];
    if (quantity !== undefined) parts.push(quantity);
  });
  return parts;
}
