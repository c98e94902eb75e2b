import type { Standing } from "../../profile/standing.ts";
import { byName, hasWords } from "../find-names.ts";
import {
  type Column,
  type ColumnKey,
  columns,
  isRowServed,
  type StickRow,
  standingOf,
} from "./stick-columns.ts";

/** Which rows are shown, and in what order. */
export interface RowChoice {
  readonly words: string;
  /** A model's id: it and what was made from it alone. */
  readonly model: string | null;
  readonly show: "all" | "served" | "unserved" | "ticked";
  readonly by: ColumnKey;
  readonly descending: boolean;
  /** Rows whose value of `column` is out of `least` to `most` are left out; null leaves that end open. */
  readonly filter: {
    readonly column: ColumnKey | "none";
    readonly least: number | null;
    readonly most: number | null;
    readonly stands: Standing | "any";
  };
}

export const firstChoice: RowChoice = {
  ...{ words: "", model: null, show: "all", by: "name", descending: false },
  filter: { column: "none", least: null, most: null, stands: "any" },
};

/** The rows chosen, in order. What has no value of the column comes last either way. */
export function chosenRows(
  rows: readonly StickRow[],
  { words, model, show, by, descending, filter }: RowChoice,
  isTicked: (id: string) => boolean,
): readonly StickRow[] {
  const found = rows.filter(
    (row) =>
      hasWords(row.instrument.name, words) &&
      (model === null || row.model === model || row.instrument.id === model) &&
      (show !== "ticked" || isTicked(row.instrument.id)) &&
      (show !== "served" || isRowServed(row)) &&
      (show !== "unserved" || !isRowServed(row)) &&
      passes(row, filter),
  );
  const column = columns.find(({ key }) => key === by);
  return column === undefined ? found : found.toSorted(ordering(column, descending));
}

function passes(row: StickRow, { column, least, most, stands }: RowChoice["filter"]): boolean {
  const of = columns.find(({ key }) => key === column);
  if (of === undefined) return true;
  const value = of.read(row);
  if (typeof value !== "number") return false;
  if ((least !== null && value < least) || (most !== null && value > most)) return false;
  return stands === "any" || standingOf(row, of.key) === stands;
}

const ordering =
  ({ read }: Column, descending: boolean) =>
  (a: StickRow, b: StickRow): number => {
    const [one, other] = [read(a), read(b)];
    const alike = byName(a.instrument.name, b.instrument.name);
    if (one === null || other === null) return one === other ? alike : one === null ? 1 : -1;
    const order =
      typeof one === "number" && typeof other === "number"
        ? one - other
        : byName(String(one), String(other));
    return (descending ? -order : order) || alike;
  };
