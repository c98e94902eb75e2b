import type { Measure } from "../../drawing/charts/chart.ts";
import { styleOf } from "../../instrument/field-text.ts";
import type { FieldPath } from "../../instrument/fields.ts";
import { fieldAt } from "../../instrument/fields.ts";
import type { Range, TargetKind } from "../../instrument/instrument.ts";
import { formatLength, type Units } from "../../instrument/length.ts";
import { formatAngle } from "../../instrument/written-number.ts";
import { type OutcomeKey, outcomeNames } from "../../profile/comparison/outcomes.ts";
import { angle, dimension } from "./measures.ts";

const sizes = { mm: 1, in: 25.4, ft: 304.8 } as const;

const lengthUnit = (units: Units): "mm" | "in" => (units === "mm" ? "mm" : "in");

/** How a field is written on an axis and in a sentence. */
export function fieldMeasure(path: FieldPath, kind: TargetKind, units: Units): Measure {
  const field = fieldAt(path, kind);
  const { label: name, quantity } = field;
  if (quantity === "count") return { name, unit: "", size: 1, say: (value) => String(value) };
  if (quantity === "angle") return { name, unit: "°", size: 1, say: (value) => exactAngle(value) };
  const { unit } = styleOf(field, units);
  const decimals = unit === "mm" ? 3 : 4;
  return { name, unit, size: sizes[unit], say: (mm) => formatLength(mm, { unit, decimals }) };
}

const exactAngle = (degrees: number): string => formatAngle(degrees, 3);

/** How an outcome is written on an axis. */
export function outcomeMeasure(key: OutcomeKey, units: Units): Measure {
  const [name, quantity] = outcomeNames[key];
  if (quantity === "angle") return { name, unit: "°", size: 1, say: angle };
  const unit = lengthUnit(units);
  return { name, unit, size: sizes[unit], say: (mm) => sayLength(mm, units) };
}

/** Heights in always so many digits, so that columns and differences can be read across. */
function sayLength(mm: number, units: Units): string {
  if (Math.abs(mm) >= 100) return dimension(mm, units);
  return formatLength(mm, {
    unit: lengthUnit(units),
    decimals: units === "mm" ? 2 : 3,
    fixed: true,
  });
}

/** A range with its unit said once. */
export function saidRange([low, high]: Range, { say }: Measure): string {
  const first = say(low);
  const last = say(high);
  const unit = / \S+$/.exec(last)?.[0] ?? "";
  return `${unit !== "" && first.endsWith(unit) ? first.slice(0, -unit.length) : first} to ${last}`;
}

/** A difference, with its sign; "same" where none would show. */
export function difference(key: OutcomeKey, value: number, base: number, units: Units): string {
  const off = value - base;
  const said = outcomeMeasure(key, units).say(Math.abs(off));
  const nothing = outcomeMeasure(key, units).say(0);
  if (said === nothing) return "same";
  return `${off > 0 ? "+" : "−"}${said}`;
}

export const percent = (share: number): string => {
  const of100 = 100 * share;
  if (share === 1 || share === 0) return `${of100} %`;
  const decimals = of100 < 1 || of100 > 99 ? 2 : 1;
  const shown = of100.toFixed(decimals);
  if (Number(shown) === 100) return "over 99.99 %";
  return Number(shown) === 0 ? "under 0.01 %" : `${shown} %`;
};

export const counted = (value: number): string =>
  String(value).replace(/\B(?=(\d{3})+(?!\d))/g, " ");
