import type { FieldPath } from "../../instrument/field.ts";
import { readField } from "../../instrument/field-path.ts";
import { fieldFigure, styleOf } from "../../instrument/field-text.ts";
import { fieldAt } from "../../instrument/fields.ts";
import type { Units } from "../../instrument/length.ts";
import { outcomeKeys, outcomeNames, windowOf } from "../../profile/sweep-outcome.ts";
import { standing } from "../../profile/window.ts";
import { outcomeMeasure } from "./measure-of.ts";
import type { Compared } from "./use-comparison.ts";

export type Row = readonly string[];

/** The comparison as rows of text: what is changed, then each outcome with its standing and its difference from the base. */
export function comparisonRows(
  compared: readonly Compared[],
  paths: readonly FieldPath[],
  units: Units,
): readonly Row[] {
  const [base] = compared;
  const basePlan = base?.plan.ok ? base.plan.profile : null;
  const head = [
    "",
    ...compared.flatMap(({ name }, i) =>
      i === 0 ? [name, "window"] : [name, "window", "difference"],
    ),
  ];
  const fieldRows = paths.map((path) => {
    const field = fieldAt(path, base?.instrument.target.kind ?? "shim");
    const unit =
      field.quantity === "length"
        ? styleOf(field, units).unit
        : field.quantity === "angle"
          ? "°"
          : "";
    const cells = compared.flatMap(({ instrument }, i) => {
      const figure = fieldFigure(readField(instrument, path), field, units);
      return i === 0 ? [figure, ""] : [figure, "", ""];
    });
    return [named(field.label, unit), ...cells];
  });
  const outcomeRows = outcomeKeys.map((key) => {
    const { unit, size } = outcomeMeasure(key, units);
    const figure = (value: number): string => String(Number((value / size).toFixed(4)));
    const cells = compared.flatMap(({ plan, instrument }, i) => {
      const value = plan.ok ? plan.profile[key] : null;
      const window = windowOf(instrument, key);
      const stands = value === null || window === null ? "" : standing(value, window);
      const from = basePlan?.[key] ?? null;
      const off = value === null || from === null ? "" : figure(value - from);
      const said = value === null ? "" : figure(value);
      return i === 0 ? [said, stands] : [said, stands, off];
    });
    return [named(outcomeNames[key][0], unit), ...cells];
  });
  return [head, ...fieldRows, ...outcomeRows];
}

const named = (name: string, unit: string): string => (unit === "" ? name : `${name}, ${unit}`);

/** Tab-separated, as a spreadsheet pastes it. */
export const tabbed = (rows: readonly Row[]): string =>
  rows.map((row) => row.map((cell) => cell.replace(/[\t\r\n]+/g, " ")).join("\t")).join("\n");

/** Comma-separated values (RFC 4180): quoted where a cell holds a comma, a quote or a line break. */
export const commaSeparated = (rows: readonly Row[]): string =>
  `${rows.map((row) => row.map(quoted).join(",")).join("\r\n")}\r\n`;

const quoted = (cell: string): string =>
  /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
