/** Degrees as people write them: `1.2`, `1,2`, `1.2°`, `1.2 deg`. */
export function parseAngle(text: string): WrittenNumber {
  return readNumber(plainText(text).replace(/ ?(°|º|deg\.?|degrees?)$/, ""));
}

/** Degrees with their sign, such as `1.38°`; no idle zeros unless `fixed`. */
export function formatAngle(degrees: number, decimals: number, fixed = false): string {
  return `${decimalText(degrees, decimals, fixed)}°`;
}

export type WrittenNumber =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly why: string };

/** The same text in plain signs: one kind of minus, prime, quote and space, none that cannot be seen, fractions written out, lower case. */
export function plainText(text: string): string {
  return text
    .replace(/[\u00ad\u200b-\u200f\u2060\ufeff]/g, "")
    .replace(/[¼-¾⅐-⅞]/g, (sign) => ` ${sign.normalize("NFKC")} `)
    .replace(/⁄/g, "/")
    .replace(/[‐‑‒–—−﹣-]/g, "-")
    .replace(/[‘’′ʹ]/g, "'")
    .replace(/[“”„″ʺ]|''/g, '"')
    .replace(/\s+/g, " ")
    .trim()
    .toLowerCase();
}

/** Characters in a number; no number that short is infinite. */
const longest = 60;

/**
 * A number as people write it, after `plainText`: `7.5`, `7,5`, `5/16`, `19 3/8`, `19-3/8`, each with a
 * sign or without. Refuses what can be read two ways, such as `1,234`.
 */
export function readNumber(text: string): WrittenNumber {
  if (text.length > longest) return no("This is too long to be a number.");
  const [, sign, digits] = /^([+-]?) ?(.*)$/.exec(text) ?? [];
  if (sign !== "" && /^[+-]/.test(digits ?? "")) return no("Write one sign before the number.");
  const size = readSize(digits ?? "");
  return size.ok && sign === "-" ? { ok: true, value: 0 - size.value } : size;
}

function readSize(text: string): WrittenNumber {
  const fraction = /^(?:(\d+)(?: | ?- ?))?(\d+) ?\/ ?(\d+)$/.exec(text);
  if (fraction) return readFraction(fraction[1], Number(fraction[2]), Number(fraction[3]));
  if (/^[1-9]\d{0,2},\d{3}$/.test(text)) {
    const [whole, part] = text.split(",");
    return no(`${text} can be read two ways: write ${whole}.${part} or ${whole}${part}.`);
  }
  if (/^(\d+[.,]?\d*|[.,]\d+)$/.test(text))
    return { ok: true, value: Number(text.replace(",", ".")) };
  if (/^[\d., ]*\d[., ]+\d[\d., ]*$/.test(text))
    return no("Write one number with one decimal mark and nothing between its digits.");
  return no(text === "" ? "There is no number here." : `“${text}” is not a number.`);
}

function readFraction(whole: string | undefined, above: number, below: number): WrittenNumber {
  if (below === 0) return no("A fraction cannot be over 0.");
  if (whole !== undefined && above >= below)
    return no(`After a whole number the fraction must be less than one; ${above}/${below} is not.`);
  return { ok: true, value: Number(whole ?? 0) + above / below };
}

function no(why: string): WrittenNumber {
  return { ok: false, why };
}

/** `value` in digits, to `decimals`; without idle zeros unless `fixed`. Never `-0`. */
export function decimalText(value: number, decimals: number, fixed = false): string {
  const digits = Math.abs(value).toFixed(decimals);
  const shown = fixed || !digits.includes(".") ? digits : digits.replace(/\.?0+$/, "");
  return value < 0 && Number(digits) !== 0 ? `−${shown}` : shown;
}
