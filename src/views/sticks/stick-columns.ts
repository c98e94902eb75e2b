import type { Instrument, Range, WindowKind } from "../../instrument/instrument.ts";
import type { Units } from "../../instrument/length.ts";
import { windowKinds } from "../../instrument/outcome-fields.ts";
import { outcomeNames } from "../../profile/comparison/outcomes.ts";
import { type Standing, standing } from "../../profile/standing.ts";
import { isServed, type OnStickResult } from "../../profile/sticks/on-stick.ts";
import type { Limiter } from "../../profile/sticks/shim-range.ts";
import type { StickWants } from "../../profile/sticks/wanted-stick.ts";
import type { OwnedStick } from "../../store/files/sticks-form.ts";
import { outcomeMeasure } from "../figures/chart-measures.ts";
import { byName, hasWords, nameOf } from "../find-names.ts";

/** An instrument with what the stick tried gives of it and what it wants; null where that is not worked out yet. */
export interface StickRow {
  readonly instrument: Instrument;
  /** The id of the model it was made from; null where there was none. */
  readonly model: string | null;
  readonly on: OnStickResult | null;
  readonly wants: StickWants | null;
}

/** The two sides of the table: what the stick tried does on each, and what each wants. */
export type Side = "on" | "wants";

type ColumnKey =
  | "name"
  | WindowKind
  | "overrunLength"
  | "wanted"
  | "low"
  | "high"
  | "off"
  | "atBridge"
  | "atSaddle";

export interface Column {
  readonly key: ColumnKey;
  /** Null: on both. */
  readonly side: Side | null;
  readonly name: string;
  readonly quantity: "text" | "length" | "angle";
  /** mm or degrees; null where there is none. */
  readonly read: (row: StickRow) => number | string | null;
}

/** The windowed outcomes in the order of cause, as the table and its pictures have them. */
export const onStickKinds = [
  "pitch",
  "bridgeClearance",
  "stringHeight",
  "saddleExposure",
  "breakAngle",
] as const satisfies readonly WindowKind[];

const onColumn = (key: WindowKind | "overrunLength"): Column => ({
  key,
  side: "on",
  name: key === "overrunLength" ? "Overrun" : outcomeNames[key][0],
  quantity: outcomeNames[key][1],
  read: ({ on }) => (on?.ok ? on.on[key] : null),
});

const wantsColumn = (
  key: ColumnKey,
  name: string,
  read: (wants: StickWants) => number | null,
): Column => ({
  ...{ key, name, side: "wants", quantity: "length" },
  read: ({ wants }) => (wants === null ? null : read(wants)),
});

export const columns: readonly Column[] = [
  {
    ...{ key: "name", side: null, name: "Instrument", quantity: "text" },
    read: ({ instrument }) => nameOf(instrument.name),
  },
  ...onStickKinds.map(onColumn),
  onColumn("overrunLength"),
  wantsColumn("wanted", "Stick wanted", ({ wanted }) => wanted),
  wantsColumn("low", "Serves from", ({ range }) =>
    typeof range === "string" ? null : range.low.shim,
  ),
  wantsColumn("high", "Serves up to", ({ range }) =>
    typeof range === "string" ? null : range.high.shim,
  ),
  wantsColumn("off", "Nearest of mine, thicker by", ({ nearest }) => nearest?.off ?? null),
  wantsColumn("atBridge", "At the bridge", ({ nearest }) => nearest?.cost?.bridgeClearance ?? null),
  wantsColumn("atSaddle", "At the saddle", ({ nearest }) => nearest?.cost?.saddleExposure ?? null),
];

/** How an outcome on a stick stands to its window, or an overrun to none; null where there is no such. */
export function standingOf({ instrument, on }: StickRow, key: ColumnKey): Standing | null {
  if (on === null || !on.ok) return null;
  if (key === "overrunLength") return on.on.overrunLength > 0 ? "outside" : "within";
  const kind = windowKinds.find((one) => one === key);
  return kind === undefined ? null : standing(on.on[kind], instrument.windows[kind]);
}

export const isRowServed = ({ instrument, on }: StickRow): boolean =>
  on?.ok === true && isServed(instrument, on.on);

/** The least and the most of the saddle over its strings, mm. */
export const saddleRange = (exposures: readonly number[]): Range => [
  Math.min(...exposures),
  Math.max(...exposures),
];

/** What a stick owned is called: its own name, or its place among them. */
export const stickName = ({ name }: OwnedStick, i: number): string =>
  name.trim() === "" ? `stick ${i + 1}` : name;

export const sayLength = (mm: number, units: Units): string =>
  outcomeMeasure("shim", units).say(mm);

/** What ends a range of thicknesses, in a word or two. */
export const limiterNames: Readonly<Record<Limiter, string>> = {
  bridgeClearance: outcomeNames.bridgeClearance[0].toLowerCase(),
  saddleExposure: outcomeNames.saddleExposure[0].toLowerCase(),
  stringHeight: outcomeNames.stringHeight[0].toLowerCase(),
  breakAngle: outcomeNames.breakAngle[0].toLowerCase(),
  pitch: outcomeNames.pitch[0].toLowerCase(),
  overrun: "overrun",
  reach: "reach of the rim",
};

/** Why an instrument has no row of figures. */
export function noFigures(on: OnStickResult | null, units: Units): string {
  if (on === null) return "…";
  if (on.ok) return "";
  if (on.why === "no-stick") return "Made without a stick: its seat is sanded on the glued top.";
  if (on.why === "no-plan") return "It has no plan; Layout says why.";
  const [low, high] = on.reach;
  return `Takes ${sayLength(low, units)} to ${sayLength(high, units)}.`;
}

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
