import { radians } from "../geometry/circle.ts";
import { type Dome, domeZ } from "../geometry/dome.ts";
import { along, edgeOf, type Turns, turnsOf } from "../geometry/outline/edge.ts";
import { highest } from "../geometry/peak.ts";
import type { Place } from "../geometry/polyline.ts";
import { backZ } from "./back.ts";
import { type Givens, isDomed } from "./givens.ts";
import type { Station } from "./outcome.ts";
import { removalOf } from "./rim.ts";
import { rounding } from "./standing.ts";

/** What a station is read from. */
export interface Rim {
  readonly givens: Givens;
  readonly dome: Dome;
  readonly back: Dome;
  /** Degrees. */
  readonly pitch: number;
}

/** Stations every `spacing` mm of edge from the tail seam, and one at each landmark, in order. */
export function stationsOf(rim: Rim, spacing: number): readonly Station[] {
  const { outline } = rim.givens;
  const stations: Station[] = [];
  let arc = spacing;
  for (const landmark of landmarksOf(rim)) {
    for (; arc < landmark.arcLength; arc += spacing) {
      stations.push(stationAt(rim, outline.placeAtArc(arc), arc, ""));
    }
    stations.push(landmark);
  }
  return stations;
}

function landmarksOf(rim: Rim): readonly Station[] {
  const { outline, breakX, seat } = rim.givens;
  const landmark = (name: string, x: number): Station =>
    stationAt(rim, [x, outline.halfWidth(x)], outline.arcLength(x), name);
  return [
    landmark("tail", 0),
    ...boutsOf(rim.givens).map(({ name, x }) => landmark(name, x)),
    ...(seat === null ? [landmark("break", breakX)] : []),
    landmark("neck end", outline.length),
  ].sort((a, b) => a.arcLength - b.arcLength);
}

/** The bouts and the waist: as stated, or where a traced outline turns. */
function boutsOf({ outline, instrument }: Givens): readonly { name: string; x: number }[] {
  const { tracing, lowerBoutAt, waistAt, upperBoutAt } = instrument.body;
  const turns: Turns =
    tracing === undefined
      ? { lower: lowerBoutAt, waist: waistAt, upper: upperBoutAt }
      : turnsOf(outline);
  const { lower, waist, upper } = turns;
  const bouts = [{ name: "lower bout", x: lower }];
  if (waist === null || upper === null) return bouts;
  return [...bouts, { name: "waist", x: waist }, { name: "upper bout", x: upper }];
}

function stationAt(rim: Rim, [x, halfWidth]: Place, arcLength: number, name: string): Station {
  const { givens, dome } = rim;
  const zone = isDomed(givens, x) ? "dome" : "flat";
  const z = zone === "dome" ? domeZ(dome, x, halfWidth) : 0;
  return {
    name,
    x,
    halfWidth,
    arcLength,
    removal: removalOf(givens, dome, radians(rim.pitch))(x, z),
    sideDepth: z - backZ(rim.back, x, halfWidth),
    zone,
  };
}

/** A place on the side, and how far the back's edge lies there under the level rim's, `rimOffset` not included. */
interface DeepestPlace {
  readonly x: number;
  readonly halfWidth: number;
  readonly depth: number;
}

/**
 * Where the back's edge lies deepest under the level edge the side starts with: along the outline or,
 * since the back is domed, at the middle of the neck end. So wide must the strip be that a side is cut
 * from, when no part of the edge was too low.
 */
export function deepestPlace({ givens, dome, back, pitch }: Rim): DeepestPlace {
  const { outline } = givens;
  const removal = removalOf(givens, dome, radians(pitch));
  const depth = (x: number, y = outline.halfWidth(x)): number => {
    const z = isDomed(givens, x) ? domeZ(dome, x, y) : 0;
    return removal(x, z) + z - backZ(back, x, y);
  };
  const edge = edgeOf(outline, outline.length);
  const most = highest(depth, edge.xs, along(edge, depth));
  const middle = depth(outline.length, 0);
  return middle > most.value + rounding
    ? { x: outline.length, halfWidth: 0, depth: middle }
    : { x: most.x, halfWidth: outline.halfWidth(most.x), depth: most.value };
}
