import type { Measure } from "../../drawing/charts/chart.ts";
import { readField } from "../../instrument/field-value.ts";
import type { FieldPath } from "../../instrument/fields.ts";
import { fieldAt } from "../../instrument/fields.ts";
import type { Units } from "../../instrument/length.ts";
import {
  type OutcomeKey,
  outcomeIn,
  outcomeKeys,
  windowOf,
} from "../../profile/comparison/outcomes.ts";
import { standing } from "../../profile/standing.ts";
import type { Cell, Row } from "../csv.ts";
import { methodNames } from "../fields/method-fields.tsx";
import { fieldMeasure, outcomeMeasure } from "../figures/chart-measures.ts";
import type { Compared } from "./use-comparison.ts";

/** A column's value, how it stands to its window, and its difference from the base. */
type ColumnCells = readonly [value: Cell, window?: Cell, difference?: Cell];

/**
 * The comparison for a spreadsheet: what each column aims for, the fields that are changed, and each
 * outcome. Numbers are numbers, of the unit in their row's heading; the base has no difference column.
 */
export function comparisonRows(
  compared: readonly Compared[],
  paths: readonly FieldPath[],
  units: Units,
): readonly Row[] {
  const [base] = compared;
  const row = (heading: string, cellsOf: (column: Compared) => ColumnCells): Row => [
    heading,
    ...compared.flatMap((column) => {
      const [value, window = null, difference = null] = cellsOf(column);
      return column === base ? [value, window] : [value, window, difference];
    }),
  ];
  const aim = ({ instrument: { target } }: Compared): Measure =>
    fieldMeasure("target.value", target.kind, units);
  return [
    row("", ({ name }) => [name, `${name}: window`, `${name}: difference from the base`]),
    row("Where the flat is sanded", ({ instrument }) => [
      methodNames[instrument.dome.method].short,
    ]),
    row("Aims for", (column) => [withUnit(aim(column))]),
    row("Target value", (column) => [inUnit(column.instrument.target.value, aim(column))]),
    ...paths.map((path) => {
      const kind = base?.instrument.target.kind ?? "shim";
      const measure = fieldMeasure(path, kind, units);
      return row(withUnit(measure), ({ instrument }) => {
        const value = readField(instrument, path);
        return [value === null ? (fieldAt(path, kind).nullWord ?? null) : inUnit(value, measure)];
      });
    }),
    ...outcomeKeys.map((key) => {
      const measure = outcomeMeasure(key, units);
      return row(withUnit(measure), (column) => outcomeCells(column, base, key, measure));
    }),
  ];
}

function outcomeCells(
  { plan, instrument }: Compared,
  base: Compared | undefined,
  key: OutcomeKey,
  measure: Measure,
): ColumnCells {
  const value = plan.ok ? outcomeIn(plan.profile, key) : null;
  if (value === null) return [null];
  const window = windowOf(instrument, key);
  const from = base?.plan.ok ? outcomeIn(base.plan.profile, key) : null;
  return [
    inUnit(value, measure),
    window === null ? null : standing(value, window),
    from === null ? null : inUnit(value - from, measure),
  ];
}

const withUnit = ({ name, unit }: Measure): string => (unit === "" ? name : `${name} (${unit})`);

const inUnit = (value: number, { size }: Measure): number => Number((value / size).toFixed(6));
