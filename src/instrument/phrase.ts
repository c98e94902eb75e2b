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
