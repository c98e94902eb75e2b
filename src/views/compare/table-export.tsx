import { useState } from "react";
import type { FieldPath } from "../../instrument/field.ts";
import { fieldFigure, styleOf } from "../../instrument/field-text.ts";
import { fieldAt, readField } from "../../instrument/fields.ts";
import type { Units } from "../../instrument/length.ts";
import { outcomeKeys, outcomeNames, windowOf } from "../../profile/comparison/outcomes.ts";
import { standing } from "../../profile/standing.ts";
import { fileName, saveFile } from "../save-file.ts";
import { useRimwright } from "../store-context.ts";
import { outcomeMeasure } from "./chart-measures.ts";
import type { Compared } from "./use-comparison.ts";

export type Row = readonly string[];

/** The comparison as rows of text: what is changed, then each outcome with its standing and its difference from the base. */
function comparisonRows(
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
const tabbed = (rows: readonly Row[]): string =>
  rows.map((row) => row.map((cell) => cell.replace(/[\t\r\n]+/g, " ")).join("\t")).join("\n");

/** Comma-separated values (RFC 4180): quoted where a cell holds a comma, a quote or a line break. */
const commaSeparated = (rows: readonly Row[]): string =>
  `${rows.map((row) => row.map(quoted).join(",")).join("\r\n")}\r\n`;

const quoted = (cell: string): string =>
  /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;

interface Props {
  readonly compared: readonly Compared[];
  readonly paths: readonly FieldPath[];
}

/** The table to paste, to save, and to print. */
export function TableExport({ compared, paths }: Props) {
  const units = useRimwright((state) => state.choices.units);
  const name = useRimwright((state) => state.instrument.name);
  const [copied, setCopied] = useState<"no" | "yes" | "refused">("no");
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(tabbed(comparisonRows(compared, paths, units)));
      setCopied("yes");
    } catch {
      setCopied("refused");
    }
  };
  const save = (): void =>
    saveFile(
      fileName(name, "comparison", "csv"),
      "text/csv",
      commaSeparated(comparisonRows(compared, paths, units)),
    );
  return (
    <div className="export">
      <button type="button" onClick={copy}>
        Copy the table
      </button>
      <button type="button" onClick={save}>
        Save as CSV
      </button>
      <button type="button" onClick={() => window.print()}>
        Print
      </button>
      <span role="status">
        {copied === "yes" && "Copied, tab-separated."}
        {copied === "refused" && "The browser does not let this page copy: save it as CSV."}
      </span>
    </div>
  );
}
