import type { Dome } from "../geometry/dome.ts";
import { edgeOf } from "../geometry/edge.ts";
import { highest } from "../geometry/peak.ts";
import { backZ } from "./back.ts";
import type { Station } from "./outcome.ts";
import { removalAt, rimZ } from "./rim.ts";
import type { Setting } from "./setting.ts";

/** What a station is read from. */
export interface Rim {
  readonly setting: Setting;
  readonly dome: Dome;
  readonly back: Dome;
  /** Degrees. */
  readonly pitch: number;
}

/** Finished depth of the side at x, square to the flat, mm: top edge to back edge. */
export function sideDepthAt({ setting, dome, back }: Rim, x: number): number {
  return rimZ(setting, dome, x) - backZ(setting, back, x, setting.outline.halfWidth(x));
}

function stationAt(rim: Rim, x: number, name: string): Station {
  const { setting, dome, pitch } = rim;
  return {
    name,
    x,
    halfWidth: setting.outline.halfWidth(x),
    arcLength: setting.outline.arcLength(x),
    removal: removalAt(setting, dome, pitch, x),
    sideDepth: sideDepthAt(rim, x),
    zone: x < setting.breakX ? "dome" : "flat",
  };
}

/** Stations every `spacing` mm of edge from the tail seam, and one at each landmark, in order. */
export function stationsOf(rim: Rim, spacing: number): readonly Station[] {
  const { outline, breakX, instrument } = rim.setting;
  const { lowerBoutAt, waistAt, upperBoutAt } = instrument.body;
  const stations = [
    stationAt(rim, 0, "tail"),
    stationAt(rim, lowerBoutAt, "lower bout"),
    stationAt(rim, waistAt, "waist"),
    stationAt(rim, breakX, "break"),
    stationAt(rim, upperBoutAt, "upper bout"),
    stationAt(rim, outline.length, "neck end"),
  ];
  const total = outline.totalArc();
  for (let arc = spacing; arc < total; arc += spacing) {
    stations.push(stationAt(rim, outline.xAtArc(arc), ""));
  }
  return stations.sort((a, b) => a.arcLength - b.arcLength);
}

/** Greatest height of the level rim's edge over the back's, mm: the width of the strip a side is cut from, when no part of the edge was too low. */
export function stockWidth(rim: Rim): number {
  const { outline } = rim.setting;
  const height = (x: number): number =>
    removalAt(rim.setting, rim.dome, rim.pitch, x) + sideDepthAt(rim, x);
  const { xs } = edgeOf(outline, outline.length);
  return highest(height, xs, xs.map(height)).value;
}
