import type { Field } from "./field.ts";
import { type LengthStyle, lengthFigure, parseLength, type Units } from "./length.ts";
import {
  decimalText,
  parseAngle,
  plainText,
  readNumber,
  type WrittenNumber,
} from "./written-number.ts";

type ParsedField =
  | { readonly ok: true; readonly value: number | null }
  | { readonly ok: false; readonly why: string };

/** A whole number. */
export function parseCount(text: string): WrittenNumber {
  const read = readNumber(plainText(text));
  return read.ok && !Number.isInteger(read.value)
    ? { ok: false, why: "This must be a whole number." }
    : read;
}

/**
 * How a field's length is shown. In fractions, only where a press of the stepper is not finer than
 * they are: an action is given in thousandths then, a relief in tenths of them.
 */
export function styleOf({ step, usual }: Field, units: Units): LengthStyle {
  if (units === "mm") return { unit: "mm", decimals: 2 };
  if (usual !== undefined) return { unit: usual, decimals: 2 };
  return units === "in-fraction" && step >= 25.4 / 64
    ? { unit: "in", fraction: 64 }
    : { unit: "in", decimals: step < 0.0254 ? 4 : 3 };
}

/** What a text that states its own unit has in it. */
const ownUnit = /[\p{L}°"'″′]/u;

/** The unit written after what a field shows; none after a count, or after a text that states its own. */
export function unitAfter(text: string, field: Field, units: Units): string {
  if (ownUnit.test(text)) return "";
  if (field.quantity === "angle") return "°";
  return field.quantity === "length" ? styleOf(field, units).unit : "";
}

/** What was typed into a field, in mm, degrees or a count; null for the field's own word for it. Ranges are not checked here. */
export function parseField(text: string, field: Field, units: Units): ParsedField {
  if (field.nullWord !== undefined && plainText(text) === field.nullWord)
    return { ok: true, value: null };
  if (field.quantity === "angle") return parseAngle(text);
  if (field.quantity === "count") return parseCount(text);
  const length = parseLength(text, styleOf(field, units).unit);
  return length.ok ? { ok: true, value: length.mm } : length;
}

/** What a field shows for `value`, without its unit. */
export function fieldFigure(value: number | null, field: Field, units: Units): string {
  if (value === null) return field.nullWord ?? "";
  return field.quantity === "length"
    ? lengthFigure(value, styleOf(field, units))
    : decimalText(value, field.quantity === "angle" ? 2 : 0);
}
