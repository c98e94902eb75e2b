import { endsSomewhere } from "../../drawing/plan-sheet.ts";
import type { Station } from "../../profile/outcome.ts";
import { comesOffAt } from "../../profile/side.ts";
import type { Rim } from "./use-rim.ts";

/** A line of the table: a station with what comes off there in all, and what it is known by. */
export interface RimRow
  extends Pick<Station, "x" | "halfWidth" | "arcLength" | "sideDepth" | "zone"> {
  readonly names: readonly string[];
  readonly off: number;
}

/** Nearer than this along the side, two places are one, mm. */
const one = 0.5;

/** The stations, and among them the places where most and least comes off. */
export function rowsOf({ setting, profile, side }: Rim): readonly RimRow[] {
  const { stations, rimOffset, maxRemovalX, leastRemovalX } = profile;
  const extremes = [
    { name: "most comes off", x: maxRemovalX },
    ...(endsSomewhere(profile) ? [{ name: "least comes off", x: leastRemovalX }] : []),
  ].map(({ name, x }) => rowAt({ setting, profile, side }, name, x));
  const near = (row: RimRow, arc: number): boolean => Math.abs(row.arcLength - arc) < one;
  const rows = stations.map((station): RimRow => {
    const known = extremes.filter((row) => near(row, station.arcLength));
    const names = station.name === "" ? [] : [station.name];
    return {
      ...station,
      names: [...names, ...known.flatMap((row) => row.names)],
      off: station.removal + rimOffset,
    };
  });
  const apart = extremes.filter((row) => !stations.some(({ arcLength }) => near(row, arcLength)));
  return [...rows, ...apart].sort((a, b) => a.arcLength - b.arcLength);
}

function rowAt({ setting, profile, side }: Rim, name: string, x: number): RimRow {
  const { outline, breakX } = setting;
  const arcLength = outline.arcLength(x);
  return {
    names: [name],
    ...{ x, arcLength, halfWidth: outline.halfWidth(x) },
    off: comesOffAt(setting, profile, x),
    sideDepth: side.backAt(arcLength) - side.topAt(arcLength),
    zone: x < breakX ? "dome" : "flat",
  };
}
