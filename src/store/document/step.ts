import type { Field } from "../../instrument/field.ts";
import { styleOf } from "../../instrument/field-text.ts";
import type { Units } from "../../instrument/length.ts";

/** A step as `unit · parts / of`, so that a multiple of it comes out as the number a reader would type. */
interface Grid {
  readonly unit: number;
  readonly parts: number;
  readonly of: number;
}

// A number plus 0 is never −0, which would come back from a file as 0.

/** `value` moved by whole steps to round figures in the units shown, within the field's limits. */
export function stepped(value: number, field: Field, units: Units, steps: number): number {
  const grid = gridOf(field, units);
  const at = ((value / grid.unit) * grid.of) / grid.parts;
  const slack = 1e-6;
  const from = steps > 0 ? Math.floor(at + slack) : Math.ceil(at - slack);
  const next = (((from + steps) * grid.parts) / grid.of) * grid.unit;
  return Math.min(field.max, Math.max(field.min, next)) + 0;
}

/** `value` at the nearest of the same round figures, for what is dragged. */
export function snapped(value: number, field: Field, units: Units): number {
  const { unit, parts, of } = gridOf(field, units);
  const next = ((Math.round(((value / unit) * of) / parts) * parts) / of) * unit;
  return Math.min(field.max, Math.max(field.min, next)) + 0;
}

function gridOf(field: Field, units: Units): Grid {
  const { step, quantity, usual } = field;
  if (quantity !== "length" || units === "mm") return usual === "ft" ? feet : plain(step);
  const style = styleOf(field, units);
  if (style.unit === "ft") return feet;
  if ("fraction" in style)
    return { unit: 25.4, parts: powerOfTwo((step / 25.4) * style.fraction), of: style.fraction };
  return { unit: 25.4, parts: roundFigure((step / 25.4) * 1000), of: 1000 };
}

const feet: Grid = { unit: 304.8, parts: 1, of: 1 };

function plain(step: number): Grid {
  const of = step < 1 ? Math.round(1 / step) : 1;
  return { unit: 1, parts: Math.max(1, Math.round(step * of)), of };
}

const powerOfTwo = (parts: number): number => 2 ** Math.max(0, Math.round(Math.log2(parts)));

/** 1, 2 or 5 with noughts, nearest to `parts` and no less than 1. */
function roundFigure(parts: number): number {
  const decade = 10 ** Math.floor(Math.log10(Math.max(1, parts)));
  const leading = parts / decade;
  if (leading < 1.5) return decade;
  if (leading < 3.5) return 2 * decade;
  return leading < 7.5 ? 5 * decade : 10 * decade;
}
