import type { FieldPath } from "../instrument/field.ts";
import { readField, writeField } from "../instrument/field-path.ts";
import { fieldAt } from "../instrument/fields.ts";
import type { Instrument } from "../instrument/instrument.ts";

/**
 * The value of one field nearest to its own for which `works` holds; null when none was found within
 * the field's limits. Looks outward both ways in steps that grow by a tenth, then halves back to the
 * boundary and returns its working side.
 */
export function nearestWorking(
  instrument: Instrument,
  field: FieldPath,
  works: (changed: Instrument) => boolean,
): number | null {
  const { min, max, quantity } = fieldAt(field, instrument.target.kind);
  const own = readField(instrument, field);
  if (own === null) return null;
  const tried = (value: number): boolean => works(writeField(instrument, field, value));
  const found = [min, max]
    .map((end) => firstWorking(own, end, tried, quantity === "count"))
    .filter((value) => value !== null)
    .sort((a, b) => Math.abs(a - own) - Math.abs(b - own));
  return found[0] ?? null;
}

function firstWorking(
  own: number,
  end: number,
  works: (value: number) => boolean,
  whole: boolean,
): number | null {
  const span = Math.abs(end - own);
  const way = Math.sign(end - own);
  let fails = own;
  let off = whole ? 1 : Math.max(1e-3, 1e-6 * Math.abs(own));
  while (off < span * 1.1) {
    const value = own + way * Math.min(off, span);
    if (works(value)) return whole ? value : boundary(fails, value, works);
    fails = value;
    off = whole ? off + 1 : off * 1.1;
  }
  return null;
}

function boundary(fails: number, works: number, test: (value: number) => boolean): number {
  let [outside, inside] = [fails, works];
  for (let halving = 0; halving < 60; halving++) {
    const middle = (outside + inside) / 2;
    if (test(middle)) inside = middle;
    else outside = middle;
  }
  return inside;
}
