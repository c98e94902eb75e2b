import type { Units } from "../../instrument/length.ts";
import type { Row } from "../csv.ts";
import { outcomeMeasure } from "../figures/chart-measures.ts";
import {
  columns,
  isRowServed,
  limiterNames,
  type StickRow,
  saddleRange,
  standingOf,
} from "./stick-columns.ts";

/**
 * Instruments for a spreadsheet: each column of the table, how each outcome stands to its window, and what
 * limits the sticks. Numbers are numbers, of the unit in their column's heading.
 */
export function stickRowsForCsv(rows: readonly StickRow[], units: Units): readonly Row[] {
  const length = outcomeMeasure("shim", units);
  const sizeOf = (quantity: (typeof columns)[number]["quantity"]): number =>
    quantity === "length" ? length.size : 1;
  const unitOf = { text: "", length: ` (${length.unit})`, angle: " (°)" } as const;
  const inUnit = (value: number, size: number): number => Number((value / size).toFixed(6));
  return [
    [
      ...columns.flatMap(({ name, quantity, side }) => [
        `${name}${unitOf[quantity]}`,
        ...(side === "on" ? [`${name}: window`] : []),
      ]),
      `Saddle exposed, least of the strings (${length.unit})`,
      `Saddle exposed, most of the strings (${length.unit})`,
      "Served",
      "Limited below by",
      "Limited above by",
    ],
    ...rows.map((row): Row => {
      const { on, wants } = row;
      const [least, most] = on?.ok ? saddleRange(on.on.stringExposure) : [null, null];
      const range = wants === null || typeof wants.range === "string" ? null : wants.range;
      return [
        ...columns.flatMap((column) => {
          const value = column.read(row);
          const cell = typeof value === "number" ? inUnit(value, sizeOf(column.quantity)) : value;
          return column.side === "on" ? [cell, standingOf(row, column.key)] : [cell];
        }),
        least === null ? null : inUnit(least, length.size),
        most === null ? null : inUnit(most, length.size),
        isRowServed(row) ? "yes" : "no",
        range && limiterNames[range.low.by],
        range && limiterNames[range.high.by],
      ];
    }),
  ];
}
