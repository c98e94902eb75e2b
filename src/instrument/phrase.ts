/** A number inside a sentence, kept apart so that it can be shown in the reader's units. */
export interface Quantity {
  readonly value: number;
  readonly as: "length" | "angle" | "count";
}

/** A sentence as data: words and quantities in order. The core speaks in these; a view turns them to text. */
export type Phrase = readonly (string | Quantity)[];

export const mm = (value: number): Quantity => ({ value, as: "length" });
export const deg = (value: number): Quantity => ({ value, as: "angle" });
export const count = (value: number): Quantity => ({ value, as: "count" });

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
