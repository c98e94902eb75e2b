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
import { nameOf } from "../find-names.ts";

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

export type ColumnKey =
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
