import { readField, writeField } from "../instrument/field-value.ts";
import type { FieldPath } from "../instrument/fields.ts";
import { fieldAt } from "../instrument/fields.ts";
import type { Instrument, Range } from "../instrument/instrument.ts";

/**
 * The value of one field nearest to its own for which `works` holds; null when none was found within
 * the field's limits and those given. Looks outward both ways in steps that grow by an eighth, up to a hundredth of
 * the way where that is not a radius's endless one, then halves back to the boundary and returns its
 * working side. What works over a narrower stretch than a step may be missed.
 */
export function nearestWorking(
  instrument: Instrument,
  field: FieldPath,
  works: (changed: Instrument) => boolean,
  [low, high]: Range = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY],
): number | null {
  const { min, max, quantity } = fieldAt(field, instrument.target.kind);
  const own = readField(instrument, field);
  if (own === null) return null;
  const tried = (value: number): boolean => works(writeField(instrument, field, value));
  const found = [Math.max(min, low), Math.min(max, high)]
    .map((end) => firstWorking(own, end, tried, quantity === "count"))
    .filter((value) => value !== null)
    .sort((a, b) => Math.abs(a - own) - Math.abs(b - own));
  return found[0] ?? null;
}

/** Longer ways, mm, are those of radii, and are taken in growing steps to the end. */
const endless = 1e5;

function firstWorking(
  own: number,
  end: number,
  works: (value: number) => boolean,
  whole: boolean,
): number | null {
  const span = Math.abs(end - own);
  const way = Math.sign(end - own);
  const longest = span < endless ? span / 100 : span;
  let fails = own;
  let off = whole ? 1 : Math.max(0.01, 1e-4 * Math.abs(own));
  while (fails !== end) {
    const value = off < span ? own + way * off : end;
    if (works(value)) return whole ? value : boundary(fails, value, works);
    fails = value;
    off = whole ? off + 1 : Math.min(off * 1.125, off + longest);
  }
  return null;
}

/** Halves back to the boundary, closer than a bench or a screen could tell. */
function boundary(fails: number, works: number, test: (value: number) => boolean): number {
  let [outside, inside] = [fails, works];
  while (Math.abs(inside - outside) > 1e-9 + 1e-12 * Math.abs(inside)) {
    const middle = (outside + inside) / 2;
    if (test(middle)) inside = middle;
    else outside = middle;
  }
  return inside;
}
