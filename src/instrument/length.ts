import { decimalText, plainText, readNumber } from "./written-number.ts";

/** How a builder has lengths shown. It never changes a stored one, which is in mm. */
export type Units = "mm" | "in" | "in-fraction";

/** How one length is shown: in `unit` to so many decimals (idle zeros only if `fixed`), or to 1/64 in. */
export type LengthStyle =
  | { readonly unit: "mm" | "in" | "ft"; readonly decimals: number; readonly fixed?: boolean }
  | { readonly unit: "in"; readonly fraction: 64 };

export type ParsedLength =
  | { readonly ok: true; readonly mm: number }
  | { readonly ok: false; readonly why: string };

/** 1 in = 25.4 mm exactly (international yard and pound agreement, 1959). */
const millimetresIn = { mm: 1, cm: 10, in: 25.4, ft: 304.8 } as const;

type WrittenUnit = keyof typeof millimetresIn;

/** By way of inches for feet: then 28 1/2 ft and 342 in are the same number. */
function inMillimetres(value: number, unit: WrittenUnit): number {
  return unit === "ft" ? value * 12 * millimetresIn.in : value * millimetresIn[unit];
}

const unitSigns: readonly (readonly [RegExp, WrittenUnit])[] = [
  [/mm$|millimet(re|er)s?$/, "mm"],
  [/cm$|centimet(re|er)s?$/, "cm"],
  [/"$|in\.?$|inch(es)?$/, "in"],
  [/'$|ft\.?$|foot$|feet$/, "ft"],
];

/**
 * A length as people write it: `7,5`, `19-3/8"`, `28' 6 1/2"`, `2 cm`. A bare number is in `bare`.
 * Says why in a plain sentence when it cannot be read or can be read two ways.
 */
export function parseLength(text: string, bare: LengthStyle["unit"]): ParsedLength {
  const plain = plainText(text);
  const grouped = /^[+-]? ?(\d{1,3})'(\d{3})(?!\d)/.exec(plain);
  if (grouped)
    return {
      ok: false,
      why: `${grouped[1]}'${grouped[2]} can be read two ways: write ${grouped[1]}${grouped[2]}, or ${grouped[1]} ft.`,
    };
  const feetAndInches = /^([+-]?) ?(\d+) ?(?:'|ft\.?|foot|feet)(?: ?- ?| )?(\d.*|[.,]\d.*)$/.exec(
    plain,
  );
  if (feetAndInches) {
    const [, sign = "", feet = "", inches = ""] = feetAndInches;
    return parseFeetAndInches(sign, Number(feet), inches);
  }
  for (const [sign, unit] of unitSigns)
    if (sign.test(plain)) return inUnit(plain.replace(sign, "").trimEnd(), unit);
  const stranger = /\d ?([a-z][a-z.]*)$/.exec(plain)?.[1];
  if (stranger !== undefined)
    return { ok: false, why: `“${stranger}” is not a unit read here: use mm, cm, in or ft.` };
  return inUnit(plain, bare);
}

function inUnit(number: string, unit: WrittenUnit): ParsedLength {
  const read = readNumber(number);
  return read.ok ? { ok: true, mm: inMillimetres(read.value, unit) } : read;
}

function parseFeetAndInches(sign: string, feet: number, text: string): ParsedLength {
  const inches = readNumber(text.replace(/ ?("|in\.?|inch(es)?)$/, ""));
  if (!inches.ok) return inches;
  if (inches.value >= 12)
    return { ok: false, why: "After feet there must be less than 12 inches." };
  const mm = inMillimetres(feet * 12 + inches.value, "in");
  return { ok: true, mm: sign === "-" ? 0 - mm : mm };
}

/** `mm` as text with its unit, such as `7.5 mm`, `19 3/8 in` or `28 ft`; `parseLength` reads it back. */
export function formatLength(mm: number, style: LengthStyle): string {
  return `${lengthFigure(mm, style)} ${style.unit}`;
}

/** The same without the unit, for a field that shows its unit beside it. */
export function lengthFigure(mm: number, style: LengthStyle): string {
  const value = mm / millimetresIn[style.unit];
  return "fraction" in style
    ? fractionText(Math.round(value * style.fraction), style.fraction)
    : decimalText(value, style.decimals, style.fixed);
}

/** A radius as dishes are marked: in feet, after the millimetres where those are shown, `8534 mm (28 ft)`. */
export function formatRadius(mm: number, units: Units): string {
  const feet = formatLength(mm, { unit: "ft", decimals: 2 });
  return units === "mm" ? `${formatLength(mm, { unit: "mm", decimals: 0 })} (${feet})` : feet;
}

/** The nearest 1/64 in, such as `19/64 in`. */
export function nearest64(mm: number): string {
  return formatLength(mm, { unit: "in", fraction: 64 });
}

/** `parts`/`of` in lowest terms as a mixed number; `of` is a power of two. */
function fractionText(parts: number, of: number): string {
  const size = Math.abs(parts);
  const whole = Math.floor(size / of);
  let [above, below] = [size % of, of];
  while (above > 0 && above % 2 === 0) [above, below] = [above / 2, below / 2];
  const fraction = above === 0 ? "" : `${above}/${below}`;
  const shown = whole === 0 && fraction !== "" ? fraction : `${whole} ${fraction}`.trim();
  return parts < 0 ? `−${shown}` : shown;
}

/** The least length not under `mm` that the style can show, so that typing what is shown gives no less. */
export function shownAtLeast(mm: number, style: LengthStyle): number {
  return shownBeyond(mm, style, 1);
}

/** The greatest length not over `mm` that the style can show. */
export function shownAtMost(mm: number, style: LengthStyle): number {
  return shownBeyond(mm, style, -1);
}

function shownBeyond(mm: number, style: LengthStyle, way: 1 | -1): number {
  const parts = "fraction" in style ? style.fraction : 10 ** style.decimals;
  const nearest = Math.round((mm / millimetresIn[style.unit]) * parts);
  // Divided as the reader divides, so that it is the very number read back.
  const shown = [0, 1].map((more) => inMillimetres((nearest + way * more) / parts, style.unit));
  return shown.find((value) => way * (value - mm) >= 0) ?? mm;
}
